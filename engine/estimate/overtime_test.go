package estimate

import (
	"math"
	"testing"

	"underpaint/engine/damage"
	"underpaint/engine/pricing"
)

// risingRun prices the same cars at the prices of the rates and at those of their day, both
// with doubt.
func risingRun(t *testing.T) *Run {
	t.Helper()
	plain, up := testRun(t, nil), testRun(t, rising)
	d := pricing.Doubt{SD: 0.15, Growth: 0.07}
	return NewRun(plain.model, []*pricing.Table{plain.rows[0].table.Doubting(d), up.rows[0].table.Doubting(d)}, 1)
}

// TestRiseComesOnTop: what prices have risen by is all that a car costs more, in every
// replicate and to the minor unit; how fast they rise changes nothing else about a car.
func TestRiseComesOnTop(t *testing.T) {
	r := risingRun(t)
	r.Add()
	plain, up := &r.rows[0], &r.rows[1]
	if len(up.rise) != len(up.total) || len(plain.rise) != 0 {
		t.Fatalf("%d rises of %d cars, %d without", len(up.rise), len(up.total), len(plain.rise))
	}
	for n, total := range up.total {
		if total-up.rise[n] != plain.total[n] || up.hours[n] != plain.hours[n] || up.weeks[n] != plain.weeks[n] {
			t.Fatalf("car %d: %d with %d of rises, %d without", n, total, up.rise[n], plain.total[n])
		}
	}
	if x := r.Range(1).Rise; !(0 < x.Low && x.Low < x.Half && x.Half < x.High) || r.Range(0).Rise != (Quantiles{}) {
		t.Errorf("rises of %+v; without, %+v", x, r.Range(0).Rise)
	}
}

// TestRiseIsItsOwnCause: rising prices have a share of the width of their own, and all
// shares still add up to 1.
func TestRiseIsItsOwnCause(t *testing.T) {
	r := risingRun(t)
	m, table := r.model, r.rows[1].table
	s := NewShares(m, table, 1)
	s.Add(3000)
	shares, _ := s.Shares()
	if len(shares) != RiseInput(m.Body)+1 {
		t.Fatalf("%d shares, the last is input %d", len(shares), RiseInput(m.Body))
	}
	sum := 0.0
	for _, one := range shares {
		sum += one.Share
	}
	rise := shares[RiseInput(m.Body)]
	t.Logf("share of rising prices %.4f ± %.4f", rise.Share, rise.SE)
	if math.Abs(sum-1) > 1e-9 || rise.Share < -3*rise.SE || rise.Share > 0.1 || rise.SE == 0 {
		t.Errorf("all shares %.6f, rising prices %+v", sum, rise)
	}
	plain := NewShares(m, r.rows[0].table, 1)
	plain.Add(2)
	if all, _ := plain.Shares(); len(all) != RiseInput(m.Body) {
		t.Errorf("%d shares where nothing rises", len(all))
	}
}

// TestRisingPlan: the stages of a car at the prices of their day still add up to its price,
// and what is left when the promise ends is less than the whole job.
func TestRisingPlan(t *testing.T) {
	r := risingRun(t)
	plan, _, still := Plan(r.model, r.rows[1].table, 3, 800, nil)
	var totals, hours []float64
	Imagine(r.model, r.rows[1].table, 3, 800, func(_ int, _ *damage.Car, b *pricing.Bill) {
		totals = append(totals, float64(b.Total))
		all := int64(0)
		for trade := range b.AfterHours {
			all += b.AfterHours[trade]
		}
		hours = append(hours, float64(all)/1000)
	})
	want := quantilesOf(totals)
	if got := plan[StepAssembly].ByThen; math.Abs(got.Half-want.Half) > 1 || math.Abs(got.High-want.High) > 1 {
		t.Errorf("by the end %v, prices %v", got, want)
	}
	// The assembly takes the rest of the price; its labour and supplies are near what its
	// hours cost, so no rise of another stage has been left to it.
	before, _, none := Plan(r.model, r.rows[0].table, 3, 800, nil)
	for s := range plan {
		up := plan[s].Money.Half/before[s].Money.Half - 1
		if up < -1e-9 || up > 0.12 || s == int(StepStrip) && up != 0 {
			t.Errorf("stage %d costs %.3f more", s, up)
		}
	}
	if all := quantilesOf(hours); still.High >= all.High || still.High <= 0 || none != (Quantiles{}) {
		t.Errorf("%v hours left of %v; without a promise %v", still, all, none)
	}
}
