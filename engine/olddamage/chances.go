package olddamage

import "underpaint/engine/damage"

// Chances sum up the old damage of a car.
type Chances struct {
	Manner      [Zones][Manners]float64
	Hit         float64 // at least one zone was hit hard
	ToMend      float64 // a zone was mended roughly or is crooked, or the body is out of square
	OutOfSquare float64
	Hand        [hands]float64
	Blasted     float64
}

// Chances are the exact chances, for those of the state of earlier repairs.
func (o *Odds) Chances(repairs [damage.RepairStates]float64) (c Chances) {
	for r, p := range repairs {
		before := 0.0
		for n := range allHits {
			s := &allHits[n]
			v := float64(p * (o.hits[r][n] - before))
			before = o.hits[r][n]
			c.addHits(s, v, o.sagged[r][b2i(s.crooked)])
		}
		before = 0
		for h, upTo := range o.hand[r] {
			c.Hand[h] += float64(p * (upTo - before))
			before = upTo
		}
		c.Blasted += float64(p * o.blasted[r])
	}
	return c
}

func (c *Chances) addHits(s *hitState, v, sagged float64) {
	mend := s.crooked
	for z, m := range s.manner {
		c.Manner[z][m] += v
		mend = mend || m == Roughly
	}
	if s.n > 0 {
		c.Hit += v
	}
	if s.crooked {
		c.OutOfSquare += v
	} else {
		c.OutOfSquare += float64(v * sagged)
	}
	if mend {
		c.ToMend += v
	} else {
		c.ToMend += float64(v * sagged)
	}
}
