package olddamage

import "underpaint/engine/car"

// Nodes is the number of uniforms that [Odds.Draw] takes.
const Nodes = 4

// The uniforms of Draw, by what each decides.
const (
	uHits = iota
	uSagged
	uHand
	uBlasted
)

// Car is the old damage of one simulated car.
type Car struct {
	Manner  [Zones]Manner
	Sagged  bool
	Hand    int // 0 good, 1 fair, 2 poor
	Blasted bool
}

// Crooked says whether any zone is crooked.
func (c *Car) Crooked() bool {
	for _, m := range c.Manner {
		if m == Crooked {
			return true
		}
	}
	return false
}

// Draw draws the old damage of a car whose earlier repairs are in the given state. What
// a survey recorded is so, also where the odds hold it for a slip.
func (o *Odds) Draw(repair int, u *[Nodes]float64) (c Car) {
	s := &allHits[o.pickHits(repair, u[uHits])]
	c.Manner = s.manner
	for z, m := range o.zones {
		if m >= 0 {
			c.Manner[z] = Manner(m)
		}
	}
	c.Sagged = u[uSagged] < o.sagged[repair][b2i(s.crooked)]
	switch o.known.Square {
	case Square:
		c.Sagged = false
		for z, m := range c.Manner {
			c.Manner[z] = min(m, Roughly)
		}
	case OutOfSquare:
		c.Sagged = c.Sagged || !c.Crooked()
	}
	for c.Hand < hands-1 && u[uHand] >= o.hand[repair][c.Hand] {
		c.Hand++
	}
	c.Blasted = u[uBlasted] < o.blasted[repair]
	return c
}

// pickHits inverts the distribution function of the states. Most cars have the first.
func (o *Odds) pickHits(repair int, u float64) int {
	upTo := &o.hits[repair]
	if u < upTo[0] {
		return 0
	}
	low, high := 1, hitStates-1
	for low < high {
		if mid := (low + high) / 2; u < upTo[mid] {
			high = mid
		} else {
			low = mid + 1
		}
	}
	return low
}

// Left draws what the hand left on a part that it replaced.
func (o *Odds) Left(hand int, canBraze bool, u float64) Kind {
	is := &o.fig.leftUpTo[hand][b2i(canBraze)]
	for k := Right; k < HandKinds-1; k++ {
		if u < is[k] {
			return k
		}
	}
	return Bonded
}

// Brazed says whether a patch is brazed.
func (o *Odds) Brazed(hand int, u float64) bool { return u < o.fig.PatchBrazed[hand] }

// SkinWarped says whether a big skin is warped.
func (o *Odds) SkinWarped(blasted bool, u float64) bool { return u < o.fig.SkinWarped[b2i(blasted)] }

// Surveyed is what a survey of the bare metal records of the car: how every zone was
// mended, of which an open body has no roof, and whether the body is square.
func (c *Car) Surveyed(b *car.Body) (zones [Zones]string, square string) {
	for z, m := range c.Manner {
		if Zone(z) != Roof || HasRoof(b) {
			zones[z] = MannerIDs[m]
		}
	}
	if c.Sagged || c.Crooked() {
		return zones, OutOfSquare
	}
	return zones, Square
}
