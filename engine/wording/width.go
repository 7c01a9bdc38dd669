package wording

import (
	"math"
	"strconv"

	"underpaint/engine/car"
	"underpaint/engine/estimate"
	"underpaint/engine/session"
)

// WidthProgress says how far the split of the width into its causes has got.
func WidthProgress(v *session.VarianceShares) string {
	return "Working out what makes the range wide: " + Grouped(int64(v.Done)) + " of " + Grouped(int64(v.Of)) + "."
}

// Input names an input of the calculation and explains it.
func (t *Text) Input(b *car.Body, input int) (name, why string) {
	switch input {
	case estimate.History:
		return "What we do not know about its life", "Where it lived, how long it was driven and how it was kept."
	case estimate.CarLuck:
		return "The luck of this car", "Two cars with the same answers can differ all over. No single check shows it. Every check shows a little, and bare metal shows most."
	case estimate.Repairs:
		return "Earlier repairs", "Patches over rust and filler over holes show only when the paint comes off."
	case estimate.Ways:
		return "How each part is repaired", "The same rust can be treated, patched or cut out. That is decided part by part after the survey."
	case estimate.CarHours:
		return "How well the work goes on this car", "Seized bolts, thin edges and poor access take longer. The hours of the strip show some of it. The rest shows only as the work is done."
	case estimate.OwnHours:
		return "The hours on each part", "The work on a part can go well or badly. Over many parts that evens out."
	case estimate.Prices:
		return "Parts, and work sent out", "What they cost, which parts are missing, and whether those bought fit. It is certain once all of them are on the car."
	case estimate.RiseInput(b):
		return "Prices over time", "A long job pays the prices of its days. How fast they rise, nobody knows beforehand."
	case estimate.DoubtInput(b):
		return "What we may have wrong", "The hours and odds are the opinion of one trade. Only finished jobs can check them."
	}
	if input == estimate.OldDamageInput(b) {
		return "Old accidents and how well they were repaired", "How hits were repaired, how well panels were fitted, whether the body is square. The survey shows most of it."
	}
	return "Rust: " + lowerFirst(t.In(b.Groups[input-estimate.Groups].Name)), "What goes beyond the car as a whole. Checks on these parts tell you about it."
}

// RestShare says how much all other inputs contribute.
func RestShare(v *session.VarianceShares) string { return "Everything else: " + Percent(v.RestPercent) }

// SharesNote says what the shares are, and how accurate.
func SharesNote(v *session.VarianceShares) string {
	return "These are shares of the variance, and they add up to all of it. Each is accurate to about ±" + strconv.Itoa(int(math.Ceil(200*v.WorstSE))) +
		" percentage points. Where two causes act together, each gets half. In the order of the car's life, the car itself, its repairs and each group of parts, a later cause counts only for what it adds."
}

// WorseLikely says how often a part is rusted through.
func WorseLikely(p *session.WorsePart) string {
	return "Rusted through or gone in " + CarsInTen(p.HoledAll) + ". Among the most expensive fifth of cars, in " + CarsInTen(p.HoledDearest) + "."
}

// WorseCost says what a part costs.
func (t *Text) WorseCost(p *session.WorsePart) string {
	return "It costs about " + t.Likely(math.Max(1, p.Dearest)) + " in those cars, and about " + t.Likely(math.Max(1, p.All)) + " on average in all cars like this."
}

// WorseFind says how to find out about a part.
func (t *Text) WorseFind(p *session.WorsePart) string {
	switch {
	case p.Closed:
		return "This is a closed box. It shows only when it is opened, after the survey."
	case p.Bare:
		return "The metal is bare, so what is recorded counts."
	case !p.Checkable:
		return "Only bare metal shows it, at the strip and survey."
	}
	who := t.say("the shop", "the workshop")
	if p.Check.CustomerCan {
		who += " or you"
	}
	return "Quick check (" + who + "): " + lowerFirst(t.In(p.Check.Name)) + "? To be certain: strip and survey."
}

// WorseNote is the text below the parts that could make it worse.
const WorseNote = "What the part itself costs, both sides together. Access, materials for the whole car, supplies and tax are not included."
