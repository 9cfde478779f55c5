// Package present shows what was found of a receipt: as text, Markdown, JSON
// or CSV. All wording that a cook reads is in words.go; text and Markdown are
// two ways of setting out one Page, so that they cannot say different things.
// Nothing is worked out here but how a figure is rounded for showing.
package present
