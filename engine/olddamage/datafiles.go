package olddamage

import "underpaint/engine/strict"

// DataFiles returns the data files of this package in the order of their paths. Callers
// must not change them.
func DataFiles() []strict.DataFile {
	return []strict.DataFile{
		{Path: "olddamage/data/olddamage.json", Text: startingFile},
	}
}
