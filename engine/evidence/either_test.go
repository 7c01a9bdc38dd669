package evidence

import (
	"math"
	"testing"
)

// TestEither checks that an item and its counterpart have the same either place, that a
// single item has none, and that a check at such a place is accepted.
func TestEither(t *testing.T) {
	b := load(t, "hardtop_on_frame")
	for on, want := range map[string]string{"outer_sill.left": "outer_sill.either", "outer_sill.right": "outer_sill.either",
		"post_foot.rear_left": "post_foot.rear_either", "body_mount.right_3": "body_mount.either_3", "hood.whole": ""} {
		if got := Either(b, item(t, b, on)); got != want {
			t.Errorf("%s: %q, want %q", on, got, want)
		}
	}
	seen, err := FromLooks(b, []Look{{"bubbles", Either(b, item(t, b, "outer_sill.right")), Yes, ByCustomer}})
	if err != nil || len(seen.Worst) != 1 || len(seen.Worst[0].Items) != 2 {
		t.Errorf("%+v, %v", seen.Worst, err)
	}
}

// Checks on either side, by hand from the rule in the package comment: two bad results
// by one customer, each weighted by .6, and the smaller also by .4.
func TestEitherByHand(t *testing.T) {
	b := load(t, "hardtop_on_frame")
	list := []Look{{"tap", "inner_sill.either", Yes, ByCustomer}, {"fresh_under", "inner_sill.either", Yes, ByCustomer}, {"tap", "inner_sill.left", No, ByCustomer},
		{"gaps", "left", No, ByShop}, {"fresh_under", "body_mount.either_1", Yes, ByCustomer}}
	seen, err := FromLooks(b, list)
	if err != nil {
		t.Fatal(err)
	}
	if len(seen.Worst) != 3 {
		t.Fatalf("%d places, want 3", len(seen.Worst))
	}
	for _, w := range seen.Worst {
		switch b.Items[w.Items[0]].ID {
		case "inner_sill.left":
			if len(w.Items) == 2 {
				near(t, "sound to light", w.Likely[1]/w.Likely[0], math.Pow(.2/.12, .6)*math.Pow(.27/.25, .6*.4), 1e-12)
				near(t, "rusted through to gone", w.Likely[5]/w.Likely[4], math.Pow(.85/.75, .6)*math.Pow(.5/.45, .6*.4), 1e-12)
			}
		case "body_mount.left_1":
			if b.Items[w.Items[1]].ID != "body_mount.right_1" {
				t.Errorf("either_1 includes %s", b.Items[w.Items[1]].ID)
			}
			near(t, "one look", w.Likely[5]/w.Likely[0], math.Pow(2, .6), 1e-12)
		}
		if len(w.Items) > 2 {
			near(t, "gaps even", w.Likely[5]/w.Likely[0], .35/.85, 1e-12)
		}
	}
	if i := item(t, b, "inner_sill.left"); seen.Items[i] == nil || seen.Items[item(t, b, "inner_sill.right")] != nil {
		t.Error("the check on one item is not evidence on that item alone")
	}
}
