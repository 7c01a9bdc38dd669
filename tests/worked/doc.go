// Package worked reads cases of an independent calculation of the same model, done by
// another hand, in another language, without any code in common. Start with [Read]; the
// tests of damage compare a case's chances, those of estimate its hours.
package worked
