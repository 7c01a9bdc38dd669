package scores

import (
	"math"
	"strings"
	"testing"

	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"underpaint/engine/chance"
)

// Thirteen trials of a vaccine (G. A. Colditz and others, JAMA 271, 1994): cases
// and others, treated and untreated.
var vaccine = [][4]float64{
	{4, 119, 11, 128}, {6, 300, 29, 274}, {3, 228, 11, 209}, {62, 13536, 248, 12619}, {33, 5036, 47, 5761},
	{180, 1361, 372, 1079}, {8, 2537, 10, 619}, {505, 87886, 499, 87892}, {29, 7470, 45, 7232}, {17, 1699, 65, 1600},
	{186, 50448, 141, 27197}, {5, 2493, 3, 2338}, {27, 16886, 29, 17825},
}

// Results for the log risk ratio as asserted in the tests of the R package metafor
// against a second program: fixed −.4303, Q 152.2330; DerSimonian-Laird −.7141,
// 95 % −1.0644 to −.3638; its documentation prints τ² .3088 (from memory).
func TestPoolVaccineTrials(t *testing.T) {
	var y, v []float64
	for _, c := range vaccine {
		n1, n2 := c[0]+c[1], c[2]+c[3]
		y = append(y, math.Log(c[0]/n1)-math.Log(c[2]/n2))
		v = append(v, 1/c[0]-1/n1+1/c[2]-1/n2)
	}
	fixed, weight := weightedMean(y, v, 0)
	q := 0.0
	for i := range y {
		q += (y[i] - fixed) * (y[i] - fixed) / v[i]
	}
	check(t, "fixed", fixed, -.4303, 5.1e-5)
	check(t, "fixed low", fixed-1.959964/math.Sqrt(weight), -.5097, 5.1e-5)
	check(t, "Q", q, 152.2330, 5.1e-5)
	p := Pool(y, v)
	check(t, "mean", p.Mean, -.7141, 5.1e-5)
	check(t, "low", p.Mean-1.959964*p.SE, -1.0644, 5.1e-5)
	check(t, "high", p.Mean+1.959964*p.SE, -.3638, 5.1e-5)
	check(t, "between", p.Extra, .3088, 5.1e-5)
}

// Eight schools (D. B. Rubin, J. Educ. Stat. 6, 1981; Gelman and others, Bayesian
// Data Analysis, section 5.5): pooled estimate 7.9 with variance 17.4, and no
// evidence of differences between schools, so Extra is 0.
func TestPoolEightSchools(t *testing.T) {
	y := []float64{28.39, 7.94, -2.75, 6.82, -.64, .63, 18.01, 12.16}
	var v []float64
	for _, s := range []float64{14.9, 10.2, 16.3, 11, 9.4, 11.4, 10.4, 17.6} {
		v = append(v, s*s)
	}
	p := Pool(y, v)
	check(t, "mean", p.Mean, 7.9, .05)
	check(t, "variance", p.SE*p.SE, 17.4, .05)
	check(t, "between", p.Extra, 0, 0)
	mustPanic(t, "nothing to pool", func() { Pool(nil, nil) })
}

// Normal mean with known variance and normal prior, by hand (BDA section 2.5): prior
// N(0, .3²), one residual .4 of variance .09: halfway, sd .3/√2.
func TestShrinkByHand(t *testing.T) {
	l := learnOne(t, []Observation{{"floors", "a", .4, .09}}, .3)
	check(t, "shift", l.Shift, .2, 1e-15)
	check(t, "sd", l.SD, .3/math.Sqrt2, 1e-15)
	check(t, "share", l.Share, .5, 1e-15)
	check(t, "plain", l.Plain, .4, 1e-15)
	check(t, "low", l.Low, .2-1.2815515655446*.3/math.Sqrt2, 1e-12)
	factor, low, high := l.Factor()
	check(t, "factor", factor, math.Exp(.2), 1e-14)
	if !(low < factor && factor < high) {
		t.Errorf("factor %g not within %g to %g", factor, low, high)
	}
}

