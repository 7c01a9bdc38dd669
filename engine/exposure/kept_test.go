package exposure

import (
	"math"
	"slices"
	"testing"
)

func TestKeptIDs(t *testing.T) {
	want := []string{"driven_all_year", "driven_in_summer", "dry_or_heated_garage", "garage", "open_shed_or_outside"}
	got := KeptIDs()
	if !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
	got[0] = "cellar"
	if !slices.Equal(KeptIDs(), want) {
		t.Error("the list is shared with the caller")
	}
}

// meanMu is the mean of μ over the histories of a car 55 years old with one known place,
// in one reading.
func meanMu(t *testing.T, place, kept, roadYears string, r Reading, b, life, splash float64) (mean float64) {
	t.Helper()
	histories, err := Histories(year(55), []ToldPeriod{{one(place), 0, kept, roadYears}}, asked)
	if err != nil {
		t.Fatal(err)
	}
	for _, l := range histories {
		mean += l.Weight * l.Medians(2, b, life, splash, 1)[r]
	}
	return mean
}

// TestKeptCounts checks that how a car was kept matters for every answer about its years
// on the road, both on the road and off it. From best to worst: a dry garage, a garage,
// driven all year (and then in a garage), driven all year and then outside. Where nobody
// asked about years on the road, driven all year means a whole life of driving, the
// worst of all (common practice, no published source).
func TestKeptCounts(t *testing.T) {
	for _, place := range climateIDs {
		for _, road := range roadAnswers {
			order := []string{"dry_or_heated_garage", "garage", "driven_all_year", "open_shed_or_outside"}
			if road == "" {
				order = []string{"dry_or_heated_garage", "garage", "open_shed_or_outside", "driven_all_year"}
			}
			for _, kind := range probes {
				last := math.Inf(-1)
				least := meanMu(t, place, "garage", road, AsItIs, kind[0], 1000, .5) // under paint that lasts
				for _, kept := range order {
					mean := meanMu(t, place, kept, road, AsItIs, kind[0], kind[1], .5)
					if mean < last || mean == last && mean > least+1e-12 {
						t.Errorf("%s, road years %q, b %g, paint %g years: %s gives %.4f, the previous one %.4f", place, road, kind[0], kind[1], kept, mean, last)
					}
					last = mean
				}
				summer := meanMu(t, place, "driven_in_summer", road, AsItIs, kind[0], kind[1], .5)
				if all := meanMu(t, place, "driven_all_year", road, AsItIs, kind[0], kind[1], .5); summer > all {
					t.Errorf("%s, road years %q: summers give %.4f, all year %.4f", place, road, summer, all)
				}
			}
		}
	}
}

// TestHarsherPlace checks that, for a car 55 years old of which only the place is known,
// the mean of μ grows from climate to climate. It must do so on every kind of part, in
// the road splash and out of it, and in every reading, even though cars in harsher
// climates were laid up earlier.
func TestHarsherPlace(t *testing.T) {
	for _, kind := range probes {
		for _, splash := range []float64{0, .5, 1} {
			for r := range Readings {
				last := math.Inf(-1)
				for _, id := range climateIDs {
					mean := meanMu(t, id, "driven_all_year", NotSure, r, kind[0], kind[1], splash)
					if mean <= last {
						t.Errorf("b %g, paint %g years, splash %g, reading %d: %s gives %.3f, the previous climate %.3f", kind[0], kind[1], splash, r, id, mean, last)
					}
					last = mean
				}
			}
		}
	}
}
