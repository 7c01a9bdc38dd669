// Package worked reads cases of an independent calculation of the same model, written
// by somebody else, in another language, with no code in common. Start with [Read]. The
// tests of damage compare a case's probabilities, those of estimate its hours.
package worked
