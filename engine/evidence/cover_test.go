package evidence

import (
	"math"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/damage"
)

// both are the likelihoods of checks on one item, as the car shows and freshly covered.
func both(t testing.TB, on string, list ...Look) (shows, covered *damage.Likelihood) {
	t.Helper()
	b := load(t, "two_door_unitary")
	for n := range list {
		list[n].On = on
	}
	seen, err := FromLooks(b, list)
	if err != nil {
		t.Fatal(err)
	}
	i := item(t, b, on)
	if seen.CoveredItems == nil {
		return seen.Items[i], seen.Items[i]
	}
	return seen.Items[i], seen.CoveredItems[i]
}

// By hand: on a freshly covered car the log ratios of a good result are multiplied by
// .03 or .1, so the ratios are raised to that power.
func TestCoverByHand(t *testing.T) {
	for look, row := range map[string]struct {
		on    string
		times float64
		good  [2]float64 // chance of a good result: sound, gone
	}{
		"bubbles":   {"outer_sill.left", .03, [2]float64{.94, .35}},
		"open_hole": {"outer_sill.left", .03, [2]float64{.9995, .25}},
		"prod":      {"outer_sill.left", .03, [2]float64{.98, .03}},
		"tap":       {"outer_sill.left", .1, [2]float64{.88, .15}},
		"thumb":     {"front_floor.left", .1, [2]float64{.99, .10}},
		"carpet":    {"front_floor.left", 1, [2]float64{.95, .03}},
		"wet":       {"front_floor.left", 1, [2]float64{.88, .35}},
		"scope":     {"outer_sill.left", 1, [2]float64{.95, .07}},
		"water":     {"rear_window.whole", 1, [2]float64{.80, .08}},
		"word":      {"outer_sill.left", 1, [2]float64{.95, .35}},
	} {
		who := 1.0
		if look == "word" {
			who = .2
		}
		shows, covered := both(t, row.on, Look{Look: look, Result: No, By: ByShop})
		ratio := row.good[1] / row.good[0]
		near(t, look+", as it shows", shows[5][0][0]/shows[0][0][0], math.Pow(ratio, who), 1e-12)
		near(t, look+", covered", covered[5][0][0]/covered[0][0][0], math.Pow(ratio, who*row.times), 1e-12)
		if shows, covered = both(t, row.on, Look{Look: look, Result: Yes, By: ByShop}); shows != covered {
			t.Errorf("%s: cover changes a bad result", look)
		}
	}
	// The weights of customer and cover multiply, here for a good tap.
	_, covered := both(t, "outer_sill.left", Look{Look: "tap", Result: No, By: ByCustomer})
	near(t, "customer's tap, covered", covered[5][0][0]/covered[0][0][0], math.Pow(.15/.88, .6*.1), 1e-12)
	// As the car shows, the prod has the largest ratio on the step to pinholes (.25/.65).
	// Covered, the tap has (.38/.55 to the power of .1), and the prod counts .4 of its .03.
	shows, covered := both(t, "outer_sill.left", Look{Look: "prod", Result: No, By: ByShop}, Look{Look: "tap", Result: No, By: ByShop})
	near(t, "two good", shows[3][0][0]/shows[2][0][0], .25/.65*math.Pow(.38/.55, .4), 1e-12)
	near(t, "two good, covered", covered[3][0][0]/covered[2][0][0], math.Pow(.38/.55, .1)*math.Pow(.25/.65, .03*.4), 1e-12)
	// A check that cover cannot defeat keeps its weight and becomes the largest.
	_, covered = both(t, "outer_sill.left", Look{Look: "prod", Result: No, By: ByShop}, Look{Look: "scope", Result: No, By: ByShop})
	near(t, "beside a borescope", covered[3][0][0]/covered[2][0][0], .35/.60*math.Pow(.25/.65, .03*.4), 1e-12)
	// A bad result counts in full beside a good one.
	_, covered = both(t, "outer_sill.left", Look{Look: "prod", Result: No, By: ByShop}, Look{Look: "tap", Result: Yes, By: ByShop})
	near(t, "good and bad, covered", covered[5][0][0]/covered[0][0][0], .85/.12*math.Pow(.03/.98, .03), 1e-12)
	// Cover does not affect checks for repairs.
	shows, covered = both(t, "outer_sill.left", Look{Look: "prod", Result: No, By: ByShop}, Look{Look: "magnet", Result: No, By: ByShop})
	near(t, "magnet, covered", covered[0][damage.FillerOverHole][0]/covered[0][0][0], shows[0][damage.FillerOverHole][0]/shows[0][0][0], 1e-15)
	near(t, "magnet", shows[0][damage.FillerOverHole][0]/shows[0][0][0], .08/.95, 1e-12)
}

