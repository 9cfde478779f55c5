// Package weigh turns the lines of a formula into grams: low, likely and high,
// by the measures of the book's year and place and the eggs and lemons of the
// kitchen. What is in doubt is kept as named unknowns that several lines may
// share, so that all eggs of one receipt are of one size.
package weigh
