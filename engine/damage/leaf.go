package damage

import "underpaint/engine/car"

// Likelihood says, for one item, how likely what was seen of it is under each
// condition, finding and presence of filler over a dent. Only ratios matter.
type Likelihood [car.Conditions][Findings][2]float64

// NoEvidence is the likelihood of having seen nothing.
func NoEvidence() *Likelihood {
	l := &Likelihood{}
	for k := range l {
		for f := range l[k] {
			l[k][f] = [2]float64{1, 1}
		}
	}
	return l
}

// leafPrior holds what the item's chance of repair depends on.
type leafPrior struct {
	outer bool
	knock [RepairStates]float64
	holed [RepairStates]float64              // q: repaired where it had holed
	kinds [RepairStates][Findings]float64    // which repair, given one
	then  *[Findings][car.Conditions]float64 // condition after it
	dent  [RepairStates]float64              // filler over a dent
}

func (g *figures) leafPrior(p *car.Part) leafPrior {
	l := leafPrior{outer: p.Face == car.Outer, then: &g.then, kinds: g.kinds, holed: g.holed}
	floor := false
	for _, id := range g.floorPans {
		floor = floor || id == p.ID
	}
	if !l.outer && !floor {
		for r := range l.holed {
			l.holed[r] *= g.elsewhere
		}
	}
	for r := range l.kinds {
		if !l.outer {
			l.kinds[r][PatchOverRust] += l.kinds[r][FillerOverHole]
			l.kinds[r][FillerOverHole] = 0
		}
	}
	if l.outer {
		l.knock, l.dent = g.knock, g.dent
		if p.Trap >= 4 {
			for r := range l.dent {
				l.dent[r] *= g.dentLow
			}
		}
	}
	return l
}

// joint spreads the chances of rust p at repair state r over condition, finding
// and dent. Holes (pinholes and worse) may have been repaired; an outer item
// may have been replaced after a knock whatever its rust.
func (l *leafPrior) joint(p [car.Conditions]float64, r int) (j Likelihood) {
	kept := 1 - l.knock[r]
	holes := 0.0
	for k := range p {
		rest := float64(kept * p[k])
		if k >= firstHole {
			holes += rest
			rest *= 1 - l.holed[r]
		}
		j[k][NoFinding][0] = rest
	}
	repaired := float64(holes * l.holed[r])
	for f := PatchOverRust; f < Findings; f++ {
		share := float64(repaired * l.kinds[r][f])
		if f == Replaced {
			share += l.knock[r]
		}
		for k := range p {
			j[k][f][0] += float64(share * l.then[f][k])
		}
	}
	for k := range j {
		for f := range j[k] {
			all := j[k][f][0]
			j[k][f][1] = float64(all * l.dent[r])
			j[k][f][0] = all - j[k][f][1]
		}
	}
	return j
}

// firstHole is the mildest condition that was a hole when it was repaired.
const firstHole = 3

// pull folds a likelihood back onto the rust alone: the likelihood of each
// condition of rust before any repair is rust[k]; fixed is the part that does
// not depend on rust. It is the adjoint of joint.
func (l *leafPrior) pull(e *Likelihood, r int) (rust [car.Conditions]float64, fixed float64) {
	seen := func(k int, f Finding) float64 {
		return float64((1-l.dent[r])*e[k][f][0]) + float64(l.dent[r]*e[k][f][1])
	}
	repair := 0.0
	for f := PatchOverRust; f < Findings; f++ {
		after := 0.0
		for k := range rust {
			after += float64(l.then[f][k] * seen(k, f))
		}
		repair += float64(l.kinds[r][f] * after)
		if f == Replaced {
			fixed = float64(l.knock[r] * after)
		}
	}
	kept := 1 - l.knock[r]
	for k := range rust {
		rust[k] = float64(kept * seen(k, NoFinding))
		if k >= firstHole {
			rust[k] = float64(rust[k]*(1-l.holed[r])) + float64(kept*l.holed[r]*repair)
		}
	}
	return rust, fixed
}
