package scores

import (
	"math"
	"math/rand/v2"
	"testing"
)

var toldDoubt = Doubt{Growth: math.Log(1.05), Shared: 0.12, Own: 0.09}

func missesOf(n int) (jobs []Miss) {
	r := rand.New(rand.NewPCG(7, uint64(n)))
	for range n {
		v := 0.01 + 0.06*r.Float64()
		jobs = append(jobs, Miss{0.2 + math.Sqrt(v)*r.NormFloat64(), v})
	}
	return jobs
}

// TestLearnDoubtOnAGrid: growth and the shared doubt are the mean and the standard
// deviation of the posterior integrated on a grid by the trapezium rule, which converges
// faster than any power of the step for a smooth function that vanishes at both ends
// (L. N. Trefethen and J. A. C. Weideman, SIAM Review 56, 2014).
func TestLearnDoubtOnAGrid(t *testing.T) {
	for _, n := range []int{0, 1, 3, 9} {
		jobs := missesOf(n)
		log := func(mu float64) float64 {
			z := (mu - toldDoubt.Growth) / toldDoubt.Shared
			sum := -z * z / 2
			for _, m := range jobs {
				sum -= (m.Residual - mu) * (m.Residual - mu) / (m.Variance + toldDoubt.Own*toldDoubt.Own) / 2
			}
			return sum
		}
		var p, first, second float64
		for k := -20000; k <= 20000; k++ {
			mu := float64(k) * 1e-4
			w := math.Exp(log(mu))
			p, first, second = p+w, first+w*mu, second+w*mu*mu
		}
		mean := first / p
		got := LearnDoubt(toldDoubt, jobs)
		if sd := math.Sqrt(second/p - mean*mean); math.Abs(got.Growth-mean) > 1e-9 || math.Abs(got.Shared-sd) > 1e-9 {
			t.Errorf("%d jobs: %.12f ± %.12f, on the grid %.12f ± %.12f", n, got.Growth, got.Shared, mean, sd)
		}
		if got.Own != toldDoubt.Own {
			t.Errorf("%d jobs are enough for a doubt of one car", n)
		}
	}
}

// TestDoubtShrinks: with jobs as noisy as the model says, the doubt falls as worked out
// by hand from 1/s² + n/(v + o²), with the modelled standard deviations .237 told and
// .097 after the survey.
func TestDoubtShrinks(t *testing.T) {
	for _, one := range []struct {
		Doubt
		modelled float64
		after    map[int]float64
	}{
		{toldDoubt, 0.237, map[int]float64{0: .150, 5: .123, 10: .112, 20: .103, 40: .098}},
		{Doubt{Shared: .06, Own: .05}, 0.097, map[int]float64{0: .078, 5: .063, 10: .058, 20: .055, 40: .053}},
	} {
		for n, want := range one.after {
			jobs := make([]Miss, n)
			v := one.modelled * one.modelled
			for k := range jobs {
				// As far off as the model and the car's own doubt together say.
				jobs[k] = Miss{one.Growth + math.Sqrt(v+one.Own*one.Own)*float64(1-2*(k%2)), v}
			}
			got := LearnDoubt(one.Doubt, jobs)
			if got.Own = one.Own; math.Abs(got.SD()-want) > 0.0011 {
				t.Errorf("%d jobs: %.4f, by hand %.3f", n, got.SD(), want)
			}
		}
	}
}

// TestOwnDoubtIsLearnt: from ten jobs on, misses as large as the model and a doubt of
// each car together bring that doubt out; it stays within its bounds.
func TestOwnDoubtIsLearnt(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	var jobs []Miss
	for range 4000 {
		jobs = append(jobs, Miss{math.Sqrt(0.0001+0.2*0.2) * r.NormFloat64(), 0.0001})
	}
	if got := LearnDoubt(toldDoubt, jobs); math.Abs(got.Own-0.2) > 0.01 || math.Abs(got.Growth) > 0.01 {
		t.Errorf("own %.3f, growth %.3f, expected .2 and 0", got.Own, got.Growth)
	}
	for _, residual := range []float64{0, 5} {
		jobs := make([]Miss, 30)
		for k := range jobs {
			jobs[k] = Miss{residual * float64(1-2*(k%2)), 0.01}
		}
		if own := LearnDoubt(toldDoubt, jobs).Own; own < LeastOwn || own > MostOwn {
			t.Errorf("misses of %g: own %.3f", residual, own)
		}
	}
	if got := LearnDoubt(Doubt{Growth: .05}, missesOf(20)); got != (Doubt{Growth: .05}) {
		t.Errorf("no doubt became %+v", got)
	}
}

// TestMissRefused: a miss that cannot be panics.
func TestMissRefused(t *testing.T) {
	for _, m := range []Miss{{math.NaN(), 1}, {math.Inf(1), 1}, {0, -1}, {0, math.NaN()}} {
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("%+v is taken", m)
				}
			}()
			LearnDoubt(toldDoubt, []Miss{m})
		}()
	}
}
