package exposure

import (
	"math"
	"testing"
)

// TestDepthByHand checks cases that can be worked out on paper. The cars are of 1970,
// where all factors by year are 1.
func TestDepthByHand(t *testing.T) {
	for _, c := range []struct {
		name              string
		periods           []Period
		work              float64 // years ago
		m, b, life, share float64
		as, again, new    float64 // depth in µm
	}{
		// 16 years: 4 under paint (5 × .8) and 12 bare at 30 µm. Restored after 10: the
		// loss of 6 bare years remains, the paint over it lasts 3 × .8 years, and the
		// depth is multiplied by 1.4. New metal is bare for 2 years of 6.
		{"paint first", []Period{{"damp", 16, "driven_all_year", Whole}}, 6, 1, 1, 5, 0, 30 * 12, 1.4 * 30 * (6 + 3.6), 30 * 2},
		{"exponent one half", []Period{{"damp", 16, "driven_all_year", Whole}}, 6, 1, .5, 5, 0, 30 * math.Sqrt(12), 1.4 * 30 * math.Sqrt(9.6), 30 * math.Sqrt(2)},
		{"restored today", []Period{{"damp", 16, "driven_all_year", Whole}}, 0, 1, 1, 5, 0, 360, 1.4 * 360, 30 * .25},
		{"restored when new", []Period{{"damp", 16, "driven_all_year", Whole}}, 16, 1, 1, 5, 0, 360, 1.4 * 30 * 13.6, 360},
		// A year in a garage counts as 0.12 years: 50 years count as 6, of which the paint
		// takes 4. The 25 years since the work count as 3: new paint takes all 3, and
		// paint over rust takes 2.4.
		{"garage", []Period{{"damp", 50, "garage", Whole}}, 25, 2, 1, 5, 0, 2 * 30 * 2, 2 * 1.4 * 30 * .6, 2 * 30 * .25},
		// Summers only: road splash corrodes like air, and half of each year counts.
		{"summers", []Period{{"salt", 20, "driven_in_summer", Whole}}, 0, 1, 1, 5, 1, 36 * 7, 1.4 * 36 * 7, 36 * .25},
		{"summers on the road", []Period{{"salt", 20, "driven_in_summer", OnRoad}}, 0, 1, 1, 5, 1, 36 * 7, 1.4 * 36 * 7, 36 * .25},
		// A car that is laid up is kept as in a garage, with salt in its seams.
		{"summers, then laid up", []Period{{"salt", 20, "driven_in_summer", OnRoad}, {"salt", 25, "driven_in_summer", OffRoad}}, 25, 1, 1, 5, 1,
			36*7 + 60*3, 1.4 * (36*7 + 60*(3-1.8)), 60 * .25},
		{"a garage on the road and off it", []Period{{"mild", 10, "garage", OnRoad}, {"mild", 25, "garage", OffRoad}}, 5, 1, 1, 4, 0,
			20 * (8 + 3 - 4), 1.4 * 20 * (8 + 2.4 - 4), 20 * .25},
		{"a dry garage on the road and off it", []Period{{"mild", 10, "dry_or_heated_garage", OnRoad}, {"mild", 20, "dry_or_heated_garage", OffRoad}}, 0, 1, 1, 4, 0,
			20 * (7 + 1 - 4), 1.4 * 20 * (7 + 1 - 4), 20 * .25},
		{"outside, on the road and off it", []Period{{"mild", 10, "open_shed_or_outside", OnRoad}, {"mild", 20, "open_shed_or_outside", OffRoad}}, 0, 1, 1, 4, 0,
			20 * (10 + 8 - 4), 1.4 * 20 * (10 + 8 - 4), 20 * .25},
		// While the paint is intact: a quarter of a year at the last climate's rate.
		{"least loss", []Period{{"sea", 1, "driven_all_year", Whole}, {"dry", 1, "garage", Whole}}, 1, 1, 1, 5, 1, 7 * .25, 1.4 * 7 * .25, 7 * .25},
		{"no paint", []Period{{"mild", 3, "driven_all_year", Whole}}, 1, 1, 1, 0, 1, 72, 1.4 * 72, 24},
		// The work falls between two periods, then in the second.
		{"two rates", []Period{{"mild", 10, "driven_all_year", Whole}, {"sea", 2, "driven_all_year", Whole}}, 2, 1, 1, 4, 0, 6*20 + 2*90, 1.4 * (6*20 + .92*90), 90 * .25},
		{"in the second", []Period{{"mild", 10, "driven_all_year", Whole}, {"sea", 2, "driven_all_year", Whole}}, 1, 1, 1, 4, 0, 6*20 + 2*90, 1.4 * (6*20 + 90), 90 * .25},
	} {
		l := with(1970, c.work, c.periods)
		got := l.Medians(c.m, c.b, c.life, c.share, 1)
		for r, want := range []float64{c.as, c.again, c.new} {
			if um := math.Exp(got[r]) * 1000; math.Abs(um/want-1) > 1e-12 {
				t.Errorf("%s, reading %d: %.12g µm, want %.12g", c.name, r, um, want)
			}
		}
	}
}

