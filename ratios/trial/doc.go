// Package trial holds the judge against published formulas whose outcome is
// known: how often it is right, how far its shares can be trusted, and what
// the links should be. It is for those who work on the judge.
package trial
