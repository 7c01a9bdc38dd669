package wording

import (
	"underpaint/engine/session"
)

// WhyNotComparable says why the rates on the site and the new ones cannot be compared.
// It is empty where they can, or where there are none on the site.
func WhyNotComparable(j *session.RatesComparison) string {
	if j.Old() == nil || j.Comparable() {
		return ""
	}
	return "The rates on your site are in " + j.Old().Rates.Currency.Code + " and these are in " + j.New().Rates.Currency.Code + ", so we cannot compare them."
}

// AtBothRates says the range of one car at the rates on the site (old, nil where there
// is nothing to compare) and at the new ones. Before the ranges settle, the two may be
// worked out on different numbers of cars; then it leaves the old one out.
func (t *Text) AtBothRates(old *session.PricedCar, now session.PricedCar, state session.State) string {
	here := t.span(now.Shown.Low, now.Shown.High)
	if old == nil {
		return eightOutOfTen + here + "."
	}
	site := t.span(old.Shown.Low, old.Shown.High)
	switch {
	case state != session.Settled && old.Exact.Cars != now.Exact.Cars:
		return eightOutOfTen + "about " + here + "."
	case site == here:
		return eightOutOfTen + here + ", the same as on your site."
	}
	return eightOutOfTen + site + " on your site, " + here + " with these rates."
}

// KindMoved says how much more or less a kind of line costs at the new rates.
func (t *Text) KindMoved(m session.KindMoved) string {
	more := " more"
	if m.More < 0 {
		more = " less"
	}
	return t.Kind(m.Kind) + ": " + t.roughly(m.More) + more + " per car, on average over these cars"
}