func TestShrinkProperties(t *testing.T) {
	make1 := func(residuals []float64) []Observation {
		out := make([]Observation, len(residuals))
		for i, r := range residuals {
			out[i] = Observation{"g", string(rune('a' + i)), r, .05 + .1*math.Abs(r)}
		}
		return out
	}
	properties := seeded(20260603, 500)
	properties.Property("between 0 and the plain mean, surer than either alone", prop.ForAll(func(residuals []float64, prior float64) bool {
		l := learnOne(t, make1(residuals), prior)
		low, high := math.Min(0, l.Plain), math.Max(0, l.Plain)
		return l.Shift >= low && l.Shift <= high && l.SD < prior && l.SD < l.PlainSE && l.Share > 0 && l.Share < 1
	}, gen.SliceOfN(9, gen.Float64Range(-2, 2)), gen.Float64Range(.05, 1)))
	properties.Property("more of the same jobs, more of the shop", prop.ForAll(func(r, v float64) bool {
		last := 0.0
		for n := 1; n <= 64; n *= 2 {
			all := make([]Observation, n)
			for i := range all {
				all[i] = Observation{"g", string(rune('A' + i)), r, v}
			}
			l := learnOne(t, all, .3)
			if l.Share <= last || !near(l.Shift, l.Share*r, 1e-12) {
				return false
			}
			last = l.Share
		}
		return true
	}, gen.Float64Range(-1, 1), gen.Float64Range(.01, 1)))
	properties.Property("sign of every residual turned, sign of the shift turned", prop.ForAll(func(residuals []float64) bool {
		turned := make([]float64, len(residuals))
		for i, r := range residuals {
			turned[i] = -r
		}
		return learnOne(t, make1(residuals), .3).Shift == -learnOne(t, make1(turned), .3).Shift
	}, gen.SliceOfN(5, gen.Float64Range(-2, 2))))
	properties.TestingRun(t)
	// The two extremes: one vague job moves next to nothing, a thousand jobs move the
	// shift all the way.
	if l := learnOne(t, []Observation{{"g", "a", .5, 9}}, .2); l.Shift > .005 {
		t.Errorf("one vague job moved it by %g", l.Shift)
	}
	if l := learnOne(t, newRandom(5).jobs("g", 1000, .5, 0), .2); l.Share < .99 || !near(l.Shift, .5, 4*l.SD) {
		t.Errorf("a thousand jobs: %+v", l)
	}
}

// shops learns the shift of many simulated shops with n jobs each; truths come from
// N(0, truthSD). It returns the share of truths inside the 80 % interval, the mean
// square of (shift − truth)/SD, and the mean squared errors with and without shrinkage.
func shops(t *testing.T, seed uint64, n int, truthSD, priorSD, extra float64) (inside, z2, drawn, plain float64) {
	const many = 2000
	r := newRandom(seed)
	for range many {
		truth := r.normal(0, truthSD)
		l := learnOne(t, r.jobs("g", n, truth, extra), priorSD)
		if l.Low <= truth && truth <= l.High {
			inside++
		}
		z2 += (l.Shift - truth) * (l.Shift - truth) / (l.SD * l.SD)
		drawn += (l.Shift - truth) * (l.Shift - truth)
		plain += (l.Plain - truth) * (l.Plain - truth)
	}
	return inside / many, z2 / many, drawn / many, plain / many
}

