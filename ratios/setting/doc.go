// Package setting computes what makes a filling set or fail to: egg and milk
// protein, starch, acid, sugar and heat. Each file holds one idea with its
// equation, where it holds, how sure it is and where it comes from.
//
// Confidence is high, medium or low; "judgement" marks a figure chosen by us so
// that a fact of the trade comes out. Nothing here was measured in a kitchen.
package setting
