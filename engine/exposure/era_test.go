package exposure

import (
	"math"
	"testing"
)

// TestEraFigures compares the factors by year with values worked out by hand from the
// figures in data/eras.json.
func TestEraFigures(t *testing.T) {
	g := data()
	for _, c := range []struct {
		name       string
		curve      curve
		year, want float64
	}{
		{"thickness", g.thickness, 1920, 1.15}, {"thickness", g.thickness, 1935, 1.15}, {"thickness", g.thickness, 1945, 1.15 - .07*2/3},
		{"thickness", g.thickness, 1955, 1.04}, {"thickness", g.thickness, 1966, 1}, {"thickness", g.thickness, 1977, .965}, {"thickness", g.thickness, 2005, .88},
		{"paint", g.paintLife, 1930, .85}, {"paint", g.paintLife, 1948.5, .875}, {"paint", g.paintLife, 1961, .95}, {"paint", g.paintLife, 1970, 1},
		{"paint", g.paintLife, 1976.5, 1.2}, {"paint", g.paintLife, 1983, 1.7}, {"paint", g.paintLife, 1989, 2.5}, {"paint", g.paintLife, 2010, 3},
		{"salt", g.salt, 1930, 0}, {"salt", g.salt, 1948, .075}, {"salt", g.salt, 1955, .15}, {"salt", g.salt, 1961.5, .575}, {"salt", g.salt, 1968, 1}, {"salt", g.salt, 2020, 1},
	} {
		if got := c.curve.at(c.year); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("%s in %g: %g, want %g", c.name, c.year, got, c.want)
		}
	}
	// The figures of the parts are those of cars of 1965 to 1972, so the factor is 1.
	for year := 1965.0; year <= 1972; year += .25 {
		if g.thickness.at(year) != 1 || g.paintLife.at(year) != 1 {
			t.Errorf("%g: %g and %g, want 1", year, g.thickness.at(year), g.paintLife.at(year))
		}
	}
}

// TestErasAgainstPublished compares the curves with published figures. None of these
// sources gives a factor, but each bounds one.
func TestErasAgainstPublished(t *testing.T) {
	g := data()
	// TRB Special Report 235 (1991), chapter 2: the first state with a salting policy
	// adopted it in the winter of 1941; the United States used 1 million tons in 1955 and
	// nearly ten times that fifteen years later. NACE CORROSION/80 paper 65383, abstract:
	// 4.536 million tons in 1965, 9.584 in 1971, 9.493 in 1975. The share of salt must be
	// within a factor of two of the share of the 1971 tonnage.
	if g.salt.at(1941) != 0 {
		t.Errorf("salt in 1941: %g", g.salt.at(1941))
	}
	for year, tons := range map[float64]float64{1955: 1, 1965: 4.536, 1971: 9.584, 1975: 9.493} {
		if ratio := g.salt.at(year) / (tons / 9.584); ratio < .5 || ratio > 2 {
			t.Errorf("salt in %g: %.3f, tonnage %.3f of that of 1971", year, g.salt.at(year), tons/9.584)
		}
	}
	// TRID 79866 (1978), abstract: sheet became thinner about 1955. Trade practice (no
	// published source): 18 to 19 gauge before, 20 to 22 later. The bodies have 19 to 20
	// for skins, so the factor is at most one gauge up and two down.
	if before, after := g.thickness.at(1950), g.thickness.at(1960); before <= after {
		t.Errorf("thickness %g in 1950, %g in 1960", before, after)
	}
	if most := gaugeInches(18) / gaugeInches(19); g.thickness.at(1930) > most+.01 {
		t.Errorf("thickness %g in 1930, one gauge is %.3f", g.thickness.at(1930), most)
	}
	if least := gaugeInches(22) / gaugeInches(20); g.thickness.at(2000) < least {
		t.Errorf("thickness %g in 2000, two gauges are %.3f", g.thickness.at(2000), least)
	}
	// Fujita and Kajiyama, Zairyo-to-Kankyo 50 (2001), abstract: a zinc-coated sill
	// lasted over 14 years where a primed hem rusted through after 6 to 7.
	if g.paintLife.at(1992) < 2 {
		t.Errorf("paint life %g in 1992", g.paintLife.at(1992))
	}
	// Perforation of cars 5 to 6 years old: 90 % in 1976, 20 % in 1980, 6 % about 1990
	// (second-hand, low trust). At these rates paint lasts 1.8 and 2 times as long or
	// more, give or take a factor of 1.5.
	for year, times := range map[float64]float64{1980: 1.8, 1985: 2} {
		if ratio := g.paintLife.at(year) / times; ratio < 1/1.5 || ratio > 1.5 {
			t.Errorf("paint life %.2f in %g, published figures imply %.1f", g.paintLife.at(year), year, times)
		}
	}
}

// TestErasByHand checks whole cases with the factors worked out on paper.
func TestErasByHand(t *testing.T) {
	// Made 1948, 14 years in salt, middle year 1955: 36 + .15 × 24 = 39.6 µm. Paint
	// 5 × (.85 + .05 × 8/17) × .6 years, sheet 1.15 − .07 × 13/15.
	paint, sheet := 5*(.85+.05*8/17)*.6, 1.15-.07*13/15
	l := with(1948, 7, []Period{{"salt", 14, "driven_all_year", Whole}})
	// Restored after 7 years. The period keeps its middle year, and the new paint has no
	// factor for 1948: it lasts 3 of the 7 years on new metal, 1.8 over rust.
	want := [Readings]float64{39.6 * (14 - paint), 1.4 * 39.6 * (7 - paint + 5.2), 39.6 * 4}
	for r, got := range l.Medians(1, 1, 5, 1, 1) {
		if um := 1000 * sheet * math.Exp(got); math.Abs(um/want[r]-1) > 1e-12 {
			t.Errorf("made 1948, reading %d: %.9f µm, want %.9f", r, um, want[r])
		}
	}
	// Made 1946: on the road until 1956 and laid up until 1976 are two periods, with
	// middle years 1951 and 1966.
	on, off := 36+24*.15*10/14, 36+24*(.15+.85*11/13)
	paint, sheet = (.85+.05*6/17)*.6, 1.15-.07*11/15
	l = with(1946, 0, []Period{{"salt", 10, "driven_all_year", OnRoad}, {"salt", 20, "driven_all_year", OffRoad}})
	if um, want := 1000*sheet*math.Exp(mu(l, 1, 1, 1, 1, 1)), on*(10-paint)+off*2.4; math.Abs(um/want-1) > 1e-12 {
		t.Errorf("made 1946: %.9f µm, want %.9f", um, want)
	}
	// Away from road splash, or driven in summer only, a car gets no salt in any year.
	for _, p := range []Period{{"salt", 14, "driven_in_summer", Whole}, {"salt", 14, "driven_in_summer", OnRoad}} {
		l := with(1941, 0, []Period{p})
		if got, want := mu(l, 1, 1, 0, 1, 1), mu(l, 1, 1, 0, 0, 1); got != want {
			t.Errorf("%v: %g in the splash, %g in the air", p, got, want)
		}
	}
}