func TestShopsAreRecovered(t *testing.T) {
	for _, n := range []int{1, 3, 9, 30} {
		inside, z2, drawn, plain := shops(t, 10+uint64(n), n, .3, .3, 0)
		// .8 ± 5 standard errors of 2000 shops, and a little more because Extra cannot
		// go below 0.
		if inside < .8-.045 || inside > .8+.065 {
			t.Errorf("%d jobs: %.3f of the truths inside 80 %%", n, inside)
		}
		if z2 < .75 || z2 > 1.2 {
			t.Errorf("%d jobs: mean square %.2f of the standardised error", n, z2)
		}
		if drawn >= plain {
			t.Errorf("%d jobs: drawing in made the error worse: %g, plain %g", n, drawn, plain)
		}
	}
	// Jobs that differ more than the model says: Extra keeps the interval honest.
	if inside, _, _, _ := shops(t, 41, 12, .3, .3, .5); inside < .73 || inside > .87 {
		t.Errorf("extra spread: %.3f inside", inside)
	}
	// Negative control: with shops that differ far more than the prior says, the
	// interval misses too often.
	if inside, z2, _, _ := shops(t, 42, 3, .9, .1, 0); inside > .5 || z2 < 5 {
		t.Errorf("a prior much too tight passes: %.3f inside, mean square %.1f", inside, z2)
	}
	// A shop whose truth is the starting figure is not moved beyond noise: its 80 %
	// interval leaves out 0 at most 20 times in 100, and shrinkage leaves the estimate
	// nearer to 0 than the plain mean.
	inside, _, drawn, plain := shops(t, 43, 9, 0, .3, 0)
	if inside < .78 || drawn >= plain {
		t.Errorf("the starting shop: %.3f inside, mean squares %g, plain %g", inside, drawn, plain)
	}
}

// Simulation-based calibration (S. Talts and others, arXiv:1804.06788, 2018): the rank
// of the truth among 9 posterior draws is uniform over 0..9. Each shop has one job, so
// that the model is exact. Chi-square with 9 degrees: 27.877 at 0.1 %.
func TestRanksAreEven(t *testing.T) {
	ranks := func(prior float64) float64 {
		r := newRandom(6)
		var count [10]int
		for range 1000 {
			truth := r.normal(0, .3)
			l := learnOne(t, r.jobs("g", 1, truth, 0), prior)
			rank := 0
			for range 9 {
				if r.normal(l.Shift, l.SD) < truth {
					rank++
				}
			}
			count[rank]++
		}
		return chiSquare(count[:])
	}
	if c := ranks(.3); c > 27.877 {
		t.Errorf("ranks are not even: chi-square %.1f", c)
	}
	if c := ranks(.15); c < 27.877 {
		t.Errorf("half the right prior passes: chi-square %.1f", c)
	}
}

func TestLearnGroupsAndErrors(t *testing.T) {
	all := []Observation{{"sills", "a", .1, .1}, {"floors", "a", .3, .1}, {"sills", "b", .2, .1}}
	l, err := Learn(all, PocketPriorSD)
	if err != nil || len(l) != 2 || l[0].Group != "sills" || l[0].Jobs != 2 || l[1].Jobs != 1 {
		t.Fatalf("%+v, %v", l, err)
	}
	for _, c := range []struct {
		o    Observation
		want string
	}{
		{Observation{"sills", "a", 0, .1}, "once"}, {Observation{"x", "y", math.NaN(), .1}, "finite"},
		{Observation{"x", "y", math.Inf(1), .1}, "finite"}, {Observation{"x", "y", 0, 0}, "variance"},
		{Observation{"x", "y", 0, math.NaN()}, "variance"}, {Observation{"x", "y", 0, 2e6}, "variance"},
	} {
		_, err := Learn(append(all[:3:3], c.o), .3)
		if err == nil || !strings.Contains(err.Error(), c.want) || !strings.Contains(err.Error(), c.o.Job) {
			t.Errorf("%+v: %v", c.o, err)
		}
		if _, err := LeaveOneOut(append(all[:3:3], c.o), .3); err == nil {
			t.Errorf("%+v taken by LeaveOneOut", c.o)
		}
	}
	if l, err := Learn(nil, .3); err != nil || len(l) != 0 {
		t.Errorf("nothing: %v, %v", l, err)
	}
	mustPanic(t, "no prior", func() { _, _ = Learn(all, 0) })
}

