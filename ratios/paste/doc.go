// Package paste computes what makes a paste tender, flaky, tough, crumbly or
// greasy: how far fat coats the flour, how much water reaches it, and how hard
// it is worked. Fat and water are counted to the flour's weight.
package paste
