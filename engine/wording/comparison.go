package wording

import (
	"underpaint/engine/session"
)

// WhyNotComparable says why the rates on the site and the new ones cannot be compared;
// nothing where they can, or where there are none on the site.
func WhyNotComparable(j *session.RatesComparison) string {
	if j.Old() == nil || j.Comparable() {
		return ""
	}
	return "The rates on the site are in " + j.Old().Rates.Currency.Code + " and these in " + j.New().Rates.Currency.Code + ", so the two cannot stand on one axis."
}

// AtBothRates says the range of one car at the rates on the site, nil where there is
// nothing to compare, and at the new ones. Until the ranges settle the two may rest on
// unlike numbers of cars, and then nothing is said of the one beside the other.
func (t *Text) AtBothRates(old *session.PricedCar, now session.PricedCar, state session.State) string {
	here := t.span(now.Shown.Low, now.Shown.High)
	if old == nil {
		return "8 in 10 such cars: " + here + "."
	}
	site := t.span(old.Shown.Low, old.Shown.High)
	switch {
	case state != session.Settled && old.Exact.Cars != now.Exact.Cars:
		return "8 in 10 such cars: about " + here + "."
	case site == here:
		return "8 in 10 such cars: " + here + ", as on the site."
	}
	return "8 in 10 such cars: " + site + " on the site, " + here + " here."
}

// KindMoved says what a kind of line costs more or less at the new rates.
func (t *Text) KindMoved(m session.KindMoved) string {
	more := " more"
	if m.More < 0 {
		more = " less"
	}
	return t.Kind(m.Kind) + ": " + t.roughly(m.More) + more + " a car, on the average of these cars"
}
