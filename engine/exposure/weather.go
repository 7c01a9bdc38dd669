package exposure

import (
	"underpaint/engine/chance"
	"underpaint/engine/strict"
)

// KeptIDs lists the ways of keeping a car, in the order of the data: driven_all_year,
// driven_in_summer, dry_or_heated_garage, garage, open_shed_or_outside.
func KeptIDs() (ids []string) {
	for i := range data().kept {
		ids = append(ids, data().kept[i].id)
	}
	return ids
}

// wayOf finds the effect of a way of keeping during a use.
func wayOf(kept string, use Use) (w way, known bool) {
	rows := data().kept
	for i := range rows {
		if rows[i].id == kept && use >= Whole && use <= OffRoad {
			return rows[i].ways[use], true
		}
	}
	return way{}, false
}

// curve is a factor by calendar year, linear between the points and constant before the
// first and after the last. Years ascend.
type curve []struct{ year, value float64 }

func readCurve(f strict.Field) (out curve) {
	for _, p := range f.Items() {
		p.Keys("year", "value")
		year := p.Get("year").Number(1800, 2200)
		if n := len(out); n > 0 && year <= out[n-1].year {
			p.Get("year").Complain("a year after the previous one")
		}
		out = append(out, struct{ year, value float64 }{year, p.Get("value").Number(0, 10)})
	}
	return out
}

// at returns the factor in a year, which may be fractional.
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

// weather is the effect of one period. Each year counts as share of a year's weather and
// uses up share/paintFactor years of paint life. lnAir and lnSplash are the logs of the
// loss in µm of a bare surface in its first year, away from road splash and in it.
type weather struct {
	years, share, paintFactor float64
	lnAir, lnSplash           float64
}

// weathers appends the effect of each period of the history. The share of road salt is
// that of the period's middle year. A period with an unknown climate or way of keeping
// takes its time but has no effect; Histories and Exact reject such periods.
func (l History) weathers(out []weather) []weather {
	at := l.Made
	for _, p := range l.Periods {
		out = append(out, weatherOf(p, at))
		at += p.Years
	}
	return out
}

// weatherOf is the effect of a period that begins in the given calendar year.
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
