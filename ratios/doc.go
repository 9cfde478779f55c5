// Package ratios turns a weighed formula into what a cook compares: the
// masses in a mix, its parts to the hundred, and every named proportion.
// The packages below it hold the mechanisms and the judgement.
package ratios
