package car

import "underpaint/engine/strict"

// DataFiles returns the data files of this package in the order of their paths. Callers
// must not change them.
func DataFiles() []strict.DataFile {
	return []strict.DataFile{
		{Path: "car/data/common.json", Text: commonWords},
		{Path: "car/data/convertible_unitary.json", Text: convertibleUnitary},
		{Path: "car/data/four_door_saloon.json", Text: fourDoorSaloon},
		{Path: "car/data/hardtop_on_frame.json", Text: hardtopOnFrame},
		{Path: "car/data/open_two_seater.json", Text: openTwoSeater},
		{Path: "car/data/pickup.json", Text: pickup},
		{Path: "car/data/two_door_unitary.json", Text: twoDoorUnitary},
	}
}
