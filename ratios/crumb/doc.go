// Package crumb computes what makes a mix rise and stay risen: air beaten in,
// what drains or breaks it, and what there is to fix it. A filling with enough
// of both sets cakey.
package crumb
