// Package cli is the command line: it reads flags and files, hands them to the
// packages that do the work, and passes what they found to package present.
//
// What a command reports goes to standard output; everything about the run
// goes to standard error. Messages have no capital and no stop, name the thing
// in quotes and say what to type instead.
package cli
