package exposure

import (
	"strconv"

	"underpaint/engine/chance"
)

// Level is one alternative history of the car: a level of the network's history
// node.
//
// Periods that act on the car in the same way count as equal, and then Kept is
// that of one of them: on the road, a car kept outside has the same weather as
// one driven all year.
type Level struct {
	Weight       float64  // chance of this alternative; all levels sum to 1
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

// Life is what the level is made of without RatesTimes and Weight, as text: two
// levels with equal Life differ in every μ by the same amount, the log of the
// ratio of RatesTimes.
func (l Level) Life() string { return string(l.appendLife(nil)) }

func (l Level) appendLife(b []byte) []byte {
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

// weather is what one period does: in a year, share of a year's weather counts
// and uses up share/paintFactor years of paint life; a bare surface loses air µm
// in its first year, splash µm where the road's spray reaches it, as logs.
type weather struct {
	years, share, paintFactor float64
	lnAir, lnSplash           float64
}

// weathers appends what each period of the level does. Of the road salt only
// the share of the period's middle year counts. Climates and ways of keeping
// that are not known count for nothing, but take their time; Levels and Exact
// refuse them.
func (l Level) weathers(out []weather) []weather {
	at := l.Made
	for _, p := range l.Periods {
		out = append(out, weatherOf(p, at))
		at += p.Years
	}
	return out
}

// weatherOf is what a period that begins in a calendar year does.
func weatherOf(p Period, from float64) weather {
	g := data()
	kept, _ := wayOf(p.Kept, p.Use)
	for i := range g.climates {
		c := &g.climates[i]
		if c.ID != p.Climate {
			continue
		}
		w := weather{years: p.Years, share: kept.share, paintFactor: c.PaintLifeFactor, lnAir: g.lnAir[i], lnSplash: g.lnAir[i]}
		if kept.splash {
			salted := g.salt.at(from + float64(p.Years/2))
			w.lnSplash = chance.Log(c.AirUM + float64(salted*(c.SplashUM-c.AirUM)))
		}
		return w
	}
	return weather{years: p.Years, paintFactor: 1}
}
