package evidence

import (
	"errors"
	"math"
	"reflect"
	"strings"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/damage"
	"underpaint/engine/strict"
)

func TestRefused(t *testing.T) {
	b := load(t, "two_door_unitary")
	good := Look{"bubbles", "outer_sill.left", Yes, ByCustomer}
	for name, row := range map[string]struct {
		list           []Look
		path, expected string
	}{
		"unknown look":        {[]Look{{"smell", "outer_sill.left", Yes, ByShop}}, "looks[0].look", "one of bubbles, open_hole"},
		"no look":             {[]Look{{"", "outer_sill.left", Yes, ByShop}}, "looks[0].look", "one of bubbles"},
		"unknown item":        {[]Look{good, {"bubbles", "outer_sill.middle", Yes, ByShop}}, "looks[1].on", "an item of this body"},
		"part for an item":    {[]Look{{"bubbles", "outer_sill", Yes, ByShop}}, "looks[0].on", "an item of this body"},
		"item elsewhere":      {[]Look{{"prod", "chassis_rail.left", Yes, ByShop}}, "looks[0].on", "an item of this body"},
		"wrong part":          {[]Look{good, good, {"carpet", "roof_skin.whole", No, ByShop}}[1:], "looks[1].on", "which roof_skin is not"},
		"magnet on a box":     {[]Look{{"magnet", "inner_sill.left", Yes, ByShop}}, "looks[0].on", "which inner_sill is not"},
		"one item for a side": {[]Look{{"gaps", "outer_sill.left", Yes, ByShop}}, "looks[0].on", "left or right"},
		"side for an item":    {[]Look{{"tap", "left", No, ByShop}}, "looks[0].on", "an item of this body"},
		"jack by a customer":  {[]Look{{"jack", "left", No, ByCustomer}}, "looks[0].by", "can do the check jack"},
		"either side by shop": {[]Look{{"bubbles", "outer_sill.either", Yes, ByShop}}, "looks[0].on", "the side on which it was"},
		"either of a whole":   {[]Look{{"bubbles", "hood.either", Yes, ByCustomer}}, "looks[0].on", "has on either side"},
		"either of a magnet":  {[]Look{{"magnet", "outer_sill.either", Yes, ByCustomer}}, "looks[0].on", "for a single part"},
		"either by side":      {[]Look{{"gaps", "either", Yes, ByCustomer}}, "looks[0].on", "left or right"},
		"either, twice":       {[]Look{{"tap", "outer_sill.either", Yes, ByCustomer}, {"tap", "outer_sill.either", No, ByCustomer}}, "looks[1].on", "looks[0] already answers this check"},
		"either of nothing":   {[]Look{{"tap", "outer_sill.either_1", Yes, ByCustomer}}, "looks[0].on", "has on either side"},
		"shop's look":         {[]Look{{"prod", "outer_sill.left", No, ByCustomer}}, "looks[0].by", "can do the check prod"},
		"not tried either":    {[]Look{{"scope", "outer_sill.left", CouldNot, ByCustomer}}, "looks[0].by", "can do the check scope"},
		"seller's prod":       {[]Look{{"prod", "outer_sill.left", No, BySeller}}, "looks[0].by", "can do the check prod"},
		"somebody":            {[]Look{{"bubbles", "outer_sill.left", No, "owner"}}, "looks[0].by", "customer, shop or seller"},
		"nobody":              {[]Look{{"bubbles", "outer_sill.left", No, ""}}, "looks[0].by", "customer, shop or seller"},
		"other result":        {[]Look{{"bubbles", "outer_sill.left", "bad", ByShop}}, "looks[0].result", "yes, no or could_not"},
		"no result":           {[]Look{{"bubbles", "outer_sill.left", "", ByShop}}, "looks[0].result", "yes, no or could_not"},
		"contradiction":       {[]Look{good, {"bubbles", "outer_sill.left", No, ByCustomer}}, "looks[1].on", "looks[0] already answers this check"},
		"twice the same":      {[]Look{{"tap", "outer_sill.left", No, ByShop}, good, good}, "looks[2].on", "looks[1] already answers this check"},
		"answer, then none":   {[]Look{good, {"bubbles", "outer_sill.left", CouldNot, ByCustomer}}, "looks[1].on", "looks[0] already answers this check"},
	} {
		seen, err := FromLooks(b, row.list)
		var e *strict.Error
		switch {
		case !errors.As(err, &e):
			t.Errorf("%s: %v, want a refusal", name, err)
		case !reflect.DeepEqual(seen, Seen{}):
			t.Errorf("%s: returns both likelihoods and an error", name)
		case e.Path != row.path || !strings.Contains(e.Expected, row.expected):
			t.Errorf("%s: %v, want path %s and %q", name, err, row.path, row.expected)
		}
	}
	_, err := FromLooks(b, []Look{{Look: "a\u202e\n" + strings.Repeat("x", 50), On: "hood.whole"}})
	if want := `found "a\u202e\n` + strings.Repeat("x", 37) + `…"`; err == nil || !strings.HasSuffix(err.Error(), want) {
		t.Errorf("hostile text: %v, want it to end in %s", err, want)
	}
}

