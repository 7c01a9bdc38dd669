package chance

import (
	"slices"
	"testing"

	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"
)

// TestReached against counting: ends in order, an end itself counts as reached, and
// so does nothing beyond the last.
func TestReached(t *testing.T) {
	ends := [5]float64{.1, .25, .25, .6, 2}
	for v, want := range map[float64]int8{0: 0, .0999: 0, .1: 1, .2: 1, .25: 3, .5: 3, .6: 4, 1: 4, 2: 5} {
		if got := ThresholdIndex(&ends, v); got != want {
			t.Errorf("%g has reached %d ends, expected %d", v, got, want)
		}
	}
	p := gopter.NewProperties(nil)
	p.Property("as many as lie at or below", prop.ForAll(func(list []float64, v float64) bool {
		slices.Sort(list)
		return ThresholdIndex((*[5]float64)(list), v) == int8(len(list)-len(slices.DeleteFunc(slices.Clone(list), func(e float64) bool { return e <= v })))
	}, gen.SliceOfN(5, gen.Float64Range(-3, 3)), gen.Float64Range(-3, 3)))
	p.TestingRun(t)
}
