package evidence

import (
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/damage"
)

// sellersWord is the check that reports what the seller says.
const sellersWord = "word"

// weight is the factor on the log likelihood of an answer.
func weight(k Kind, by witness, yes bool) float64 {
	switch {
	case yes && k.yesWhole:
		return 1
	case k.ID == sellersWord && by != customer: // it is the seller's word even if the shop enters it
		return looks().w.word
	case by != shop:
		return looks().w.customer
	}
	return 1
}

// result is the log likelihood of one answer, weighted by who made the check.
type result struct {
	order          int // position of the check in the data
	by             witness
	ofFinding, yes bool
	counts         float64 // weight by who made the check, already applied below
	ifCovered      float64 // factor on its log ratios on a freshly covered car
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
		// People differ in how often they see a hole where there is none. That does not
		// affect a no, which uses the shop's chances.
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

// witnessOf is the index of who made the check, -1 if unknown.
func witnessOf(by string) witness { return witness(slices.Index(witnessIDs[:], by)) }

// step is the log ratio of condition k to the previous condition.
func (r *result) step(k int, on cover) float64 {
	step := r.condition[k] - r.condition[k-1]
	if on == freshlyCovered {
		return float64(step * r.ifCovered)
	}
	return step
}
