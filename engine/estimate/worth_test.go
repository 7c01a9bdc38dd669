package estimate

import (
	"math"
	"slices"
	"testing"

	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"
	"gonum.org/v1/gonum/stat"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/damage"
	"underpaint/engine/pricing"
)

const seed = 20260604

func parameters(least int) *gopter.TestParameters {
	p := gopter.DefaultTestParametersWithSeed(seed)
	p.MinSuccessfulTests = least
	return p
}

// weightedQuantiles returns two weighted quantiles of values in increasing order.
func weightedQuantiles(x, weight []float64, p ...float64) [2]float64 {
	var w weighted
	for _, v := range weight {
		w.count(v)
	}
	w.aim(p...)
	for n := range x {
		w.take(x[n], weight[n])
	}
	return w.value
}

// TestWeightedQuantileWorked checks one published case and one worked by hand. The median
// of four values of weight 1, 0, 1, 0 is midway between the first and the third (the
// example with which Akinshin, 2023, rules out formulas that use two neighbours). For 1,
// 2, 3 with weights 1, 1, 2, n* is 16/6 and the window of the median is .3125 to .6875:
// half of it lies in the second value and half in the third.
func TestWeightedQuantileWorked(t *testing.T) {
	if got := weightedQuantiles([]float64{1, 5, 8, 100}, []float64{1, 0, 1, 0}, .5, .5)[0]; got != 4.5 {
		t.Errorf("median %g, want 4.5", got)
	}
	if got := weightedQuantiles([]float64{1, 2, 3}, []float64{1, 1, 2}, .5, .5)[0]; math.Abs(got-2.5) > 1e-12 {
		t.Errorf("median %g, want 2.5", got)
	}
}

// TestWeightedQuantileProperties compares weighted quantiles with plain ones and with
// gonum (stat.Quantile). The window reaches less than 1/n* to either side, so the value
// lies between gonum's empirical quantiles 1/n* below and above.
func TestWeightedQuantileProperties(t *testing.T) {
	properties := gopter.NewProperties(parameters(200))
	sample := func(n uint64, size int) (x, w []float64) {
		s := chance.NewStream(seed, n)
		for range size {
			x, w = append(x, 1e6*chance.Exp(chance.NormalQuantile(s.Uniform()))), append(w, s.Uniform()*s.Uniform())
		}
		slices.Sort(x)
		return x, w
	}
	properties.Property("equal weights give definition 7", prop.ForAll(func(n uint64, size int, p, weight float64) bool {
		x, w := sample(n, size)
		for k := range w {
			w[k] = weight
		}
		want := chance.Quantile(x, p, chance.HF7)
		return math.Abs(weightedQuantiles(x, w, p, p)[1]-want) <= 1e-9*want
	}, gen.UInt64(), gen.IntRange(1, 400), gen.Float64Range(0, 1), gen.Float64Range(.01, 1)))
	properties.Property("values without weight change nothing", prop.ForAll(func(n uint64, size int) bool {
		x, w := sample(n, size)
		var few, fewWeights []float64
		for k := range x {
			if k%3 == 1 {
				w[k] = 0
				continue
			}
			few, fewWeights = append(few, x[k]), append(fewWeights, w[k])
		}
		a, b := weightedQuantiles(x, w, .1, .9), weightedQuantiles(few, fewWeights, .1, .9)
		return a == b
	}, gen.UInt64(), gen.IntRange(1, 400)))
	properties.Property("gonum's empirical quantiles stand on both sides", prop.ForAll(func(n uint64, size int, p float64) bool {
		x, w := sample(n, size)
		var e weighted
		for _, v := range w {
			e.count(v)
		}
		step := 1/e.effective() + 1e-9
		low := stat.Quantile(math.Max(0, p-step), stat.Empirical, x, w)
		high := stat.Quantile(math.Min(1, p+step), stat.Empirical, x, w)
		got := weightedQuantiles(x, w, p, p)[0]
		return low*(1-1e-9) <= got && got <= high*(1+1e-9)
	}, gen.UInt64(), gen.IntRange(2, 400), gen.Float64Range(0, 1)))
	properties.TestingRun(t)
}

// TestPack: Unpack inverts Pack, no two inputs share a byte, and a worse condition makes a
// greater one.
func TestPack(t *testing.T) {
	seen := map[byte]bool{}
	for k := range car.Conditions {
		for f := damage.NoFinding; f < damage.Findings; f++ {
			for _, dent := range []bool{false, true} {
				b := Pack(k, f, dent)
				if gotK, gotF, gotDent := Unpack(b); gotK != k || gotF != f || gotDent != dent || b >= packs || seen[b] {
					t.Errorf("%d %d %v: %d", k, f, dent, b)
				}
				seen[b] = true
				if k > 0 && b <= Pack(k-1, damage.Replaced, true) {
					t.Errorf("condition %d packs below a better one", k)
				}
			}
		}
	}
}

