package olddamage

import (
	"math"
	"testing"

	"underpaint/engine/damage"
)

// TestHitsPublished: the rate of hard hits is the product of two published numbers,
// rounded: 7.4 collision claims per 100 insured vehicle years, models of 2014 to 2016
// (HLDI Insurance Report R-16, December 2016), and 11 % of collision repairs over $3,000
// (BodyShop Business, reader survey).
func TestHitsPublished(t *testing.T) {
	claims, dear := 7.4/100, 0.11
	if got := Starting().HitsAYear; math.Abs(got-claims*dear) > 0.0005 {
		t.Errorf("%g hard hits a year, published %g", got, claims*dear)
	}
}

// TestHitShare: of cars 20 years on the road, no more have been hit hard than published
// shares of cars once written off or damaged: 18 % (UK vehicle history checks, press of
// 2017) and 21 % (the same, 2022; 21 % of imports eight to nine years old, Irish Times
// 2016). Those count light and cosmetic damage too. Of restored cars, which are not the
// cars of those checks, about as many.
func TestHitShare(t *testing.T) {
	g := Starting()
	want := [damage.RepairStates]float64{0.06, 0.14, 0.19, 0.10} // worked out by hand: 1 − e^−(.008·.8·20·f)
	all := 0.0
	for r := range want {
		hit := 1 - math.Exp(-g.Rate(r, 20))
		if math.Abs(hit-want[r]) > 0.0051 {
			t.Errorf("%s: %.3f hit hard, by hand %.2f", damage.RepairStateIDs[r], hit, want[r])
		}
		if hit > 0.21 {
			t.Errorf("%s: %.3f hit hard, above every published share", damage.RepairStateIDs[r], hit)
		}
		all += hit * [damage.RepairStates]float64{0.36, 0.45, 0.12, 0.07}[r]
	}
	if all > 0.18 {
		t.Errorf("%.3f of all cars hit hard, published 0.18 to 0.21", all)
	}
}
