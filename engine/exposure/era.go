package exposure

import "underpaint/engine/strict"

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
