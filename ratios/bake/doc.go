// Package bake evaluates one reading of a receipt: every unclear amount and
// every unclear word of method taken one way. A part is compiled once into a
// kernel; running the kernel for a reading allocates nothing.
package bake
