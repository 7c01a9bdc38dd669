package exposure

import (
	"underpaint/engine/chance"
	"underpaint/engine/strict"
)

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

// curve is a factor by calendar year: straight lines between the points, flat
// before the first and after the last. Years ascend.
type curve []struct{ year, value float64 }

func readCurve(f strict.Field) (out curve) {
	for _, p := range f.Items() {
		p.Keys("year", "value")
		year := p.Get("year").Number(1800, 2200)
		if n := len(out); n > 0 && year <= out[n-1].year {
			p.Get("year").Complain("a year after the one before")
		}
		out = append(out, struct{ year, value float64 }{year, p.Get("value").Number(0, 10)})
	}
	return out
}

// at returns the factor in a year, fractions of it included.
func (c curve) at(year float64) float64 {
	if year <= c[0].year {
		return c[0].value
	}
	for i := 1; i < len(c); i++ {
		if a, b := c[i-1], c[i]; year < b.year {
			return a.value + float64((b.value-a.value)*((year-a.year)/(b.year-a.year)))
		}
	}
	return c[len(c)-1].value
}

// weather is what one period does: in a year, share of a year's weather counts
// and uses up share/paintFactor years of paint life; a bare surface loses air µm
// in its first year, splash µm where the road's spray reaches it, as logs.
type weather struct {
	years, share, paintFactor float64
	lnAir, lnSplash           float64
}

// weathers appends what each period of the history does. Of the road salt only
// the share of the period's middle year counts. Climates and ways of keeping
// that are not known count for nothing, but take their time; Histories and Exact
// refuse them.
func (l History) weathers(out []weather) []weather {
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
