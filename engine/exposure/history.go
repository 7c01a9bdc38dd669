package exposure

import (
	"strconv"

	"underpaint/engine/strict"
)

// Use says which part of a told period a period covers.
type Use int8

// The uses of a period. Whole is a told period whose years on the road were not asked
// about. Otherwise a told period becomes two: on the road, then off it.
const (
	Whole Use = iota
	OnRoad
	OffRoad
)

// Period is a part of a car's life spent in one climate and kept in one way.
type Period struct {
	Climate string  // a climate id; see Climates
	Years   float64 // length, more than 0
	Kept    string  // one of KeptIDs
	Use     Use
}

// check rejects a period with values that are not in the data. path is its path in the
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
// Periods with the same effect on the car count as equal, and Kept is then that of one
// of them. For instance, on the road a car kept outside has the same weather as one
// driven all year.
type History struct {
	Weight       float64  // chance of this alternative; the weights of all histories sum to 1
	RatesTimes   float64  // factor on every corrosion rate
	Periods      []Period // in time order, earliest first; their years add up to AgeYears
	AgeYears     float64  // age of the car in this alternative
	Made         float64  // calendar year of make: the year of asking minus AgeYears
	WorkYearsAgo float64  // years since an earlier restoration in this alternative, 0 to AgeYears
	LastClimate  string   // climate of the last period
}

// Reading says how an earlier restoration affects the depth.
type Reading int

// The readings of one history.
const (
	AsItIs       Reading = iota // nothing was done
	PaintedAgain                // painted over its rust, which remains and was more than on most cars
	Renewed                     // new metal and new paint: rust counts from the restoration
	Readings                    // the number of readings
)

// Life is the content of the history as text, without RatesTimes and Weight. Two
// histories with equal Life differ in every μ by the same amount, the log of the ratio
// of their RatesTimes.
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
