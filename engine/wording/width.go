package wording

import (
	"math"
	"strconv"

	"underpaint/engine/car"
	"underpaint/engine/estimate"
	"underpaint/engine/session"
)

// WidthProgress says how far taking the width apart has got.
func WidthProgress(v *session.VarianceShares) string {
	return "Taking the width apart: " + Grouped(int64(v.Done)) + " of " + Grouped(int64(v.Of)) + "."
}

// Input names an input of the calculation, and says what is in it.
func (t *Text) Input(b *car.Body, input int) (name, why string) {
	switch input {
	case estimate.History:
		return "What is not known of its life", "Where it stood, how long it was driven, how it was kept."
	case estimate.CarLuck:
		return "How this car came through that life", "Of two cars with the same answers one is worse all over. No single look tells; every look tells a little, and bare metal tells most."
	case estimate.Repairs:
		return "Earlier repairs", "Patches over rust and filler over holes come to light under the paint."
	case estimate.Ways:
		return "What is done about what is found", "The same rust can be treated, patched or cut out. It is settled part by part after the survey."
	case estimate.CarHours:
		return "How hard the work goes on this car", "Seized bolts, thin edges, poor access. Hours worked in the strip tell some of it; the rest nobody can take away before the work is done."
	case estimate.OwnHours:
		return "Hours of single pieces of work", "Each piece goes better or worse; over many pieces that evens out."
	case estimate.Prices:
		return "Prices of parts and of work sent out", "Known for good once they are ordered."
	}
	return "Rust: " + lowerFirst(t.In(b.Groups[input-estimate.Groups].Name)), "Beyond what holds for the whole car. Looks at these places tell about it."
}

// RestShare says how much all other inputs make.
func RestShare(v *session.VarianceShares) string { return "Everything else: " + Percent(v.RestPercent) }

// SharesNote says what the shares are, and how good.
func SharesNote(v *session.VarianceShares) string {
	return "Shares of the variance that add to all of it, each good to about ±" + strconv.Itoa(int(math.Ceil(200*v.WorstSE))) +
		" in the hundred. What two causes do together is halved between them; what comes later in this order counts for what is new in it: the life, the car, its repairs, each place."
}

// WorseLikely says how often a part is rusted through.
func WorseLikely(p *session.WorsePart) string {
	return "Rusted through or gone in " + CarsInTen(p.HoledAll) + "; of the dearest fifth in " + CarsInTen(p.HoledDearest) + "."
}

// WorseCost says what a part takes.
func (t *Text) WorseCost(p *session.WorsePart) string {
	return "It takes about " + t.Likely(math.Max(1, p.Dearest)) + " there, about " + t.Likely(math.Max(1, p.All)) + " on the average of all such cars."
}

// WorseFind says how one would find out about a part.
func (t *Text) WorseFind(p *session.WorsePart) string {
	switch {
	case p.Closed:
		return "A closed box: it shows only when it is opened, after the survey."
	case p.Bare:
		return "Bare metal shows it; what is recorded counts."
	case !p.Checkable:
		return "Only bare metal shows it: strip and survey."
	}
	who := "the shop"
	if p.Check.CustomerCan {
		who = "the shop, or you"
	}
	return "To find out before: " + lowerFirst(t.In(p.Check.Name)) + "? (" + who + "). For certain: strip and survey."
}

// WorseNote stands below the parts that could make it worse.
const WorseNote = "What the part takes of its own, both sides together; getting in, materials of the whole car, supplies and tax are apart."
