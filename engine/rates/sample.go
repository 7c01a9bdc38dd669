package rates

import (
	"bytes"
	_ "embed"
)

//go:embed data/sample.json
var sampleUS []byte

//go:embed data/sample_uk.json
var sampleUK []byte

// Sample returns the file of an invented shop in the United States: dollars, US words,
// feet, tax apart. The caller may change it.
func Sample() []byte { return bytes.Clone(sampleUS) }

// SampleUK returns the file of an invented shop in the United Kingdom: pounds,
// UK words, metres, VAT in the prices. The caller may change it.
func SampleUK() []byte { return bytes.Clone(sampleUK) }
