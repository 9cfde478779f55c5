// Package oven is the oven of a receipt: what its words, the count of the hand,
// the paper and the flour come to in degrees; how a brick oven falls and what
// goes into it when; how long a dish takes; and how a cook tells that it is
// done. Every function is pure. Heats are degrees Celsius unless their name
// says otherwise, depths centimetres, times minutes.
package oven
