package olddamage

import (
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/evidence"
)

// Look is one way of checking a zone, or the whole car, for an old accident.
type Look struct {
	ID          string
	Name, How   car.Words // Name is a statement that the answer yes affirms
	Needs       car.Words // the tools
	Zones       []string  // of ZoneIDs, or [WholeCar] alone
	CustomerCan bool

	yes []float64 // chance of yes by Manner; for the whole car, where it is square and where it is not
}

// OfTheCar says whether the check is of the car as a whole.
func (l *Look) OfTheCar() bool { return len(l.Zones) == 1 && l.Zones[0] == WholeCar }

// LookNamed finds a check of old damage.
func LookNamed(id string) (Look, bool) {
	for _, l := range Starting().looks {
		if l.ID == id {
			return l, true
		}
	}
	return Look{}, false
}

// Looks lists the checks in the order in which they are offered. Read only.
func Looks() []Look { return Starting().looks }

// at is the likelihood of the checks made at one place, by manner or by square and not.
// The good and the bad ones are taken apart, step by step between neighbouring states: on
// each step the largest log ratio counts in full, every further one in part. It is the
// rule of package evidence, and for the same reason: a further yes raises every step.
func (g *Figures) at(place string, looks []evidence.Look, states int) []float64 {
	var log [Manners]float64
	for _, yes := range []bool{true, false} {
		sum := 0.0
		for k := 1; k < states; k++ {
			largest, all := 0.0, 0.0
			for _, l := range looks {
				one, known := LookNamed(l.Look)
				if !known || l.On != place || (l.Result == evidence.Yes) != yes || l.Result == evidence.CouldNot {
					continue
				}
				step := g.step(one.yes, k, yes, l.By)
				all += step
				if step*step > largest*largest {
					largest = step
				}
			}
			sum += largest + float64(g.next*(all-largest))
			log[k] += sum
		}
	}
	top := slices.Max(log[:states])
	out := make([]float64, states)
	for k := range out {
		out[k] = chance.Exp(log[k] - top)
	}
	return out
}

// step is the log ratio of a result in state k to that in the state before it.
func (g *Figures) step(p []float64, k int, yes bool, by string) float64 {
	now, before := p[k], p[k-1]
	if !yes {
		now, before = 1-now, 1-before
	}
	counts := 1.0
	switch by {
	case evidence.ByCustomer:
		counts = g.customer
	case evidence.BySeller:
		counts = g.seller
	}
	return float64(counts * (chance.Log(now) - chance.Log(before)))
}

// Imagine simulates that the shop makes every check on a car, with one uniform for each.
func (g *Figures) Imagine(c *Car, hasRoof bool, s *chance.Stream) (out []evidence.Look) {
	for _, l := range g.looks {
		for _, on := range l.Zones {
			state := b2i(c.Sagged || c.Crooked())
			if z := slices.Index(ZoneIDs[:], on); z >= 0 {
				state = int(c.Manner[z])
			}
			one := evidence.Look{Look: l.ID, On: on, Result: evidence.No, By: evidence.ByShop}
			if s.Uniform() < l.yes[state] {
				one.Result = evidence.Yes
			}
			if hasRoof || on != ZoneIDs[Roof] {
				out = append(out, one)
			}
		}
	}
	return out
}
