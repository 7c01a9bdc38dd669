package estimate

import (
	"math"
	"testing"

	"underpaint/engine/pricing"
)

// doubtRun is a run with these doubts, one in each row, on the same cars.
func doubtRun(t *testing.T, doubts ...pricing.Doubt) *Run {
	t.Helper()
	one := testRun(t, nil)
	var tables []*pricing.Table
	for _, d := range doubts {
		tables = append(tables, one.rows[0].table.Doubting(d))
	}
	r := NewRun(one.model, tables, 1)
	for range 8 {
		r.Add()
	}
	return r
}

// afterStrip returns the logs of what each replicate costs after the strip, their mean
// and variance.
func afterStrip(r *Run, k int) (logs []float64, mean, variance float64) {
	one := &r.rows[k]
	for n, total := range one.total {
		logs = append(logs, math.Log(float64(total-one.kinds[StripStage][n])))
		mean += logs[n] / float64(len(one.total))
	}
	for _, v := range logs {
		variance += (v - mean) * (v - mean) / float64(len(logs)-1)
	}
	return logs, mean, variance
}

// TestDoubtScalesWorkAfterTheStrip: growth alone makes the work after the strip of every
// car larger by as much, to the rounding of its lines, and leaves the strip as it is. Of
// independent factors the variances of the logs add up (D. V. Lindley, Introduction to
// Probability and Statistics, 1965, part 1, section 3.2: variance of a sum).
func TestDoubtScalesWorkAfterTheStrip(t *testing.T) {
	const growth, sd = 0.07, 0.15
	r := doubtRun(t, pricing.Doubt{}, pricing.Doubt{Growth: growth}, pricing.Doubt{SD: sd, Growth: growth})
	plain, mean, variance := afterStrip(r, 0)
	grown, _, _ := afterStrip(r, 1)
	for n := range plain {
		if off := grown[n] - plain[n] - growth; math.Abs(off) > 1e-4 {
			t.Fatalf("car %d grew by %.5f more than %.2f", n, off, growth)
		}
		if strip := r.rows[1].kinds[StripStage][n]; strip != r.rows[0].kinds[StripStage][n] {
			t.Fatalf("car %d: the strip grew to %d", n, strip)
		}
	}
	_, doubted, wide := afterStrip(r, 2)
	if want := variance + sd*sd; math.Abs(wide/want-1) > 0.03 {
		t.Errorf("variance of the log %.5f, expected %.5f", wide, want)
	}
	if math.Abs(doubted-mean-growth) > 0.004 {
		t.Errorf("mean of the log moved by %.4f, expected %.4f", doubted-mean, growth)
	}
}

// TestDoubtFallsOnHoursAndMoneyAlike: hours, labour, materials, parts and work sent out
// after the strip all grow by the same factor.
func TestDoubtFallsOnHoursAndMoneyAlike(t *testing.T) {
	r := doubtRun(t, pricing.Doubt{}, pricing.Doubt{Growth: math.Log(2)})
	for kind := MetalLabour; kind < Supplies; kind++ {
		for n, was := range r.rows[0].kinds[kind] {
			if is := r.rows[1].kinds[kind][n]; math.Abs(float64(is-2*was)) > 3000+float64(was)/1000 {
				t.Fatalf("%s of car %d: %d, twice %d expected", KindIDs[kind], n, is, was)
			}
		}
	}
	for n, was := range r.rows[0].metal {
		if is := r.rows[1].metal[n]; math.Abs(float64(is-2*was)) > 100 {
			t.Fatalf("metalwork of car %d: %d thousandths, twice %d expected", n, is, was)
		}
	}
}

// TestWider: the ratio of widths that is told is near that of the same cars priced with
// and without the doubt, and 1 where there is none.
func TestWider(t *testing.T) {
	for _, sd := range []float64{0.05, 0.1, 0.15, 0.25} {
		r := doubtRun(t, pricing.Doubt{}, pricing.Doubt{SD: sd})
		if r.Wider(0) != 1 {
			t.Errorf("wider by %.3f without doubt", r.Wider(0))
		}
		log := func(k int) float64 { p := r.Price(k); return math.Log(p.High / p.Low) }
		if is, told := log(1)/log(0), r.Wider(1); math.Abs(is-told) > 0.05 {
			t.Errorf("doubt %.2f: %.3f times as wide, told %.3f", sd, is, told)
		}
	}
}

// TestDoubtAddsLittleError: a range with doubt settles with at most half as many cars
// again as without, because doubt is spread evenly like the other factors of a car.
func TestDoubtAddsLittleError(t *testing.T) {
	cars := func(d pricing.Doubt) int {
		one := testRun(t, nil)
		r := NewRun(one.model, []*pricing.Table{one.rows[0].table.Doubting(d)}, 1)
		if !r.Settle(StandardAccuracy) {
			t.Errorf("%+v: not settled", d)
		}
		return r.Cars()
	}
	if plain, doubted := cars(pricing.Doubt{}), cars(pricing.Doubt{SD: 0.15}); doubted > plain*3/2 {
		t.Errorf("%d cars, %d without doubt", doubted, plain)
	} else {
		t.Logf("%d cars, %d without doubt", doubted, plain)
	}
}
