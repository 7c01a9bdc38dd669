package pricing

import (
	"underpaint/engine/car"
	"underpaint/engine/chance"
)

// Supply is what is known about the parts of a car before each is seen: what the customer
// answered to whether it is all there, and which items have been seen on it.
type Supply struct {
	AllThere string // one of AllThereAnswers; "" counts as not sure
	OnCar    []bool // by item: seen on the car; nil = none
}

// supply is a Supply ready for Price.
type supply struct {
	state    [states]float64
	absent   [states][]uint64 // by state and item: an item is missing below this
	assembly *chance.ThreePoint
}

// Supplied returns a copy of the table whose cars may lack parts, and whose bought parts
// may not fit or may be used ones. Where the shop's rates say that parts come as they
// should, it is the same table. A table that is not supplied draws none of this: only
// what is recorded counts.
func (t *Table) Supplied(s Supply) *Table {
	if t.Rates.Parts.AsTheyShould {
		return t
	}
	out := *t
	out.supply = &supply{state: t.coming.notSure}
	for k, answer := range AllThereAnswers[:states] {
		if s.AllThere == answer {
			out.supply.state = [states]float64{}
			out.supply.state[k] = 1
		}
		out.supply.absent[k] = make([]uint64, len(t.items))
		for i := range t.items {
			if s.OnCar != nil && s.OnCar[i] || t.items[i].leftOut {
				continue
			}
			kind := 0
			if t.parts[i].boltedOn {
				kind = 1
			}
			out.supply.absent[k][i] = uint64(float64(t.coming.absent[kind][k] * (1 << 53)))
		}
	}
	out.supply.assembly, _ = threePoint(t.coming.assembly, 1) // embedded figures, tested
	return &out
}

// DrawsSupply says whether the cars of the table draw how parts come.
func (t *Table) DrawsSupply() bool { return t.supply != nil }

// SupplyUniforms are the numbers in (0, 1) that decide how the parts of one car come.
// Source and State are of the whole car, and so is Assembly. Each question about an item
// has a number of its own by the seed (chance.Hash), drawn only where it is asked.
type SupplyUniforms struct {
	Source, State, Assembly float64
	Seed                    uint64
}

// Fill draws how the parts of one car come.
func (u *SupplyUniforms) Fill(s *chance.Stream) {
	u.Source, u.State, u.Assembly, u.Seed = s.Uniform(), s.Uniform(), s.Uniform(), s.Uint64()
}

// The questions about one item.
const (
	askMissing = iota
	askFit
	askHours
	askWeeks
	askSearch
	askSearchAgain
	askUsed
	questions
)

func (u *SupplyUniforms) of(item, question int) float64 {
	return chance.HashUniform(u.Seed, uint64(item*questions+question))
}

// drawMissing sets which items of a car are missing: those recorded, and those drawn.
func (t *Table) drawMissing(u *Uniforms, b *Bill) {
	recorded := t.decided != nil && t.decided.missing != nil
	if b.lacks {
		clear(b.Missing)
	}
	b.lacks = false
	if recorded {
		copy(b.Missing, t.decided.missing)
		b.lacks = true
	}
	if t.supply == nil {
		return
	}
	seed := u.Supply.Seed
	for i, below := range t.supply.absent[pickState(t.supply.state[:], u.Supply.State)] {
		if chance.Hash(seed, uint64(i*questions+askMissing))>>11 < below {
			b.Missing[i], b.lacks = true, true
		}
	}
}

// wayOfMissing is the way of an item that is missing: what a part that is gone would get,
// but at least a whole one.
func (t *Table) wayOfMissing(i int, u float64) car.Way {
	line := &t.items[i]
	return max(line.instead[line.ends.way(car.Conditions-1, u)], t.parts[i].whole)
}

// assemblyTimes is what the hours of assembly of this car are multiplied by.
func (t *Table) assemblyTimes(u *Uniforms) float64 {
	if t.supply == nil || pickState(t.supply.state[:], u.Supply.State) != inPieces {
		return 1
	}
	return t.supply.assembly.At(scaledDeviate(u.Supply.Assembly))
}