// with is a history at undoubted rates, with a year of make and a restoration the given
// number of years ago.
func with(made, work float64, periods ...[]Period) History {
	l := History{RatesTimes: 1, Made: made, WorkYearsAgo: work}
	for _, list := range periods {
		l.Periods = append(l.Periods, list...)
	}
	for _, p := range l.Periods {
		l.AgeYears += p.Years
		l.LastClimate = p.Climate
	}
	return l
}

// slowMedians follows the loss through pieces of time that end wherever anything
// changes. At each it converts the loss so far to the years that would have given it at
// the next piece's rate. It applies the same law with different algebra, the standard
// library's functions and its own copy of the figures.
func slowMedians(l History, m, b, paintLife, splashShare, mm float64) (mu [Readings]float64) {
	for r := range Readings {
		worn, lost, rate := 0.0, 0.0, 0.0
		life, at := paintLife*line(l.Made, 1940, .85, 1957, .9, 1965, 1, 1973, 1, 1980, 1.4, 1986, 2, 1992, 3), 0.0
		for _, p := range l.Periods {
			c, s := slowClimates[p.Climate], slowShares[p.Kept][p.Use]
			if p.Kept == "driven_in_summer" && p.Use != OffRoad {
				c[1] = c[0]
			}
			g := line(l.Made+at+p.Years/2, 1941, 0, 1955, .15, 1968, 1)
			rate = l.RatesTimes * math.Pow(c[0], 1-splashShare) * math.Pow(c[0]+g*(c[1]-c[0]), splashShare)
			pieces := []float64{p.Years}
			if until := l.AgeYears - l.WorkYearsAgo - at; r != AsItIs && until >= 0 && until < p.Years {
				pieces = []float64{until, p.Years - until}
			}
			for k, piece := range pieces {
				if k == 1 {
					worn, life = 0, paintLife
					if r == PaintedAgain {
						life *= .6
					} else {
						lost = 0
					}
				}
				wear := s / (c[2] * life)
				under := math.Min(piece, (1-worn)/wear)
				worn += under * wear
				if bare := s * (piece - under); bare > 0 {
					lost = rate * math.Pow(math.Pow(lost/rate, 1/b)+bare, b)
				}
			}
			at += p.Years
		}
		if r == Renewed && l.WorkYearsAgo == 0 {
			lost = 0
		}
		depth := m * math.Max(lost, rate*math.Pow(.25, b))
		if r == PaintedAgain {
			depth *= 1.4
		}
		mu[r] = math.Log(depth / (1000 * mm * line(l.Made, 1935, 1.15, 1950, 1.08, 1960, 1, 1972, 1, 1982, .93, 1990, .88)))
	}
	return mu
}

var (
	slowClimates = map[string][3]float64{"dry": {7, 7, 1.5}, "mild": {20, 24, 1}, "damp": {30, 45, .8}, "salt": {36, 60, .6}, "sea": {90, 95, .45}}
	slowShares   = map[string][3]float64{"driven_all_year": {1, 1, .12}, "driven_in_summer": {.5, .5, .12}, "dry_or_heated_garage": {.05, .7, .05},
		"garage": {.12, .8, .12}, "open_shed_or_outside": {.4, 1, .4}}
)

// line interpolates linearly between points given as x, y, x, y and so on.
func line(x float64, points ...float64) float64 {
	y := points[1]
	for i := 2; i < len(points); i += 2 {
		share := (x - points[i-2]) / (points[i] - points[i-2])
		y += (points[i+1] - points[i-1]) * math.Max(0, math.Min(1, share))
	}
	return y
}
