package olddamage

import (
	"slices"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/damage"
	"underpaint/engine/evidence"
)

// TestYesRaises: whatever is known but for the answer about hits, a further yes raises the
// chance of a hit there, and lowers no chance of a hit at all, of being out of square or of
// anything to mend; a no lowers that of a hit there. (By the definition: every look's odds
// rise with the manner, and hits of a Poisson law fall independently.) The chance of a hit
// in another zone does not fall either while only one is suspected. Beyond that, three and
// more hits counting as two makes zones compete, by a hundredth at most.
func TestYesRaises(t *testing.T) {
	g := Starting()
	b, err := car.Load("two_door_unitary")
	if err != nil {
		t.Fatal(err)
	}
	prior := [damage.RepairStates]float64{0.36, 0.45, 0.12, 0.07}
	chances := func(k Known) Chances {
		o := g.Condition(b, k)
		p, sum := prior, 0.0
		for r := range p {
			if k.says() {
				p[r] *= o.OfRepairs[r]
			}
			sum += p[r]
		}
		for r := range p {
			p[r] /= sum
		}
		return o.Chances(p)
	}
	tried := 0
	for _, years := range []float64{7, 15, 27, 45} {
		for _, before := range [][]evidence.Look{nil, {{Look: "ripples", On: "rear", Result: "yes", By: "shop"}}, {{Look: "lid_gap", On: "front", Result: "no", By: "shop"}, {Look: "tyres_or_crabwise", On: "car", Result: "yes", By: "customer"}}} {
			now, compete := chances(Known{RoadYears: years, Looks: before}), 1e-12
			if before != nil || years > 40 {
				compete = 0.02
			}
			for _, l := range Looks() {
				for _, on := range l.Zones {
					if slices.ContainsFunc(before, func(e evidence.Look) bool { return e.Look == l.ID && e.On == on }) {
						continue
					}
					after := func(result string) Chances {
						return chances(Known{RoadYears: years, Looks: append(slices.Clone(before), evidence.Look{Look: l.ID, On: on, Result: result, By: "shop"})})
					}
					yes, no := after("yes"), after("no")
					tried++
					z := slices.Index(ZoneIDs[:], on)
					for k := range Zones {
						if hit(&yes, k) < hit(&now, k)-compete || int(k) == z && !(hit(&yes, k) > hit(&now, k) && hit(&no, k) < hit(&now, k)) {
							t.Errorf("%g years, %s at %s: %s hit %.5f, before %.5f, with no %.5f", years, l.ID, on, ZoneIDs[k], hit(&yes, k), hit(&now, k), hit(&no, k))
						}
					}
					if yes.OutOfSquare < now.OutOfSquare || yes.Hit < now.Hit || yes.ToMend < now.ToMend {
						t.Errorf("%g years, %s at %s lowers a chance: %+v, before %+v", years, l.ID, on, yes, now)
					}
				}
			}
		}
	}
	if tried < 100 {
		t.Errorf("only %d looks tried", tried)
	}
}

func hit(c *Chances, z Zone) float64 { return 1 - c.Manner[z][NoHit] }

// TestNamedPlace: an answer that names a place raises the chance of a hit there above
// that of the same answer without a place; a light knock named is mostly no hard hit.
func TestNamedPlace(t *testing.T) {
	b, err := car.Load("two_door_unitary")
	if err != nil {
		t.Fatal(err)
	}
	of := func(answer string, where ...string) Chances {
		return Starting().Condition(b, Known{RoadYears: 27, Answer: answer, Where: where}).Chances([damage.RepairStates]float64{0, 1, 0, 0})
	}
	for z, id := range ZoneIDs {
		for _, answer := range HitAnswers {
			if with, without := of(answer, id), of(answer); hit(&with, Zone(z)) <= hit(&without, Zone(z)) {
				t.Errorf("%s at %s does not raise it", answer, id)
			}
		}
		if light := of("lightly", id); light.Hit > 0.5 {
			t.Errorf("a light knock at %s is a hard hit with %.2f", id, light.Hit)
		}
	}
	if c := of("hard", "front"); !(c.Hit > 0.7) {
		t.Errorf("hit hard at the front, as told: %.2f", c.Hit)
	}
}
