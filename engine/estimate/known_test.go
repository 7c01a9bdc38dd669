package estimate

import (
	"math"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/damage"
	"underpaint/engine/pricing"
)

// yesByCondition gives the chance of yes by condition for an informative check, invented
// for the test.
var yesByCondition = [car.Conditions]float64{.02, .05, .1, .4, .9, .97}

// lookAt is the likelihood of one outcome of that check.
func lookAt(yes bool) *damage.Likelihood {
	l := damage.NoEvidence()
	for k, p := range yesByCondition {
		if !yes {
			p = 1 - p
		}
		for f := range l[k] {
			l[k][f] = [2]float64{p, p}
		}
	}
	return l
}

// TestIfKnownAgainstConditioning compares the worth of a check, from cars weighted by
// Bayes' rule, with a run that conditions the network on each outcome and draws new cars.
// Chances agree to four standard errors of a share. Widths agree to four standard errors
// of both runs together, with the weighted cars at their effective sample size. The two
// ends count as independent, which is generous because they rise together.
func TestIfKnownAgainstConditioning(t *testing.T) {
	plain := testRun(t, nil)
	model, table := plain.model, plain.rows[0].table
	r := remembering(model, table, 1, 16)
	for _, id := range []string{"outer_sill.left", "trunk_floor.whole"} {
		item, ok := model.Body.ItemNamed(id)
		if !ok {
			t.Fatalf("no %s", id)
		}
		w := r.IfLook(0, []int{item}, func(b byte) float64 { k, _, _ := Unpack(b); return yesByCondition[k] })
		exact := 0.0
		for k, p := range model.Chances()[item].Condition {
			exact += p * yesByCondition[k]
		}
		if se := math.Sqrt(exact * (1 - exact) / float64(r.Cars())); math.Abs(w.Yes-exact) > 4*se {
			t.Errorf("%s: chance of yes %.4f, exact %.4f, standard error %.4f", id, w.Yes, exact, se)
		}
		expected, variance := 0.0, 0.0
		for _, yes := range []bool{true, false} {
			seen := make([]*damage.Likelihood, len(model.Body.Items))
			seen[item] = lookAt(yes)
			known, err := damage.New(damage.Known{Body: model.Body, Histories: model.Histories, EarlierWork: "not_known_of", Seen: seen}, damage.StandardGrids)
			if err != nil {
				t.Fatal(err)
			}
			again := NewRun(known, []*pricing.Table{table}, 99)
			for range 8 {
				again.Add()
			}
			got, chance := w.WidthYes, w.Yes
			if !yes {
				got, chance = w.WidthNo, 1-w.Yes
			}
			e := again.rows[0].ends(again.replicates)
			v := (e.seLow*e.seLow + e.seHigh*e.seHigh) * (1 + float64(again.Cars())/w.Effective)
			t.Logf("%s %v: weighed %.0f, conditioned %.0f, standard error %.0f, now %.0f", id, yes, got, again.Width(0), math.Sqrt(v), w.Now)
			if math.Abs(got-again.Width(0)) > 4*math.Sqrt(v) {
				t.Errorf("%s %v: weighed %.0f, conditioned %.0f, standard error %.0f", id, yes, got, again.Width(0), math.Sqrt(v))
			}
			expected += chance * again.Width(0)
			variance += chance * chance * v
		}
		if math.Abs(w.Expected-expected) > 4*math.Sqrt(variance) {
			t.Errorf("%s: expected width %.0f, conditioned %.0f ± %.0f", id, w.Expected, expected, math.Sqrt(variance))
		}
		// Negative control: the test notices when yes and no are swapped.
		wrong := r.IfLook(0, []int{item}, func(b byte) float64 { k, _, _ := Unpack(b); return 1 - yesByCondition[k] })
		if math.Abs(wrong.WidthYes-w.WidthYes) < 2*math.Sqrt(variance) && math.Abs(wrong.Yes-exact) < .05 {
			t.Errorf("%s: a look told the wrong way round passes", id)
		}
	}
}

// TestWorthGrowsWithTelling: of two checks of the same item, the more informative one
// narrows the range more on average. Knowing on which side of its median the price lies
// narrows it most.
func TestWorthGrowsWithTelling(t *testing.T) {
	plain := testRun(t, nil)
	r := remembering(plain.model, plain.rows[0].table, 1, 16)
	half := r.Range(0).Half
	totals := r.Totals(0)
	item, _ := r.model.Body.ItemNamed("outer_sill.left")
	sharp := r.IfLook(0, []int{item}, func(b byte) float64 { k, _, _ := Unpack(b); return yesByCondition[k] })
	blunt := r.IfLook(0, []int{item}, func(b byte) float64 { k, _, _ := Unpack(b); return .5 + .2*(yesByCondition[k]-.5) })
	all := r.IfKnown(0, func(c Seen) float64 {
		if float64(totals[c.car]) > half {
			return 1
		}
		return 0
	})
	if !(all.Expected < sharp.Expected && sharp.Expected < blunt.Expected && blunt.Expected < r.Width(0)) {
		t.Errorf("expected widths: all %.0f, sharp %.0f, blunt %.0f, now %.0f", all.Expected, sharp.Expected, blunt.Expected, r.Width(0))
	}
}

func BenchmarkFourHundredLooks(b *testing.B) {
	plain := testRun(b, nil)
	r := remembering(plain.model, plain.rows[0].table, 1, 8)
	for b.Loop() {
		for n := range 400 {
			r.IfLook(0, []int{n % len(r.model.Body.Items)}, func(b byte) float64 { k, _, _ := Unpack(b); return yesByCondition[k] })
		}
	}
}
