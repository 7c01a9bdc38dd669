package rates

import "underpaint/engine/strict"

// DataFiles returns the data files of this package in the order of their paths. Callers
// must not change them.
func DataFiles() []strict.DataFile {
	return []strict.DataFile{
		{Path: "rates/data/another_body.json", Text: startingAnotherBody},
		{Path: "rates/data/doubt.json", Text: startingDoubt},
		{Path: "rates/data/sample.json", Text: sampleUS},
		{Path: "rates/data/sample_uk.json", Text: sampleUK},
	}
}
