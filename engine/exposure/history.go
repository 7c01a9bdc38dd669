package exposure

import (
	"strconv"

	"underpaint/engine/strict"
)

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

// History is one alternative history of the car: a level of the network's history
// node.
//
// Periods that act on the car in the same way count as equal, and then Kept is
// that of one of them: on the road, a car kept outside has the same weather as
// one driven all year.
type History struct {
	Weight       float64  // chance of this alternative; all histories sum to 1
	RatesTimes   float64  // every corrosion rate is multiplied by this
	Periods      []Period // in time order, earliest first; their years add up to AgeYears
	AgeYears     float64  // age of the car in this alternative
	Made         float64  // calendar year of make: the year of asking less AgeYears
	WorkYearsAgo float64  // years since an earlier restoration in this alternative, 0 to AgeYears
	LastClimate  string   // climate of the last period
}

// Reading says how an earlier restoration enters the depth.
type Reading int

// The readings of one history.
const (
	AsItIs       Reading = iota // nothing was done
	PaintedAgain                // painted over its rust: it stays, and there was more of it than on most cars
	Renewed                     // new metal and new paint: rust counts from the restoration
	Readings                    // how many there are
)

// Life is what the history is made of without RatesTimes and Weight, as text: two
// histories with equal Life differ in every μ by the same amount, the log of the
// ratio of RatesTimes.
func (l History) Life() string { return string(l.appendLife(nil)) }

func (l History) appendLife(b []byte) []byte {
	number := func(before string, x float64) {
		b = strconv.AppendFloat(append(b, before...), x, 'g', -1, 64)
	}
	number("", l.AgeYears)
	number(" made ", l.Made)
	number(" work ", l.WorkYearsAgo)
	for _, p := range l.Periods {
		w, _ := wayOf(p.Kept, p.Use)
		b = append(append(b, '|'), p.Climate...)
		number(" use ", float64(p.Use))
		number(" share ", w.share)
		if !w.splash {
			b = append(b, " as air"...)
		}
		number(" years ", p.Years)
	}
	return b
}