// Cover weakens checks on either side in the same way, but not gaps and the jack. If
// cover can hide none of the results there is only one version of everything.
func TestCoverOfSeveral(t *testing.T) {
	b := load(t, "hardtop_on_frame")
	list := []Look{{"tap", "inner_sill.either", No, ByCustomer}, {"gaps", "left", No, ByShop}, {"jack", "left", No, ByShop},
		{"carpet", "front_floor.left", No, ByShop}}
	seen, err := FromLooks(b, list)
	if err != nil {
		t.Fatal(err)
	}
	if len(seen.Worst) != 2 || len(seen.CoveredWorst) != 2 || len(seen.CoveredItems) != len(b.Items) {
		t.Fatalf("%d and %d places, %d items", len(seen.Worst), len(seen.CoveredWorst), len(seen.CoveredItems))
	}
	for n, w := range seen.CoveredWorst {
		if len(w.Items) == 2 {
			near(t, "either sill", seen.Worst[n].Likely[5]/seen.Worst[n].Likely[0], math.Pow(.15/.88, .6), 1e-12)
			near(t, "either sill, covered", w.Likely[5]/w.Likely[0], math.Pow(.15/.88, .06), 1e-12)
		} else if w.Likely != seen.Worst[n].Likely {
			t.Error("cover changes the likelihood of the door gaps")
		}
	}
	for i := range b.Items {
		if seen.Items[i] != seen.CoveredItems[i] {
			t.Errorf("%s: a separate likelihood although cover hides nothing", b.Items[i].ID)
		}
	}
	list[0].Result = Yes
	if seen, err = FromLooks(b, list); err != nil || seen.CoveredItems != nil || seen.CoveredWorst != nil {
		t.Errorf("two versions although cover can hide nothing: %v", err)
	}
}

// The likelihood of checks for fresh undercoat, by hand.
func TestFreshUndercoat(t *testing.T) {
	b := load(t, "two_door_unitary")
	const here, there, third = "front_floor.left", "outer_sill.right", "inner_sill.either"
	answer := func(on, result, by string) Look { return Look{"fresh_under", on, result, by} }
	weak := func(p float64) float64 { return math.Pow(p, .6) }
	for name, row := range map[string]struct {
		list []Look
		want [2]float64
	}{
		"nobody looked":               {nil, [2]float64{1, 1}},
		"could not look":              {[]Look{answer(here, CouldNot, ByShop)}, [2]float64{1, 1}},
		"another look":                {[]Look{{"prod", here, No, ByShop}}, [2]float64{1, 1}},
		"found by the shop":           {[]Look{answer(here, Yes, ByShop)}, [2]float64{.04, .70}},
		"none seen by the shop":       {[]Look{answer(here, No, ByShop)}, [2]float64{.96, .30}},
		"found by a customer":         {[]Look{answer(here, Yes, ByCustomer)}, [2]float64{weak(.04), weak(.70)}},
		"none seen by a seller":       {[]Look{answer(here, No, BySeller)}, [2]float64{weak(.96), weak(.30)}},
		"found twice":                 {[]Look{answer(here, Yes, ByShop), answer(there, Yes, ByShop)}, [2]float64{.04, .70}},
		"none seen three times":       {[]Look{answer(here, No, ByCustomer), answer(there, No, BySeller), answer(third, No, ByCustomer)}, [2]float64{weak(.96), weak(.30)}},
		"found on one part":           {[]Look{answer(here, No, ByShop), answer(there, Yes, ByShop)}, [2]float64{.04, .70}},
		"found by both":               {[]Look{answer(here, Yes, ByCustomer), answer(there, Yes, ByShop)}, [2]float64{.04, .70}},
		"found by the customer alone": {[]Look{answer(here, Yes, ByCustomer), answer(there, No, ByShop)}, [2]float64{weak(.04), weak(.70)}},
		"found on either side":        {[]Look{answer(third, Yes, ByCustomer)}, [2]float64{weak(.04), weak(.70)}},
		"none seen by both":           {[]Look{answer(here, No, ByCustomer), answer(there, No, ByShop)}, [2]float64{.96, .30}},
	} {
		seen, err := FromLooks(b, row.list)
		if err != nil {
			t.Fatal(err)
		}
		for v, want := range row.want {
			near(t, name, seen.Cover[v], want, 1e-14)
		}
	}
	// On the item it was made on, it is a check like any other.
	shows, covered := both(t, here, answer(here, Yes, ByShop))
	for k, p := range [car.Conditions]float64{.25, .27, .32, .40, .45, .50} {
		near(t, "by condition", shows[k][0][0], p/.5, 1e-14)
	}
	if shows != covered {
		t.Error("cover hides fresh undercoat")
	}
}
