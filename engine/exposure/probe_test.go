package exposure

import (
	"fmt"
	"math"
	"testing"

	"underpaint/engine/car"
)

// TestCommonCases checks that nothing is joined if there is one place and the year is
// known: the histories are 3 answers for road years × 3 doubts.
func TestCommonCases(t *testing.T) {
	for _, climate := range Climates() {
		for _, kept := range KeptIDs() {
			histories, err := Histories(year(55), []ToldPeriod{{one(climate.ID), 0, kept, NotSure}}, asked)
			if err != nil || len(histories) != 9 {
				t.Errorf("%s %s: %d histories, %v", climate.ID, kept, len(histories), err)
			}
		}
	}
}

// TestProbes checks that the kinds of part on which histories are compared are exactly
// those of the six bodies.
func TestProbes(t *testing.T) {
	have := map[[2]float64]bool{}
	for _, id := range car.BodyIDs {
		body, err := car.Load(id)
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range body.Parts {
			have[[2]float64{p.Rust.B, p.Rust.Life}] = true
		}
	}
	for _, p := range probes {
		if !have[p] {
			t.Errorf("no part has b %g and paint life %g", p[0], p[1])
		}
		delete(have, p)
	}
	for p := range have {
		t.Errorf("parts have b %g and paint life %g, not probed", p[0], p[1])
	}
}

// TestJoinKeepsMean checks that joining keeps the weight, and the mean of μ over
// histories, probes and readings, where a reading with a restoration counts half.
func TestJoinKeepsMean(t *testing.T) {
	all, _ := ClimatesAt(NotSure, "")
	decade, _ := MadeInDecade(1960, 2026)
	lives := wholeHistories(decade, []ToldPeriod{{all, 0, NotSure, NotSure}}, asked)
	mean := func(histories []History) (sum float64) {
		for k, mus := range probeAll(histories) {
			for i, mu := range mus {
				sum += histories[k].Weight * mu * []float64{1, .5, .5}[i%3] / float64(2*3*len(probes))
			}
		}
		return sum
	}
	before := mean(lives)
	joined := reduce(lives, probeAll(lives), 30, sameEnd)
	if len(joined) > 30 {
		t.Fatalf("%d histories", len(joined))
	}
	if after := mean(joined); math.Abs(after-before) > 1e-12 {
		t.Errorf("mean of μ %.15g, was %.15g", after, before)
	}
}

// TestProbesSee checks that the probes tell apart histories that differ in only one
// reading, or only by era.
func TestProbesSee(t *testing.T) {
	drive, rest := Period{"salt", 20, "driven_all_year", Whole}, Period{"salt", 20, "garage", Whole}
	apart := func(a, b History) (by [Readings]float64) {
		x, y := a.probe(nil), b.probe(nil)
		if len(x) != probed || len(y) != probed {
			t.Fatalf("%d and %d figures, want %d", len(x), len(y), probed)
		}
		for i := range x {
			by[i%3] = math.Max(by[i%3], math.Abs(x[i]-y[i]))
		}
		return by
	}
	// The same weather in another order gives the same loss, but not since the restoration.
	if by := apart(with(1970, 20, []Period{drive, rest}), with(1970, 20, []Period{rest, drive})); by[AsItIs] > 1e-9 || by[PaintedAgain] < .01 || by[Renewed] < .01 {
		t.Errorf("order: %v", by)
	}
	// In 1938 there was no salt on the road yet.
	if by := apart(with(1918, 20, []Period{drive, rest}), with(1918, 20, []Period{rest, drive})); by[AsItIs] < .01 {
		t.Errorf("salt by year: %v", by)
	}
	// The year of make affects the paint only in the reading without a restoration.
	if by := apart(with(1970, 20, []Period{drive, rest}), with(1992, 20, []Period{drive, rest})); by[AsItIs] < .01 || by[Renewed] != 0 {
		t.Errorf("paint by year: %v", by)
	}
}

// BenchmarkHistoriesNotSure knows only the year or the decade, with up to two earlier
// places.
func BenchmarkHistoriesNotSure(b *testing.B) {
	all, _ := ClimatesAt(NotSure, "")
	decade, _ := MadeInDecade(1960, 2026)
	for name, ages := range map[string]Ages{"year": {{59, 1}}, "decade": decade} {
		for earlier := range 3 {
			told := []ToldPeriod{{all, 0, NotSure, NotSure}}
			for range earlier {
				told = append([]ToldPeriod{{all, 7, NotSure, NotSure}}, told...)
			}
			b.Run(fmt.Sprintf("%s+%d", name, earlier), func(b *testing.B) {
				for b.Loop() {
					if _, err := Histories(ages, told, Asked{Year: 2026}); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
	}
}

func BenchmarkMedians(b *testing.B) {
	l := History{RatesTimes: 1, AgeYears: 56, Made: 1970, WorkYearsAgo: 25, Periods: []Period{{"salt", 9, "driven_all_year", Whole}, {"dry", 47, "garage", Whole}}}
	for b.Loop() {
		l.Medians(2, .85, 5, .5, 1)
	}
}
