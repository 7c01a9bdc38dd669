package exposure

import "underpaint/engine/strict"

// DataFiles returns the data files of this package in the order of their paths. Callers
// must not change them.
func DataFiles() []strict.DataFile {
	return []strict.DataFile{
		{Path: "exposure/data/climates.json", Text: climatesFile},
		{Path: "exposure/data/eras.json", Text: erasFile},
		{Path: "exposure/data/history.json", Text: historyFile},
		{Path: "exposure/data/kept.json", Text: keptFile},
		{Path: "exposure/data/places.json", Text: placesFile},
	}
}
