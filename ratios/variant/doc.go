// Package variant finds the smallest set of changes, in kitchen measures, that
// brings a part of a receipt into the published ranges of a class and answers
// the findings against it.
//
// The search is exhaustive over a stated lattice and takes no chances:
//
//   - Things done otherwise: the changes of method and oven the judge knows for
//     the part, at most one for each thing they touch (butter, eggs, fire ...).
//   - Amounts: eggs, whites and yolks whole, from a quarter of the book's number
//     to three times it; fruit by the half; everything else by eighths of the
//     book's own amount, from two eighths to twice it, then two and a half times
//     and three times. A little flour or crumb may be left out, unless it gives
//     the dish its name.
//   - Water the book does not measure: by sixteenths of the flour, from two to
//     ten.
//   - Things put in: an egg, a yolk, cornflour by the level tablespoon, and what
//     a class is never without.
//
// Of two points on it that serve, the one with fewer ingredients changed is
// smaller; of those, the one with fewer things done otherwise; of those, the
// one with the least relative change. A change from a to b counts as the
// difference over the larger of the two, and what is put in or left out as one
// and its share of the whole.
//
// Ratios are held against their ranges in exact decimals, before any reading is
// run; the findings are judged by the same readings as those of the receipt.
// Every step of the lattice is a multiple of the book's amount or a whole
// number, so that the lattice of a receipt taken so many times over holds the
// lattice of the receipt.
package variant
