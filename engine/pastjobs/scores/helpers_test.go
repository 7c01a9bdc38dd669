package scores

import (
	"math"
	"strconv"
	"testing"

	"github.com/leanovate/gopter"

	"underpaint/engine/chance"
)

func near(got, want, tolerance float64) bool { return math.Abs(got-want) <= tolerance }

func check(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !near(got, want, tolerance) {
		t.Errorf("%s: got %.13g, want %.13g within %g", what, got, want, tolerance)
	}
}

// seeded returns a property set whose failure report prints this seed.
func seeded(seed int64, runs int) *gopter.Properties {
	parameters := gopter.DefaultTestParametersWithSeed(seed)
	parameters.MinSuccessfulTests = runs
	return gopter.NewProperties(parameters)
}

func mustPanic(t *testing.T, name string, f func()) {
	t.Helper()
	defer func() {
		if recover() == nil {
			t.Errorf("%s did not panic", name)
		}
	}()
	f()
}

// random draws for simulated shops.
type random struct{ s chance.Stream }

func newRandom(seed uint64) *random { return &random{chance.NewStream(seed, 17)} }

func (r *random) normal(mean, sd float64) float64 {
	return mean + float64(sd*chance.NormalQuantile(r.s.Uniform()))
}

func (r *random) between(a, b float64) float64 { return a + float64((b-a)*r.s.Uniform()) }

// jobs simulates the residuals of n jobs in one group: truth, plus the model's
// own error with a variance that differs from job to job, plus extra.
func (r *random) jobs(group string, n int, truth, extraSD float64) []Observation {
	out := make([]Observation, n)
	for i := range out {
		v := r.between(0.04, 0.36)
		out[i] = Observation{group, "job " + strconv.Itoa(i), r.normal(truth, math.Sqrt(v+extraSD*extraSD)), v}
	}
	return out
}

func learnOne(t testing.TB, all []Observation, priorSD float64) Learnt {
	t.Helper()
	l, err := Learn(all, priorSD)
	if err != nil || len(l) != 1 {
		t.Fatalf("Learn: %v, %d groups", err, len(l))
	}
	return l[0]
}
