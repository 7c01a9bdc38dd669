package exact

import (
	"math"
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/damage"
	"underpaint/engine/exposure"

	"underpaint/tests/figures"
)

// way is one way in which an item may have come through the years: how likely it is on
// a car in one repair state, which reading of the history counts, and what happened to
// its holes.
type way struct {
	chance  float64
	reading exposure.Reading
	renewed bool    // causes of its own count from the date of the work on the car
	holed   float64 // probability that a hole was repaired
	found   float64 // probability that it is found replaced, whatever its condition
	kinds   [damage.Findings]float64
}

// leafChances are the probabilities of earlier repairs, and of causes of its own, for
// one part.
type leafChances struct {
	ways          [damage.RepairStates][]way // probabilities without parts replaced after a knock
	knock, dent   figures.ByState
	then          [damage.Findings][car.Conditions]float64
	cause         [car.Conditions]float64 // condition from a cause of its own
	own, spared   float64                 // probabilities; own is that of a car of fullAge years
	spare         [car.Conditions]float64
	fullAge, most float64
}

func (f *Figures) leafChances(p *car.Part) (l leafChances) {
	r := &f.damage.Repairs
	outer, first := p.Face == car.Outer, p.Face == car.Outer || slices.Contains(r.Floors, p.ID)
	missed, found := r.Thoroughly.NotReached.Elsewhere, r.Thoroughly.FoundReplaced.Elsewhere
	if first {
		missed, found = r.Thoroughly.NotReached.First, r.Thoroughly.FoundReplaced.First
	}
	mended := func(state int, reading exposure.Reading, chance float64) way {
		w := way{chance: chance, reading: reading, holed: r.Holed[state]}
		if !first {
			w.holed *= r.Elsewhere
		}
		for k := damage.PatchOverRust; k < damage.Findings; k++ {
			to := k
			if k == damage.FillerOverHole && !outer {
				to = damage.PatchOverRust
			}
			w.kinds[to] += r.Kinds[state][damage.FindingIDs[k]]
		}
		return w
	}
	l.ways = [damage.RepairStates][]way{{mended(0, exposure.AsItIs, 1)}, {mended(1, exposure.AsItIs, 1)}, {mended(2, exposure.PaintedAgain, 1)},
		{mended(0, exposure.AsItIs, missed), {chance: 1 - missed, reading: exposure.Renewed, renewed: true, found: found}}}
	if outer {
		l.knock, l.dent = r.Knock, r.Dent
		for state := range l.dent {
			if p.Trap >= 4 {
				l.dent[state] *= r.DentLow
			}
		}
	}
	for k := damage.PatchOverRust; k < damage.Findings; k++ {
		l.then[k] = r.Then[damage.FindingIDs[k]]
	}
	l.setCause(f.damage, p.ID)
	return l
}

func (l *leafChances) setCause(f *figures.Damage, part string) {
	c := &f.Cause
	l.fullAge, l.most, l.own, l.spare = c.FullAge, c.Most, c.ByPart[part], c.Spared.Condition
	l.cause, l.spared = c.Condition.Water, c.Spared.Chance
	if slices.Contains(c.AcidOn, part) {
		l.cause = c.Condition.Acid
	}
	if v, own := c.Spared.ByPart[part]; own {
		l.spared = v
	}
}

// given is the characteristic function of an item's cost times the likelihood of what
// was seen of it, by how far rust got before any repair or other cause, on a car in one
// repair state and for an item that came through in one of the ways. The first way
// includes in full the parts replaced after a knock.
func (l *leafChances) given(c *costs, seen *damage.Likelihood, state, n int, history *exposure.History) (out [car.Conditions]complex128) {
	w := &l.ways[state][n]
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
		repaired += complex(w.kinds[f], 0) * after[f]
	}
	var then [car.Conditions]complex128 // by condition after causes of its own
	for k := range then {
		v := complex(1-w.found, 0)*at(k, damage.NoFinding) + complex(w.found, 0)*at(k, damage.Replaced)
		if k >= pinholes {
			v = complex(1-w.holed, 0)*v + complex(w.holed, 0)*repaired
		}
		then[k] = v
	}
	years := history.AgeYears
	if w.renewed {
		years = history.WorkYearsAgo
	}
	own := l.own * min(l.most, years/l.fullAge)
	for k := range out {
		v := complex(1-own-l.spared, 0) * then[k]
		for j := range then {
			v += complex(own*l.cause[j], 0)*then[max(j, k)] + complex(l.spared*l.spare[j], 0)*then[j]
		}
		out[k] = complex((1-l.knock[state])*w.chance, 0) * v
		if n == 0 {
			out[k] += complex(l.knock[state], 0) * after[damage.Replaced]
		}
	}
	return out
}

// pinholes is the mildest condition that counted as a hole when it was repaired.
const pinholes = 3

// rust is the probability of each condition where the log of the depth is x before the
// item's own luck, whose standard deviation is own.
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
