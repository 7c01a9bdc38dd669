package estimate

import (
	"math"
	"slices"
	"testing"

	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"
	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/pricing"
	"underpaint/engine/rates"
)

// chosenWays returns decisions that choose one way for each of some items.
func chosenWays(t testing.TB, table *pricing.Table, ways map[string]car.Way) *pricing.Table {
	t.Helper()
	d := pricing.Undecided()
	d.Way = slices.Repeat([]int8{-1}, len(table.Body.Items))
	for id, w := range ways {
		i, ok := table.Body.ItemNamed(id)
		if !ok {
			t.Fatalf("no %s", id)
		}
		d.Way[i] = int8(w)
	}
	out, err := table.With(d)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// TestDifferenceProperties: a table differs from itself by 0; swapping the tables negates
// the difference; and its ends agree with gonum's empirical quantiles (stat.Quantile) of
// the differences of the cars, to one car either way.
func TestDifferenceProperties(t *testing.T) {
	plain := testRun(t, nil)
	table := plain.rows[0].table
	properties := gopter.NewProperties(parameters(20))
	properties.Property("differences are of the cars, and mirror", prop.ForAll(func(item uint8, first, second int) bool {
		i := int(item) % len(table.Body.Items)
		ways := table.Allowed(i, 4)
		id := table.Body.Items[i].ID
		a := chosenWays(t, table, map[string]car.Way{id: ways[first%len(ways)]})
		b := chosenWays(t, table, map[string]car.Way{id: ways[second%len(ways)]})
		r := NewRun(plain.model, []*pricing.Table{a, b, a}, 1)
		r.Add()
		there, back, none := r.Difference(0, 1), r.Difference(1, 0), r.Difference(0, 2)
		var gaps []float64
		for n, v := range r.Totals(1) {
			gaps = append(gaps, float64(v-r.Totals(0)[n]))
		}
		slices.Sort(gaps)
		at := func(p, got float64) bool {
			one := 1 / float64(len(gaps))
			return stat.Quantile(p-one, stat.Empirical, gaps, nil) <= got && got <= stat.Quantile(p+one, stat.Empirical, gaps, nil)
		}
		return none == Difference{Same: 1} &&
			math.Abs(there.Low+back.High) < 1e-6 && math.Abs(there.Half+back.Half) < 1e-6 && math.Abs(there.WeeksHalf+back.WeeksHalf) < 1e-9 &&
			math.Abs(there.Dearer+back.Dearer+there.Same-1) < 1e-12 && there.Same == back.Same &&
			at(.1, there.Low) && at(.5, there.Half) && at(.9, there.High) &&
			(first%len(ways) == second%len(ways)) == (there.Same == 1)
	}, gen.UInt8(), gen.IntRange(0, 5), gen.IntRange(0, 5)))
	properties.TestingRun(t)
}

// TestDifferenceOfAKnownJob: a body found out of square adds its own hours to every car,
// at the metal rate. The data put their middle at 16, and a whole-car factor of log
// deviation .15 multiplies them. The trapezoidal rule gives the share of cars that take
// more than 16 hours; the run agrees to five standard errors.
func TestDifferenceOfAKnownJob(t *testing.T) {
	plain := testRun(t, func(r *rates.Rates) {
		allAt(1)(r)
		r.Supplies.ShareOfLabour, r.Consumables.Charged = false, false
	})
	table := plain.rows[0].table
	rate := table.Rates.Labour.Trades[car.Metal].Rate.Of(1000)
	d := pricing.Undecided()
	d.WholeCar = []string{"twist"}
	twisted, err := table.With(d)
	if err != nil {
		t.Fatal(err)
	}
	r := NewRun(plain.model, []*pricing.Table{table, twisted}, 1)
	for range 8 {
		r.Add()
	}
	got := r.Difference(0, 1)
	if got.Dearer != 1 || got.Same != 0 || got.WeeksHalf <= 0 {
		t.Errorf("%+v", got)
	}
	hours, err := chance.NewThreePoint(6, 16, 40)
	if err != nil {
		t.Fatal(err)
	}
	want, weight := 0.0, 0.0
	for z := -8.0; z <= 8; z += .01 {
		w := math.Exp(-z * z / 2)
		want += w * (1 - distuv.UnitNormal.CDF(math.Log(16/hours.At(z/distuv.UnitNormal.Quantile(.9)))/.15))
		weight += w
	}
	want /= weight
	above := 0
	for n, v := range r.Totals(1) {
		if v-r.Totals(0)[n] > 16*int64(rate) {
			above++
		}
	}
	n := float64(len(r.Totals(1)))
	if share := float64(above) / n; math.Abs(share-want) > 5*math.Sqrt(.25/float64(r.Cars())) {
		t.Errorf("%.4f of cars above 16 hours, want %.4f", share, want)
	}
	if got.Low > 7*float64(rate) || got.High < 36*float64(rate) {
		t.Errorf("ends %.0f and %.0f at a rate of %d", got.Low, got.High, rate)
	}
}

// TestRunsOfChosenWaysShareTheirCars: undecided work costs the same on every car in both
// tables.
func TestRunsOfChosenWaysShareTheirCars(t *testing.T) {
	plain := testRun(t, nil)
	table := plain.rows[0].table
	leave := chosenWays(t, table, map[string]car.Way{"roof_skin.whole": car.Leave})
	patch := chosenWays(t, table, map[string]car.Way{"roof_skin.whole": car.Patch})
	r := NewRun(plain.model, []*pricing.Table{leave, patch}, 1)
	r.Add()
	for _, kind := range []Kind{StripStage, SentOut} {
		if !slices.Equal(r.rows[0].kinds[kind], r.rows[1].kinds[kind]) {
			t.Errorf("a patch on the roof moves %s", KindIDs[kind])
		}
	}
	if d := r.Difference(0, 1); d.Low <= 0 || d.Dearer != 1 {
		t.Errorf("a patch costs nothing: %+v", d)
	}
	one := testRun(t, nil)
	one.Add()
	for n, v := range one.Totals(0) {
		if v < r.Totals(0)[n] && v < r.Totals(1)[n] {
			t.Fatalf("car %d: undecided %d is below both %d and %d", n, v, r.Totals(0)[n], r.Totals(1)[n])
		}
	}
}
