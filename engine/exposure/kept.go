package exposure

import "underpaint/engine/strict"

// Use says which part of a period this is.
type Use int8

// The uses of a period. Whole is a period whose years on the road were not
// asked about; otherwise it is two, on the road and then off it.
const (
	Whole Use = iota
	OnRoad
	OffRoad
)

// Period is one stretch of a car's life spent one way in one climate.
type Period struct {
	Climate string  // a climate id, see Climates
	Years   float64 // length, more than 0
	Kept    string  // one of KeptIDs
	Use     Use
}

// KeptIDs lists the ways of keeping a car, as in the data:
// driven_all_year, driven_in_summer, dry_or_heated_garage, garage,
// open_shed_or_outside.
func KeptIDs() (ids []string) {
	for i := range data().kept {
		ids = append(ids, data().kept[i].id)
	}
	return ids
}

// wayOf finds what a way of keeping means during a use.
func wayOf(kept string, use Use) (w way, known bool) {
	rows := data().kept
	for i := range rows {
		if rows[i].id == kept && use >= Whole && use <= OffRoad {
			return rows[i].ways[use], true
		}
	}
	return way{}, false
}

// check refuses a period that the data do not know. path is its place in the
// file it came from.
func (p Period) check(path string) error {
	if _, ok := ClimateOf(p.Climate); !ok {
		return &strict.Error{Path: path + ".place", Found: p.Climate, Expected: "dry, mild, damp, salt or sea"}
	}
	if _, ok := wayOf(p.Kept, Whole); !ok {
		return &strict.Error{Path: path + ".kept", Found: p.Kept, Expected: keptExpected}
	}
	if _, ok := wayOf(p.Kept, p.Use); !ok {
		return &strict.Error{Path: path + ".use", Found: years(float64(p.Use)), Expected: "0 (whole), 1 (on the road) or 2 (off the road)"}
	}
	if !(p.Years > 0 && p.Years <= 200) {
		return &strict.Error{Path: path + ".years", Found: years(p.Years), Expected: "more than 0 and at most 200 years"}
	}
	return nil
}

const keptExpected = "driven_all_year, driven_in_summer, dry_or_heated_garage, garage or open_shed_or_outside"