// Geometric ratios by hand: 2 and 8 times make 4 times; the standard error of the
// logs ln 2, ln 8 is ln 2, and t of one degree at 80 % is 3.0777.
func TestRatios(t *testing.T) {
	r, err := Ratios([]Pair{{"metalwork", "a", 10, 20}, {"paint", "a", 5, 5}, {"metalwork", "b", 10, 80}}, .8)
	if err != nil || len(r) != 2 {
		t.Fatal(r, err)
	}
	check(t, "ratio", r[0].Ratio, 4, 1e-12)
	check(t, "SE", r[0].SE, math.Ln2, 1e-12)
	check(t, "high", r[0].High, 4*math.Exp(3.0776835*math.Ln2), 1e-5)
	check(t, "low", r[0].Low, 4*math.Exp(-3.0776835*math.Ln2), 1e-7)
	if r[1].Known || r[1].SE != 0 || r[1].Ratio != 1 {
		t.Errorf("one job: %+v", r[1])
	}
	for _, p := range []Pair{{"g", "j", 0, 1}, {"g", "j", 1, 0}, {"g", "j", math.NaN(), 1}, {"g", "j", 1, math.Inf(1)}, {"g", "a", 1, 1}} {
		if _, err := Ratios([]Pair{{"g", "a", 1, 1}, p}, .8); err == nil || !strings.Contains(err.Error(), p.Job) {
			t.Errorf("%+v: %v", p, err)
		}
	}
	// The interval contains the true ratio in 80 shops of 100, by simulation.
	random, inside := newRandom(7), 0
	for range 2000 {
		var pairs []Pair
		for _, job := range []string{"a", "b", "c", "d"} {
			pairs = append(pairs, Pair{"g", job, 10, 12 * chance.Exp(random.normal(0, .4))})
		}
		r, _ := Ratios(pairs, .8)
		if r[0].Low <= 1.2 && 1.2 <= r[0].High {
			inside++
		}
	}
	if inside < 1510 || inside > 1690 {
		t.Errorf("true ratio inside %d times of 2000", inside)
	}
}

// TestSumRatios: a ratio of sums worked out by hand, a group found sound, and the
// standard error against the jackknife (M. H. Quenouille, Biometrika 43, 1956), which
// is independent of it.
func TestSumRatios(t *testing.T) {
	// Found 2, 0, 7 where 3, 1, 5 were expected: 9/9 = 1; misses −1, −1, 2, squares 6.
	r, err := SumRatios([]Pair{{"floors", "a", 3, 2}, {"lids", "a", 2, 0}, {"floors", "b", 1, 0}, {"floors", "c", 5, 7}}, .8)
	if err != nil {
		t.Fatal(err)
	}
	check(t, "ratio", r[0].Ratio, 1, 1e-15)
	check(t, "standard error", r[0].SE, math.Sqrt(6.0/2/3)/3, 1e-14)
	if r[1].Known || r[1].Ratio != 0 {
		t.Errorf("one sound job: %+v", r[1])
	}
	if _, err := SumRatios([]Pair{{"g", "a", 0, 1}}, .8); err == nil {
		t.Error("nothing expected, but no error")
	}
	var pairs []Pair
	for k := range 40 {
		expected := 3 + float64(k%7)
		pairs = append(pairs, Pair{"g", string(rune('A' + k)), expected, math.Floor(expected*0.9 + 2*math.Sin(float64(3*k)))})
	}
	whole, _ := SumRatios(pairs, .8)
	mean, sum := 0.0, 0.0
	var left []float64
	for k := range pairs {
		one, _ := SumRatios(append(append([]Pair{}, pairs[:k]...), pairs[k+1:]...), .8)
		left = append(left, one[0].Ratio)
		mean += one[0].Ratio / 40
	}
	for _, v := range left {
		sum += (v - mean) * (v - mean)
	}
	jackknife := math.Sqrt(sum * 39 / 40)
	if got := whole[0].SE * whole[0].Ratio; math.Abs(got/jackknife-1) > 0.03 {
		t.Errorf("standard error %v, by the jackknife %v", got, jackknife)
	}
}
