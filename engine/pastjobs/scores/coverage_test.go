package scores

import (
	"math"
	"testing"

	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"
	"gonum.org/v1/gonum/stat/distuv"
)

// Eq. 43 of Gneiting and Raftery 2007 by hand; its mean for N(0,1) and the central
// range of N(0,1) is 4φ(z)/a.
func TestIntervalScore(t *testing.T) {
	for _, c := range [][4]float64{{10, 20, 15, 10}, {10, 20, 8, 30}, {10, 20, 25, 60}, {8000, 14000, 15500, 21000}} {
		check(t, "interval score", IntervalScore(c[0], c[1], c[2], 0.2), c[3], 1e-12)
	}
	check(t, "by two pinballs", 2/0.2*(Pinball(10, 8, .1)+Pinball(20, 8, .9)), 30, 1e-12)
	for a, want := range map[float64]float64{.2: 3.5099666386, .1: 4.1254256150, .05: 4.6756055844} {
		z := distuv.UnitNormal.Quantile(1 - a/2)
		sum := 0.0
		for _, y := range quantiles(0, 1, 200000) {
			sum += IntervalScore(-z, z, y, a)
		}
		check(t, "mean interval score", sum/200000, want, 2e-3)
	}
	mustPanic(t, "ends out of order", func() { IntervalScore(2, 1, 1, .2) })
}

// By hand.
func TestPinball(t *testing.T) {
	check(t, "above", Pinball(100, 120, .9), 18, 1e-12)
	check(t, "below", Pinball(100, 80, .9), 2, 1e-12)
	check(t, "low quantile", Pinball(100, 120, .1), 2, 1e-12)
}

// Inputs and printed intervals of R. G. Newcombe, Statistics in Medicine 17 (1998)
// 857-872, table I: Wilson is method 3, Clopper-Pearson method 5; 4 of 10 and the
// rule-of-three rows recomputed with another library; 7 of 50 is the example in SciPy's
// documentation of its binomial test.
func TestIntervalsOfAShare(t *testing.T) {
	for _, c := range []struct {
		hits, n                          int
		wilsonLow, wilsonHigh, low, high float64
	}{
		{81, 263, .2553, .3662, .2527, .3676}, {15, 148, .0624, .1605, .0578, .1617},
		{0, 20, 0, .1611, 0, .1684}, {1, 29, .0061, .1718, .0009, .1776}, {4, 10, .1682, .6873, .1216, .7376},
	} {
		low, high := Wilson(c.hits, c.n, .95)
		check(t, "Wilson low", low, c.wilsonLow, 5.1e-5)
		check(t, "Wilson high", high, c.wilsonHigh, 5.1e-5)
		low, high = ClopperPearson(c.hits, c.n, .95)
		check(t, "exact low", low, c.low, 5.1e-5)
		check(t, "exact high", high, c.high, 5.1e-5)
	}
	low, high := ClopperPearson(7, 50, .95)
	check(t, "7 of 50 low", low, .05819170033997342, 1e-12)
	check(t, "7 of 50 high", high, .26739600249700846, 1e-12)
	// The printed low end includes its root finder's tolerance; this is the root of the
	// binomial sum in 50-digit arithmetic (Python's decimal).
	check(t, "7 of 50 low, exact", low, .058191700340372084863, 1e-15)
	for n, want := range map[int]float64{20: .1391083407, 50: .0581550791, 100: .0295130496} {
		_, high := ClopperPearson(0, n, .9) // 5 % in the upper tail
		check(t, "none seen", high, want, 1e-10)
	}
	for _, f := range []func(int, int, float64) (float64, float64){Wilson, ClopperPearson} {
		if low, high := f(9, 9, .95); high != 1 || low <= 0 {
			t.Errorf("all of 9: %g to %g", low, high)
		}
	}
	mustPanic(t, "no tries", func() { Wilson(0, 0, .95) })
	mustPanic(t, "too many hits", func() { ClopperPearson(3, 2, .95) })
}

// Against gonum's beta and binomial distributions.
func TestTailsAgainstGonum(t *testing.T) {
	properties := seeded(20260602, 400)
	properties.Property("tails", prop.ForAll(func(n int, share, p float64) bool {
		k := int(share * float64(n))
		b := distuv.Binomial{N: float64(n), P: p}
		down, up := tails(k, n, p)
		return near(down, b.CDF(float64(k)), 1e-10) && near(up, 1-b.CDF(float64(k)-1), 1e-10)
	}, gen.IntRange(1, 3000), gen.Float64Range(0, 1), gen.Float64Range(0.001, 0.999)))
	properties.Property("exact interval", prop.ForAll(func(n int, share float64) bool {
		k := int(share * float64(n))
		low, high := ClopperPearson(k, n, .8)
		ok := true
		if k > 0 {
			ok = near(distuv.Beta{Alpha: float64(k), Beta: float64(n - k + 1)}.CDF(low), .1, 1e-9)
		}
		if k < n {
			ok = ok && near(distuv.Beta{Alpha: float64(k + 1), Beta: float64(n - k)}.CDF(high), .9, 1e-9)
		}
		return ok
	}, gen.IntRange(1, 400), gen.Float64Range(0, 1)))
	properties.TestingRun(t)
	for _, p := range []float64{0, 1} {
		if down, up := tails(int(p*5), 5, p); down != 1 || up != 1 {
			t.Errorf("chance %g: %g, %g", p, down, up)
		}
	}
}

