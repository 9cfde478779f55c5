// Package reference holds the facts the rest of the house stands on: what
// ingredients are made of, what a gill held and when, what a lemon gives,
// which proportions are published for which class of paste or filling, and
// the words cooks have used for what they did. It holds no judgement.
//
// The tables are YAML files under data, one row an item, each row with its
// source, its place in that source, and how it is known. They are read
// strictly by Read; Load uses a compact snapshot of them made by go generate,
// which a test proves equal to the files.
package reference

//go:generate go run snapshot.go
