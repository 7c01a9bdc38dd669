package scores

import (
	"math"
	"strconv"
	"testing"

	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"
	"gonum.org/v1/gonum/stat/distuv"
)

// A prediction is what Learn says of the others and depends on nothing else: the job's
// own residual changes nothing in it.
func TestLeaveOneOutHasNotSeenTheJob(t *testing.T) {
	properties := seeded(20260604, 200)
	properties.Property("as Learn without the job", prop.ForAll(func(r []float64, k int, other float64) bool {
		all := make([]Observation, 0, 16)
		for i, x := range r {
			all = append(all, Observation{[]string{"floors", "sills"}[i%2], "job " + strconv.Itoa(i), x, .1 + .01*float64(i)})
		}
		before, err := LeaveOneOut(all, .3)
		if err != nil {
			return false
		}
		var rest []Observation
		for i, o := range all {
			if i != k && o.Group == all[k].Group {
				rest = append(rest, o)
			}
		}
		want := learnOne(t, rest, .3)
		all[k].Residual = other
		after, err := LeaveOneOut(all, .3)
		return err == nil && before[k].Job == all[k].Job && before[k].Others == len(rest) &&
			before[k].Shift == want.Shift && before[k].SD == want.SD && before[k].Extra == want.Extra &&
			after[k].Shift == before[k].Shift && after[k].Spread() == before[k].Spread()
	}, gen.SliceOfN(8, gen.Float64Range(-1, 1)), gen.IntRange(0, 7), gen.Float64Range(-1, 1)))
	properties.TestingRun(t)
	one, err := LeaveOneOut([]Observation{{"g", "a", .7, .1}}, .3)
	if err != nil || one[0].Others != 0 || one[0].Shift != 0 || one[0].SD != .3 {
		t.Errorf("a group's only job: %+v, %v", one, err)
	}
}

// gains compares learning with the starting figures over many simulated shops of
// six groups and twelve jobs each, on jobs that the prediction has not seen.
func gains(t *testing.T, seed uint64, truthSD float64) (gain, se float64) {
	r := newRandom(seed)
	var all []float64
	for range 150 {
		var o []Observation
		for g := range 6 {
			o = append(o, r.jobs("group "+strconv.Itoa(g), 12, r.normal(0, truthSD), 0)...)
		}
		p, err := LeaveOneOut(o, PocketPriorSD)
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, Compare(p).Gain)
	}
	gain, se, _ = Average(all)
	return gain, se
}

func TestLearningImprovesUnseenJobs(t *testing.T) {
	if gain, se := gains(t, 8, .35); gain < 5*se {
		t.Errorf("shops that differ: gain %.4f ± %.4f", gain, se)
	}
	// Negative control: where the truth is the starting figure there is nothing to
	// gain, and little is lost.
	if gain, se := gains(t, 9, 0); gain > 2*se || gain < -.02 {
		t.Errorf("shops that do not differ: gain %.4f ± %.4f", gain, se)
	}
}

func TestCompareByHand(t *testing.T) {
	c := Compare([]Prediction{{Shift: 1, SD: 0, Variance: 1, Residual: 1}, {Shift: 1, SD: 0, Variance: 1, Residual: 1}})
	check(t, "learnt", c.Learnt, .2336949772551, 1e-12) // N(0,1) at 0, as above
	check(t, "starting", c.Starting, .6024413576276, 1e-12)
	check(t, "gain", c.Gain, .6024413576276-.2336949772551, 1e-12)
	check(t, "standard", Prediction{Shift: 1, SD: 3, Variance: 16, Residual: 11}.Standard(), 2, 1e-15)
	check(t, "spread", Prediction{SD: 3, Variance: 8, Extra: 8}.Spread(), 5, 1e-15)
}

// Scaled inverse chi-square by hand (BDA section 2.6): prior 1 worth 10, ten
// misses of mean square 4: variance (10 + 40)/20.
func TestSpreadByHand(t *testing.T) {
	misses := []float64{2, -2, 2, -2, 2, -2, 2, -2, 2, -2}
	s := LearnSpread(misses, PriorJobs)
	check(t, "factor", s.Factor, math.Sqrt(2.5), 1e-15)
	check(t, "plain", s.Plain, 2, 1e-15)
	check(t, "share", s.Share, .5, 1e-15)
	// Printed chi-square values at 20 degrees: 12.443 (10 %), 28.412 (90 %).
	check(t, "low", s.Low, math.Sqrt(20*2.5/28.412), 1e-3)
	check(t, "high", s.High, math.Sqrt(20*2.5/12.443), 1e-3)
	if none := LearnSpread(nil, PriorJobs); none.Factor != 1 || none.Share != 0 || none.Jobs != 0 {
		t.Errorf("no jobs: %+v", none)
	}
	left := LeaveOneOutSpread([]float64{1, 5, 1}, 10)
	check(t, "without the wild one", left[1].Factor, 1, 1e-15)
	check(t, "with it", left[0].Factor, math.Sqrt((10+26)/12.0), 1e-15)
	mustPanic(t, "no prior", func() { LearnSpread(nil, 0) })
	mustPanic(t, "not finite", func() { LearnSpread([]float64{math.NaN()}, 10) })
}

// The cube-root approximation against gonum's chi-square: within half a per cent.
func TestMeanChiSquare(t *testing.T) {
	for _, v := range []float64{10, 11, 17, 40, 200, 1000} {
		for _, p := range []float64{.1, .9} {
			want := distuv.ChiSquared{K: v}.Quantile(p) / v
			if got := meanChiSquare(p, v); math.Abs(got/want-1) > .005 {
				t.Errorf("%g degrees, p %g: %g, want %g", v, p, got, want)
			}
		}
	}
}

// The stated interval recovers the spread of shops that differ; the simulation draws
// from the stated prior: 10/χ² with 10 degrees.
func TestSpreadIsRecovered(t *testing.T) {
	r := newRandom(11)
	inside := 0
	for range 2000 {
		truth := math.Sqrt(10 / distuv.ChiSquared{K: 10}.Quantile(r.s.Uniform()))
		misses := make([]float64, 15)
		for i := range misses {
			misses[i] = r.normal(0, truth)
		}
		if s := LearnSpread(misses, PriorJobs); s.Low <= truth && truth <= s.High {
			inside++
		}
	}
	if inside < 1510 || inside > 1690 { // 1600 ± 5 standard errors
		t.Errorf("true spread inside %d times of 2000", inside)
	}
	properties := seeded(20260605, 300)
	properties.Property("between the plain spread and 1", prop.ForAll(func(z []float64) bool {
		s := LearnSpread(z, PriorJobs)
		return s.Factor >= math.Min(1, s.Plain)-1e-12 && s.Factor <= math.Max(1, s.Plain)+1e-12 && s.Low < s.Factor && s.Factor < s.High
	}, gen.SliceOfN(7, gen.Float64Range(-4, 4))))
	properties.TestingRun(t)
}