// Exact binomial; the same limits as the equal-tailed interval of a general statistics
// library.
func TestHitLimits(t *testing.T) {
	for _, c := range []struct {
		n            int
		level        float64
		fewest, most int
	}{{20, .05, 12, 19}, {50, .05, 34, 45}, {100, .05, 72, 88}, {200, .01, 145, 174}, {1000, .001, 757, 841}} {
		if a, b := HitLimits(c.n, .8, c.level); a != c.fewest || b != c.most {
			t.Errorf("%d jobs: %d to %d, want %d to %d", c.n, a, b, c.fewest, c.most)
		}
	}
}

func TestJudge(t *testing.T) {
	for _, c := range []struct {
		c            Coverage
		verdict      Verdict
		above, below bool
	}{
		{Coverage{9, 9, 0, 0}, TooFew, false, false}, // even so, no verdict
		{Coverage{10, 1, 8, 1}, Agrees, false, false},
		{Coverage{24, 2, 19, 3}, Agrees, false, false},
		{Coverage{20, 4, 12, 4}, Agrees, false, false},
		{Coverage{20, 4, 11, 5}, TooNarrow, false, false}, // P(B(20,.1) ≥ 5) = .043
		{Coverage{20, 3, 11, 6}, TooNarrow, true, false},  // P(B(20,.1) ≥ 6) = .011
		{Coverage{20, 0, 20, 0}, TooWide, false, false},
		{Coverage{100, 0, 80, 20}, Agrees, true, false}, // right in the middle, but all misses on one side
		{Coverage{100, 20, 80, 0}, Agrees, false, true},
	} {
		j := c.c.Judge()
		if j.Verdict != c.verdict || j.ManyAbove != c.above || j.ManyBelow != c.below {
			t.Errorf("%+v: %+v", c.c, j)
		}
	}
	if j := (Coverage{9, 9, 0, 0}).Judge(); j != (Judgement{}) {
		t.Errorf("figures about nine jobs: %+v", j)
	}
	j := Coverage{24, 2, 19, 3}.Judge()
	check(t, "expected outside", j.ExpectedOut, 4.8, 1e-12)
	mustPanic(t, "does not add up", func() { Coverage{10, 1, 1, 1}.Judge() })
}

// An honest forecaster is called wrong in at most 5 cases of 100; one whose ranges are
// a third too narrow is detected most of the time with 100 jobs.
func TestJudgeOverManyShops(t *testing.T) {
	r := newRandom(3)
	wrong := func(width float64) (n int) {
		for range 1000 {
			jobs := make([]Finished, 100)
			for i := range jobs {
				jobs[i] = Finished{Low: -z90 * width, High: z90 * width, Found: r.normal(0, 1), PIT: .5}
			}
			if Count(jobs).Judge().Verdict != Agrees {
				n++
			}
		}
		return n
	}
	if n := wrong(1); n > 50+5*7 || n == 0 {
		t.Errorf("honest ranges called wrong %d times in 1000", n)
	}
	if n := wrong(2.0 / 3); n < 900 {
		t.Errorf("narrow ranges found out only %d times in 1000", n)
	}
}

func TestBoxes(t *testing.T) {
	for _, c := range []struct {
		found, pit float64
		box        int
	}{
		{99, .05, 0}, {100, .1, 1}, {101, .1799, 1}, {102, .18, 2}, {150, .5, 6}, {199, .8999, 10}, {200, .9, 10}, {201, .95, 11},
		{120, .02, 1}, {180, .99, 10}, // inside the published ends, whatever the draws say
	} {
		if b := (Finished{100, 200, c.found, c.pit}).Box(); b != c.box {
			t.Errorf("%+v: box %d", c, b)
		}
	}
	sum := 0.0
	for b := range Boxes {
		sum += BoxChance(b)
	}
	check(t, "chances", sum, 1, 1e-12)
	// An honest range fills the boxes as BoxChance says: chi-square with 11 degrees,
	// 31.264 at 0.1 % (any table). A biased range does not.
	for shift, even := range map[float64]bool{0: true, 0.3: false} {
		r := newRandom(4)
		jobs := make([]Finished, 5000)
		for i := range jobs {
			y := r.normal(shift, 1)
			jobs[i] = Finished{-z90, z90, y, distuv.UnitNormal.CDF(y)}
		}
		sum := 0.0
		for b, n := range Strip(jobs) {
			e := 5000 * BoxChance(b)
			sum += (float64(n) - e) * (float64(n) - e) / e
		}
		if (sum < 31.264) != even {
			t.Errorf("shift %g: chi-square %.1f", shift, sum)
		}
		if c := Count(jobs); c.Jobs != 5000 || c.Below+c.Inside+c.Above != 5000 {
			t.Errorf("%+v", c)
		}
	}
	mustPanic(t, "place outside", func() { Finished{1, 2, 1, 1.5}.Box() })
}

// NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.2, upper critical
// values of Student's t; and gonum.
func TestStudentQuantile(t *testing.T) {
	for _, c := range []struct {
		degrees   int
		t90, t975 float64
	}{{1, 3.078, 12.706}, {2, 1.886, 4.303}, {3, 1.638, 3.182}, {5, 1.476, 2.571}, {10, 1.372, 2.228}, {30, 1.310, 2.042}, {100, 1.290, 1.984}} {
		check(t, "t .90", studentQuantile(.8, c.degrees), c.t90, 5.1e-4)
		check(t, "t .975", studentQuantile(.95, c.degrees), c.t975, 5.1e-4)
	}
	for v := 1; v < 60; v++ {
		for _, central := range []float64{.1, .5, .8, .95, .99} {
			got := studentQuantile(central, v)
			back := 2*distuv.StudentsT{Mu: 0, Sigma: 1, Nu: float64(v)}.CDF(got) - 1
			check(t, "central chance", back, central, 1e-10)
		}
	}
	for s := 0.0; s <= 1; s += 0.001 {
		check(t, "arcsine", arcsine(s), math.Asin(s), 1e-15)
	}
}