// Three people may make the same check, and one person several checks.
func TestAccepted(t *testing.T) {
	b := load(t, "two_door_unitary")
	seen, err := FromLooks(b, []Look{{"bubbles", "outer_sill.left", Yes, ByCustomer}, {"bubbles", "outer_sill.left", No, ByShop},
		{"bubbles", "outer_sill.left", No, BySeller}, {"tap", "outer_sill.left", Yes, ByCustomer}, {"bubbles", "outer_sill.right", Yes, ByCustomer}, {"bubbles", "hood.whole", CouldNot, ByShop}})
	if err != nil || len(seen.Items) != len(b.Items) {
		t.Fatalf("%d likelihoods, %v", len(seen.Items), err)
	}
	for i := range seen.Items {
		id := b.Items[i].ID
		if want := id == "outer_sill.left" || id == "outer_sill.right"; (seen.Items[i] != nil) != want {
			t.Errorf("%s: %v", id, seen.Items[i])
		}
	}
	if seen, err = FromLooks(b, nil); err != nil || len(seen.Items) != len(b.Items) {
		t.Errorf("no checks: %d likelihoods, %v", len(seen.Items), err)
	}
}

// By hand from the definition of conditional probability: the ratio of two entries is
// the ratio of the chances of the answer, raised to the power of its weight.
func TestSingleLooks(t *testing.T) {
	b := load(t, "two_door_unitary")
	sill := func(look, result, by string) *damage.Likelihood {
		return one(t, b, "outer_sill.left", Look{Look: look, Result: result, By: by})
	}
	near(t, "tap, seller", sill("tap", Yes, BySeller)[0][0][0], math.Pow(.12/.85, .6), 1e-14)
	for _, by := range []string{ByShop, BySeller} {
		near(t, "seller's word", sill("word", Yes, by)[0][0][0], math.Pow(.05/.65, .2), 1e-14)
		near(t, "seller praises", sill("word", No, by)[5][0][0], math.Pow(.35/.95, .2), 1e-14)
	}
	near(t, "customer's own word", sill("word", Yes, ByCustomer)[0][0][0], math.Pow(.05/.65, .6), 1e-14)
	gauge := sill("gauge", Yes, ByShop)
	for k := range gauge {
		near(t, "gauge, nothing done", gauge[k][damage.NoFinding][0], .05/.92, 1e-14)
		near(t, "gauge, dent", gauge[k][damage.NoFinding][1], 1, 0)
		near(t, "gauge, patch", gauge[k][damage.PatchOverRust][0], .15/.92, 1e-14)
		near(t, "gauge, filler", gauge[k][damage.FillerOverHole][0], 1, 0)
		near(t, "gauge, replaced", gauge[k][damage.Replaced][0], .6/.92, 1e-14)
		near(t, "gauge, replaced and dented since", gauge[k][damage.Replaced][1], 1, 0)
	}
	photos := sill("photos", No, ByCustomer)
	near(t, "no photographs, replaced", photos[2][damage.Replaced][1], math.Pow(.5/.98, .6), 1e-14)
}

// A visible hole, by hand: the shop has fewer false alarms. A yes counts in full,
// whoever saw the hole. A no is weighted, with the same chances for everybody.
func TestHoleSeen(t *testing.T) {
	b := load(t, "two_door_unitary")
	door := func(result, by string) *damage.Likelihood {
		return one(t, b, "door_lower.left", Look{Look: "open_hole", Result: result, By: by})
	}
	for by, falsely := range map[string]float64{ByShop: .0005, ByCustomer: .002, BySeller: .002} {
		yes := door(Yes, by)
		for k, p := range [car.Conditions]float64{falsely, falsely, falsely, .15, .45, .75} {
			near(t, "hole seen by the "+by, yes[k][0][0], p/.75, 1e-14)
		}
	}
	for by, counts := range map[string]float64{ByShop: 1, ByCustomer: .6, BySeller: .6} {
		no := door(No, by)
		for k, p := range [car.Conditions]float64{.9995, .9995, .9995, .85, .55, .25} {
			near(t, "no hole seen by the "+by, no[k][0][0], math.Pow(p/.9995, counts), 1e-14)
		}
	}
	// The customer and the shop both saw it. On the step to pinholes the shop's yes counts
	// in full and the customer's .4. On the steps above they are equal, so one of them
	// counts in full.
	both := one(t, b, "door_lower.left", Look{Look: "open_hole", Result: Yes, By: ByCustomer}, Look{Look: "open_hole", Result: Yes, By: ByShop})
	near(t, "seen by both", both[3][0][0]/both[2][0][0], .15/.0005*math.Pow(.15/.002, .4), 1e-9)
	near(t, "seen by both, larger", both[4][0][0]/both[3][0][0], math.Pow(3, 1.4), 1e-12)
	// The customer saw it and the shop did not: neither result weakens the other.
	against := one(t, b, "door_lower.left", Look{Look: "open_hole", Result: Yes, By: ByCustomer}, Look{Look: "open_hole", Result: No, By: ByShop})
	near(t, "seen by one", against[3][0][0]/against[2][0][0], .15/.002*(.85/.9995), 1e-10)
}

