package chance

import (
	"slices"
	"testing"

	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"
)

// TestReached compares with counting: the ends are in order, a value equal to an end has
// reached it, and values beyond the last end have reached all five.
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
