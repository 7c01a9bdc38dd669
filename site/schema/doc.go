// Package schema holds the JSON Schemas of the files that people write or keep: a shop's
// rates, a car, past jobs. Start with [Of].
//
// The decoders in engine do not read them; tests beside each decoder compare the two.
package schema
