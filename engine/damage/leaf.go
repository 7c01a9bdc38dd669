package damage

import (
	"underpaint/engine/car"
	"underpaint/engine/exposure"
)

// Likelihood is the likelihood of the evidence on one item for each condition, finding
// and presence of filler over a dent. Only ratios matter.
type Likelihood [car.Conditions][Findings][2]float64

// NoEvidence is the likelihood without evidence: all ones.
func NoEvidence() *Likelihood {
	l := &Likelihood{}
	for k := range l {
		for f := range l[k] {
			l[k][f] = [2]float64{1, 1}
		}
	}
	return l
}

// stratum is how earlier work on the car affected an item, which decides how the depth of
// rust is read. On a car in one of the first three repair states, all items are in the
// stratum of that number. On a thoroughly restored car, an item is either in notReached
// or in renewed.
type stratum int8

const (
	notReached stratum = thorough + iota // as on an untouched car
	renewed                              // rust and other causes count from the year of the work
	strata
)

// strataOf returns the strata that items of a car in repair state r may be in.
func strataOf(r int) (first, last stratum) {
	if r == thorough {
		return notReached, renewed
	}
	return stratum(r), stratum(r)
}

// reading is how the earlier work affects the depth.
func (s stratum) reading() exposure.Reading {
	switch s {
	case looks:
		return exposure.PaintedAgain
	case renewed:
		return exposure.Renewed
	}
	return exposure.AsItIs
}

// leafPrior holds the item's chances of repair, by stratum. The chances of the two strata
// of a thoroughly restored car together add to 1.
type leafPrior struct {
	outer bool
	knock [strata]float64           // replaced after a knock, whatever its rust
	kept  [strata]float64           // not replaced after a knock
	holed [strata]float64           // q: repaired where it had holed
	found [strata]float64           // found replaced, whatever its condition
	kinds [strata][Findings]float64 // kind of repair, given one
	then  *[Findings]byCondition    // condition after it
	dent  [strata]float64           // filler over a dent
}

func (g *figures) leafPrior(p *car.Part) leafPrior {
	l := leafPrior{outer: p.Face == car.Outer, then: &g.then}
	first, times := 0, 1.0
	if !g.patchedFirst(p) {
		first, times = 1, g.elsewhere
	}
	missed := g.notReached[first]
	for s := range strata {
		state, like := min(int(s), thorough), int(s)
		if s >= notReached {
			like = untouched
		}
		l.kept[s] = 1
		if s != renewed {
			l.holed[s] = g.holed[like] * times
			l.kinds[s] = g.kinds[like]
		}
		if !l.outer {
			l.kinds[s][PatchOverRust] += l.kinds[s][FillerOverHole]
			l.kinds[s][FillerOverHole] = 0
			continue
		}
		l.knock[s], l.dent[s] = g.knock[state], g.dent[state]
		if p.Trap >= 4 {
			l.dent[s] *= g.dentLow
		}
		l.kept[s] = 1 - l.knock[s]
	}
	l.kept[renewed] *= 1 - missed
	l.kept[notReached] *= missed
	l.knock[renewed] = 0 // a knock counts once, in the other stratum
	l.found[renewed] = g.foundReplaced[first]
	return l
}

// joint spreads weights p of the condition in stratum s over condition, finding and dent.
// Holes (pinholes and worse) may have been repaired. An outer item may have been replaced
// after a knock whatever its rust.
func (l *leafPrior) joint(p *byCondition, s stratum) (j Likelihood) {
	all, holes := 0.0, 0.0
	for k, v := range p {
		all += v
		rest := float64(l.kept[s] * v)
		if k >= firstHole {
			holes += rest
			rest *= 1 - l.holed[s]
		}
		j[k][Replaced][0] = float64(rest * l.found[s])
		j[k][NoFinding][0] = rest - j[k][Replaced][0]
	}
	repaired := float64(holes * l.holed[s])
	for f := PatchOverRust; f < Findings; f++ {
		share := float64(repaired * l.kinds[s][f])
		if f == Replaced {
			share += float64(l.knock[s] * all)
		}
		for k := range p {
			j[k][f][0] += float64(share * l.then[f][k])
		}
	}
	for k := range j {
		for f := range j[k] {
			both := j[k][f][0]
			j[k][f][1] = float64(both * l.dent[s])
			j[k][f][0] = both - j[k][f][1]
		}
	}
	return j
}

// firstHole is the mildest condition that was a hole when it was repaired.
const firstHole = 3

// firstHoled is the mildest condition that counts as rusted through.
const firstHoled = 4

// pull reduces a likelihood to one of the condition alone, before any repair: for weights
// p that add to 1, the sum of joint × e equals the sum of p × the result.
func (l *leafPrior) pull(e *Likelihood, s stratum) (out byCondition) {
	seen := func(k int, f Finding) float64 {
		return float64((1-l.dent[s])*e[k][f][0]) + float64(l.dent[s]*e[k][f][1])
	}
	repair, fixed := 0.0, 0.0
	for f := PatchOverRust; f < Findings; f++ {
		after := 0.0
		for k := range out {
			after += float64(l.then[f][k] * seen(k, f))
		}
		repair += float64(l.kinds[s][f] * after)
		if f == Replaced {
			fixed = float64(l.knock[s] * after)
		}
	}
	for k := range out {
		v := float64((1-l.found[s])*seen(k, NoFinding)) + float64(l.found[s]*seen(k, Replaced))
		if k >= firstHole {
			v = float64(v*(1-l.holed[s])) + float64(l.holed[s]*repair)
		}
		out[k] = float64(l.kept[s]*v) + fixed
	}
	return out
}

// conditions sums everything but the condition out.
func (j *Likelihood) conditions() (g byCondition) {
	for k := range j {
		for f := range j[k] {
			g[k] += j[k][f][0] + j[k][f][1]
		}
	}
	return g
}

func (j *Likelihood) plus(other *Likelihood) {
	for k := range j {
		for f := range j[k] {
			for d := range j[k][f] {
				j[k][f][d] += other[k][f][d]
			}
		}
	}
}

// normalise scales the likelihood to add to one.
func (j *Likelihood) normalise() {
	g, sum := j.conditions(), 0.0
	for _, v := range g {
		sum += v
	}
	for k := range j {
		for f := range j[k] {
			for d := range j[k][f] {
				j[k][f][d] /= sum
			}
		}
	}
}