// come adds the work and the money of a part that is missing, does not fit or is a used
// one, and returns what the hours of the way itself are multiplied by.
func (t *Table) come(i int, way car.Way, u *Uniforms, f *[car.Trades]float64, b *Bill) comingTimes {
	times, p := comingTimes{missing: 1}, &t.parts[i]
	if b.lacks && b.Missing[i] {
		times.missing = t.metalOfMissing(i, way, b)
		t.search(i, way, u, f, b)
	}
	if way != car.Section && way != car.Full || t.labour[i][way].price == nil {
		return times
	}
	fit := fitNotSaid
	if t.decided != nil && t.decided.fit != nil {
		fit = t.decided.fit[i]
	}
	switch {
	case fit == fitNotSaid && t.supply == nil:
	case fit != fitNotSaid || p.made == hadNew:
		if fit == fitNotSaid {
			fit = t.drawFit(&p.own[way-car.Section], i, u)
		}
		times.toFit = fit != fits
		if fit == wrongPart {
			t.sendBack(i, way, u, f, b)
		}
	case p.made == hadFound:
		t.comeFound(i, way, u, f, b)
	}
	return times
}

// metalOfMissing is what the metalwork on a missing item is multiplied by.
func (t *Table) metalOfMissing(i int, way car.Way, b *Bill) float64 {
	times, p := 1.0, &t.parts[i]
	if !p.boltedOn {
		times = t.coming.weldedIn
	}
	if way == car.Fabricate && (p.other < 0 || b.Missing[p.other]) {
		times *= t.coming.toCopy
	}
	return times
}

// search adds the hours of finding a part that is missing.
func (t *Table) search(i int, way car.Way, u *Uniforms, f *[car.Trades]float64, b *Bill) {
	hours := t.parts[i].search
	if way == car.Fabricate {
		hours = t.parts[i].byHand
	}
	if hours != nil {
		b.hours(i, "search", car.Fit, hours.At(scaledDeviate(u.Supply.of(i, askSearch))), f[car.Fit])
	}
}

// How a new panel fits, in the order in which it is drawn.
const (
	fitNotSaid = iota - 1
	fits
	needsWork
	wrongPart
)

// PanelFits are the ids of how a panel fits.
var PanelFits = []string{"fits", "needs_work", "wrong"}

// drawFit draws how a new-made panel fits, or takes the shop's own word.
func (t *Table) drawFit(own *ownFit, i int, u *Uniforms) int {
	source := mixedSource
	switch own.fit {
	case "fits":
		return fits
	case "needs_work":
		return needsWork
	case "mixed":
	default:
		source = pickState(t.coming.from[:], u.Supply.Source)
	}
	switch x := u.Supply.of(i, askFit); {
	case x < t.coming.fits[source]:
		return fits
	case x-t.coming.fits[source] < t.coming.needsWork[source]:
		return needsWork
	}
	return wrongPart
}

// sendBack adds the hours and the weeks of a wrong panel. The next one needs work.
func (t *Table) sendBack(i int, way car.Way, u *Uniforms, f *[car.Trades]float64, b *Bill) {
	b.hoursToFit(i, "wrong_panel", car.Fit, t.parts[i].work.wrong.At(scaledDeviate(u.Supply.of(i, askHours))), f[car.Fit])
	t.wait(i, way, t.wrongWeeks, u, b)
}

// comeFound adds what a part costs that had to be found: nothing for old stock, cleaning
// and perhaps patching for a used one, and another one where it is no good.
func (t *Table) comeFound(i int, way car.Way, u *Uniforms, f *[car.Trades]float64, b *Bill) {
	p, g := &t.parts[i], &t.coming.used
	if x := u.Supply.of(i, askUsed); x >= p.own[way-car.Section].used {
		return
	}
	s := scaledDeviate(u.Supply.of(i, askHours))
	b.hoursToFit(i, "used_part", car.Prep, p.work.alwaysPrep.At(s), f[car.Prep])
	switch x := u.Supply.of(i, askFit); {
	case x < g.noGood:
		price := t.labour[i][way].price.At(scaledDeviate(u.Price[i]))
		b.part(i, price)
		b.toFit.parts += price
		if p.search != nil {
			b.hoursToFit(i, "search", car.Fit, p.search.At(scaledDeviate(u.Supply.of(i, askSearchAgain))), f[car.Fit])
		}
		t.wait(i, way, t.noGoodWeeks, u, b)
	case x-g.noGood < g.patching:
		b.hoursToFit(i, "used_patching", car.Metal, p.work.patchMetal.At(s), f[car.Metal])
		b.hoursToFit(i, "used_patching", car.Prep, p.work.patchPrep.At(s), f[car.Prep])
	}
}

// wait keeps the longest wait for a part ordered again: all are ordered together.
func (t *Table) wait(i int, way car.Way, weeks *chance.ThreePoint, u *Uniforms, b *Bill) {
	if own := t.parts[i].own[way-car.Section].weeks; own != nil {
		weeks = own
	}
	b.lost = max(b.lost, weeks.At(scaledDeviate(u.Supply.of(i, askWeeks))))
}