// By hand from the rule in the package comment.
func TestSeveralLooks(t *testing.T) {
	b := load(t, "two_door_unitary")
	steps := func(p ...float64) (product float64) {
		product = 1
		for n := 0; n < len(p); n += 2 { // one in full, a further one in part
			product *= p[n] * math.Pow(p[n+1], .4)
		}
		return product
	}
	// Two bad results: on the last step tapping has a larger ratio than the borescope.
	two := one(t, b, "inner_sill.left", Look{Look: "tap", Result: Yes, By: ByShop}, Look{Look: "scope", Result: Yes, By: ByShop})
	near(t, "pinholes to sound", two[3][0][0]/two[0][0][0],
		steps(.15/.05, .2/.12, .4/.15, .45/.2, .65/.4, .62/.45), 1e-12)
	near(t, "gone to rusted through", two[5][0][0]/two[4][0][0], steps(.85/.75, .93/.85), 1e-12)
	// A bad result and a good one: neither weakens the other.
	against := one(t, b, "inner_sill.left", Look{Look: "tap", Result: Yes, By: ByShop}, Look{Look: "scope", Result: No, By: ByShop})
	near(t, "disagreeing", against[4][0][0]/against[0][0][0], .75/.12*(.15/.95), 1e-12)
	// Photographs have the widest spread (.5/.02), so the magnet counts .4. The check of
	// condition is separate.
	three := one(t, b, "outer_sill.left", Look{Look: "photos", Result: Yes, By: ByShop},
		Look{Look: "magnet", Result: Yes, By: ByShop}, Look{Look: "tap", Result: Yes, By: ByShop})
	near(t, "filler to none", three[1][damage.FillerOverHole][0]/three[1][damage.NoFinding][0], .1/.02*math.Pow(.92/.05, .4), 1e-10)
	near(t, "condition beside findings", three[5][0][0]/three[0][0][0], .85/.12, 1e-12)
	// Weights apply before the comparison: the shop's magnet (2.91) has a wider spread than
	// a customer's photographs (1.93).
	mixed := one(t, b, "outer_sill.left", Look{Look: "photos", Result: Yes, By: ByCustomer}, Look{Look: "magnet", Result: Yes, By: ByShop})
	near(t, "weighted before compared", mixed[0][damage.FillerOverHole][0]/mixed[0][damage.NoFinding][0],
		.92/.05*math.Pow(.1/.02, .6*.4), 1e-10)
	// On a tie (magnet and gauge, both yes) the first in the data, the magnet, counts in full.
	tie := one(t, b, "outer_sill.left", Look{Look: "gauge", Result: Yes, By: ByShop}, Look{Look: "magnet", Result: Yes, By: ByShop})
	near(t, "tie", tie[0][damage.Replaced][0]/tie[0][damage.NoFinding][0], math.Pow(.6/.05, .4), 1e-12)
}

// FuzzFromLooks checks that any input gives either an error that names it or likelihoods
// above zero and at most one.
func FuzzFromLooks(f *testing.F) {
	b := load(f, "two_door_unitary")
	for _, k := range Kinds() {
		f.Add(k.ID, "outer_sill.left", Yes, ByShop, "tap", No, ByCustomer)
	}
	f.Add("", "\xff", "", "seller", "magnet", "yes\n", "")
	f.Fuzz(func(t *testing.T, look, on, result, by, look2, result2, by2 string) {
		seen, err := FromLooks(b, []Look{{look, on, result, by}, {look2, on, result2, by2}})
		if err != nil {
			var e *strict.Error
			if !errors.As(err, &e) || !strings.HasPrefix(e.Path, "looks[") || strings.ContainsAny(err.Error(), "\n\r\x00") {
				t.Fatalf("refusal %q", err)
			}
			return
		}
		for _, l := range seen.Items {
			if l != nil {
				sane(t, l)
			}
		}
	})
}

// sane checks that no entry is zero and that the largest is one.
func sane(t testing.TB, l *damage.Likelihood) {
	t.Helper()
	top := 0.0
	for k := range l {
		for f := range l[k] {
			for _, v := range l[k][f] {
				if !(v > 0 && v <= 1) {
					t.Fatalf("entry %g", v)
				}
				top = math.Max(top, v)
			}
		}
	}
	if top != 1 {
		t.Fatalf("largest entry %g", top)
	}
}
