package exact

import (
	"math"
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/damage"
)

// leafChances are the chances of earlier repairs on one part.
type leafChances struct {
	knock, holed, dent three
	kinds              [3][damage.Findings]float64
	then               [damage.Findings][car.Conditions]float64
}

func (f *Figures) leafChances(p *car.Part) (l leafChances) {
	r := &f.damage.Repairs
	outer, floor := p.Face == car.Outer, slices.Contains(r.Floors, p.ID)
	for state := range 3 {
		l.holed[state] = r.Holed[state]
		if !outer && !floor {
			l.holed[state] *= r.Elsewhere
		}
		if outer {
			l.knock[state], l.dent[state] = r.Knock[state], r.Dent[state]
			if p.Trap >= 4 {
				l.dent[state] *= r.DentLow
			}
		}
		for k := damage.PatchOverRust; k < damage.Findings; k++ {
			to := k
			if k == damage.FillerOverHole && !outer {
				to = damage.PatchOverRust
			}
			l.kinds[state][to] += r.Kinds[state][damage.FindingIDs[k]]
		}
	}
	for k := damage.PatchOverRust; k < damage.Findings; k++ {
		l.then[k] = r.Then[damage.FindingIDs[k]]
	}
	return l
}

// given is the characteristic function of what an item costs times the likelihood of
// what was seen of it, given how far rust got before any repair and the repair state.
func (l *leafChances) given(c *costs, seen *damage.Likelihood, state int) (out [car.Conditions]complex128) {
	at := func(k int, f damage.Finding) complex128 {
		plain, dent := c[k][f][0], c[k][f][1]
		if seen != nil {
			plain, dent = plain*complex(seen[k][f][0], 0), dent*complex(seen[k][f][1], 0)
		}
		return complex(1-l.dent[state], 0)*plain + complex(l.dent[state], 0)*dent
	}
	var after [damage.Findings]complex128
	for f := damage.PatchOverRust; f < damage.Findings; f++ {
		for k, p := range l.then[f] {
			after[f] += complex(p, 0) * at(k, f)
		}
	}
	repaired := complex(0, 0)
	for f := damage.PatchOverRust; f < damage.Findings; f++ {
		repaired += complex(l.kinds[state][f], 0) * after[f]
	}
	for k := range out {
		v := at(k, damage.NoFinding)
		if k >= pinholes {
			v = complex(1-l.holed[state], 0)*v + complex(l.holed[state], 0)*repaired
		}
		out[k] = complex(1-l.knock[state], 0)*v + complex(l.knock[state], 0)*after[damage.Replaced]
	}
	return out
}

// pinholes is the mildest condition that was a hole when it was repaired.
const pinholes = 3

// rust is the chance of each condition where the log of the depth is x before the
// item's own luck, of deviation own.
func (f *Figures) rust(x, own float64, hidden bool) (p [car.Conditions]float64) {
	below := 0.0
	for k, c := range f.damage.Loss.Steps {
		if k == 0 && hidden {
			c = f.damage.Loss.Hidden
		}
		upTo := math.Erfc(-(math.Log(c)-x)/own/math.Sqrt2) / 2
		p[k], below = upTo-below, upTo
	}
	p[car.Conditions-1] = 1 - below
	return p
}
