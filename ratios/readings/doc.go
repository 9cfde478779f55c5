// Package readings evaluates a receipt over many ways of taking what it leaves
// unclear. Every draw depends on the seed and the name of the unknown alone, so
// the same receipt gives the same figures, and a changed one is compared on the
// same draws.
package readings
