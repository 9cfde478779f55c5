// Package explain tells, after a tasting, what made a bake turn out as it did.
//
// It answers three questions, each by computing: what would have changed it
// (every choice of method and oven and every amount varied one at a time, on the
// same draws), what the tasting says about the receipt's own doubts, and what is
// the least to do next time. Whether a result was looked for at all is said
// first. What was weighed is never reasoned about.
package explain
