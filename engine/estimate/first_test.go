package estimate

import (
	"math"
	"slices"
	"testing"

	"underpaint/engine/pricing"
)

// TestFirstRangeIsHonest: over many seeds, the ends of a first range differ from those of
// a long run by about their standard errors.
func TestFirstRangeIsHonest(t *testing.T) {
	const seeds = 100
	long := testRun(t, nil)
	for long.Cars() < 64*Block {
		long.Add()
	}
	whole, table := long.Price(0), long.rows[0].table
	off, said, within := 0.0, 0.0, 0.0
	for seed := range uint64(seeds) {
		r := NewRun(long.model, []*pricing.Table{table}, 1000+seed)
		r.Begin()
		p := r.Price(0)
		if p.Cars != First {
			t.Fatalf("%d cars", p.Cars)
		}
		for _, d := range []float64{p.Low - whole.Low, p.High - whole.High} {
			off += d * d / (2 * seeds)
			if math.Abs(d) <= 2*max(p.SELow, p.SEHigh) {
				within += 1.0 / (2 * seeds)
			}
		}
		said += (p.SELow*p.SELow + p.SEHigh*p.SEHigh) / (2 * seeds)
	}
	off, said = math.Sqrt(off), math.Sqrt(said)
	t.Logf("off by %.4f of the width, said %.4f; within twice the larger in %.3f", off/(whole.High-whole.Low), said/(whole.High-whole.Low), within)
	if off > 1.2*said || off < 0.8*said || within < 0.9 {
		t.Errorf("off by %.0f, said %.0f; within twice the larger in %.3f", off, said, within)
	}
}

// TestBegunBlockIsFinished: a run that started with Begin completes its block and has the
// same cars as a run without Begin.
func TestBegunBlockIsFinished(t *testing.T) {
	begun, plain := testRun(t, nil), testRun(t, nil)
	begun.Begin()
	begun.Begin()
	if begun.Cars() != First {
		t.Fatalf("%d cars, expected %d", begun.Cars(), First)
	}
	for range 2 {
		begun.Add()
		plain.Add()
		if begun.Cars() != plain.Cars() || !slices.Equal(begun.Totals(0), plain.Totals(0)) || !slices.Equal(begun.holed, plain.holed) {
			t.Fatalf("begun: %d cars, plain: %d, or other ones", begun.Cars(), plain.Cars())
		}
	}
}