// remembering returns a run of one table that remembers its cars, with the given number of
// blocks.
func remembering(model *damage.Model, table *pricing.Table, seed uint64, blocks int) *Run {
	r := NewRun(model, []*pricing.Table{table}, seed)
	r.Remember(true)
	for range blocks {
		r.Add()
	}
	return r
}

// TestRemembersWhatWasDrawn: a run that remembers has the same cars as any other run, at
// the prices of their first replicates, and keeps their damage as it was drawn.
func TestRemembersWhatWasDrawn(t *testing.T) {
	plain := testRun(t, nil)
	r := remembering(plain.model, plain.rows[0].table, 1, 1)
	plain.Add()
	for n, v := range r.Totals(0) {
		if plain.Totals(0)[n*Replicates] != v {
			t.Fatalf("car %d: remembering changes its price", n)
		}
	}
	Imagine(r.model, nil, 1, 50, func(n int, c *damage.Car, _ *pricing.Bill) {
		seen := Seen{r.memory, n}
		for i := range c.Condition {
			if seen.Condition(i) != int(c.Condition[i]) || seen.Finding(i) != c.Finding[i] || seen.Dent(i) != c.Dent[i] {
				t.Fatalf("car %d, item %d is not as it was drawn", n, i)
			}
		}
		if seen.Level() != c.History || seen.Repair() != c.Repair {
			t.Fatalf("car %d: history or repair", n)
		}
	})
}

// TestEffectiveCars: if an event is certain or impossible on every car, the effective
// sample size of each outcome is the number of its cars, and Worth gives the smaller one.
// Cars added later count too.
func TestEffectiveCars(t *testing.T) {
	plain := testRun(t, nil)
	r := remembering(plain.model, plain.rows[0].table, 1, 1)
	for range 2 {
		totals := r.Totals(0)
		cut := r.Range(0).Low
		cheap := 0
		for _, v := range totals {
			if float64(v) < cut {
				cheap++
			}
		}
		w := r.IfKnown(0, func(c Seen) float64 {
			if float64(totals[c.car]) < cut {
				return 1
			}
			return 0
		})
		if math.Abs(w.Effective-float64(cheap)) > 1e-9 || math.Abs(w.Yes*float64(r.Cars())-float64(cheap)) > 1e-9 {
			t.Errorf("%d cheap cars of %d: %+v", cheap, r.Cars(), w)
		}
		r.Add()
	}
	look := func(r *Run) Worth { return r.IfLook(0, []int{7}, func(b byte) float64 { return float64(b) / packs }) }
	if grown, fresh := look(r), look(remembering(plain.model, plain.rows[0].table, 1, 3)); grown != fresh {
		t.Errorf("a run that grew: %+v, one made at once: %+v", grown, fresh)
	}
}

// TestKnowingNothing: an event with the same chance on every car, 0 and 1 included, tells
// nothing. IfLook gives the same as IfKnown for one item and for the worst of several.
func TestKnowingNothing(t *testing.T) {
	plain := testRun(t, nil)
	r := remembering(plain.model, plain.rows[0].table, 1, 4)
	now := r.Width(0)
	for _, p := range []float64{0, .3, 1} {
		w := r.IfKnown(0, func(Seen) float64 { return p })
		if math.Abs(w.Yes-p) > 1e-12 || math.Abs(w.Expected-now) > 1e-6*now || w.Now != now || math.Abs(w.Effective-float64(r.Cars())) > 1e-6 {
			t.Errorf("at %g: %+v, now %g", p, w, now)
		}
	}
	items := []int{3, 17, 40}
	chances := func(b byte) float64 {
		k, f, dent := Unpack(b)
		v := .05 + .15*float64(k)
		if f == damage.FillerOverHole || dent {
			v += .02
		}
		return v
	}
	for _, list := range [][]int{items[:1], items} {
		quick := r.IfLook(0, list, chances)
		slow := r.IfKnown(0, func(c Seen) float64 {
			worst := byte(0)
			for _, i := range list {
				worst = max(worst, c.Packed(i))
			}
			return chances(worst)
		})
		if quick != slow {
			t.Errorf("%d items: %+v and %+v", len(list), quick, slow)
		}
		if quick.Expected == now || quick.Yes <= .05 || quick.Yes >= .8 {
			t.Errorf("the look tells nothing: %+v", quick)
		}
	}
}
