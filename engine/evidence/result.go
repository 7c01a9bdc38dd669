package evidence

import (
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/damage"
)

// sellersWord is the look that reports what the seller says.
const sellersWord = "word"

// weight is how much of its log likelihood an answer counts.
func weight(k Kind, by witness, yes bool) float64 {
	switch {
	case yes && k.yesWhole:
		return 1
	case k.ID == sellersWord && by != customer: // whoever enters it, the seller said it
		return looks().w.word
	case by != shop:
		return looks().w.customer
	}
	return 1
}

// result is the log likelihood of one answer, weighted by who looked.
type result struct {
	order          int // place of the look in the data
	by             witness
	ofFinding, yes bool
	counts         float64 // how much it counts by who looked, taken in below
	ifCovered      float64 // how much its log ratios count on a freshly covered car
	condition      [car.Conditions]float64
	finding        [damage.Findings][2]float64 // without and with filler over a dent
}

func newResult(k Kind, l Look) result {
	r := result{order: k.order, by: witnessOf(l.By), ofFinding: k.AnswersTo == OfFinding, yes: l.Result == Yes, ifCovered: 1}
	if !r.yes {
		r.ifCovered = k.goodIfCovered
	}
	r.counts = weight(k, r.by, r.yes)
	logOf := func(condition int, f damage.Finding, dent bool) float64 {
		if r.yes {
			return float64(r.counts * chance.Log(k.yesBy(r.by, condition, f, dent)))
		}
		// People differ in how often they see a hole that is not there. That makes
		// no difference to a no, which is read by the shop's chances.
		return float64(r.counts * chance.Log(1-k.ChanceOfYes(condition, f, dent)))
	}
	if r.ofFinding {
		for f := damage.NoFinding; f < damage.Findings; f++ {
			r.finding[f] = [2]float64{logOf(0, f, false), logOf(0, f, true)}
		}
		return r
	}
	for c := range r.condition {
		r.condition[c] = logOf(c, damage.NoFinding, false)
	}
	return r
}

// witnessOf is the index of who looked, -1 for nobody known.
func witnessOf(by string) witness { return witness(slices.Index(witnessIDs[:], by)) }

// step is the log ratio of condition k to the one before it.
func (r *result) step(k int, on cover) float64 {
	step := r.condition[k] - r.condition[k-1]
	if on == freshlyCovered {
		return float64(step * r.ifCovered)
	}
	return step
}
