package wording

import (
	"strconv"
	"strings"

	"underpaint/engine/carfile"
	"underpaint/engine/estimate"
	"underpaint/engine/money"
	"underpaint/engine/session"
)

// eachPriced says in how many replicates a simulated car is priced.
var eachPriced = "each priced " + strconv.Itoa(estimate.Replicates) + " times as its work may go"

// HowSure says on how many simulated cars the ranges rest, and how good they are.
func (t *Text) HowSure(r *session.Ranges) string {
	line := "Worked out on " + Grouped(int64(r.Cars)) + " imagined cars, " + eachPriced + "; " + t.goodTo(&r.Rows[0]) + "."
	switch r.State {
	case session.Rough, session.Refining:
		return "About, still being worked out. " + line
	case session.BudgetEnded:
		return "Not as exact as it should be: the sums stopped at their limit. " + line
	}
	return line
}

// goodTo says how accurate the ends of a range are. U+2060 keeps the sign and the
// amount on one line.
func (t *Text) goodTo(r *session.Range) string {
	return "each end good to about ±\u2060" + t.Amount(r.GoodTo)
}

// OwnRecord says how the shop's earlier ranges came out, where it publishes that,
// and what of its own it has put in the place of starting figures.
func (t *Text) OwnRecord() (out []string) {
	if p := t.rates.Past; p != nil {
		out = append(out, "Of "+Jobs(p.Jobs())+" that this shop finished from "+Date(p.From)+" to "+Date(p.To)+", "+strconv.Itoa(p.Above)+
			" came out above the range first given, "+strconv.Itoa(p.Below)+" below it and "+strconv.Itoa(p.Inside)+" inside; 2 in 10 are to be expected outside.")
	}
	if n := t.rates.Own.Figures(); n > 0 {
		out = append(out, counted(n, "figure rests", "figures rest")+" on this shop's own finished jobs, as of "+Date(t.rates.Own.LearntOn)+"; all others are starting figures.")
	}
	return out
}

// NotInRange lists what the ranges leave out, the scope's own first.
func (t *Text) NotInRange(r *session.Ranges) []string {
	var own []string
	switch r.Car.Scope {
	case "outside_only":
		own = append(own, "Metal behind the outer skins, underneath and inside, unless an outer panel forces it open")
	case "metalwork_only":
		own = append(own, t.say("Body and block, paint and final assembly", "Filling, flatting, paint and final assembly"))
	}
	return append(own, t.NotInIt()...)
}

// Warnings are those of the rates, and what is unusual about the car.
func (t *Text) Warnings(r *session.Ranges) []string {
	out := t.RatesWarnings()
	if len(r.Bodies) > 1 {
		out = append(out, "Each body has a range of its own: they are never mixed.")
	}
	return out
}

// Before is the range before the last answer, as it was shown, and that answer.
type Before struct {
	Low, High money.Minor
	Answer    string
}

// Moved says what the last answer did to the range; nothing where it did nothing.
func (t *Text) Moved(r *session.Range, b *Before) string {
	if b == nil || b.High <= b.Low || (b.Low == r.Shown.Low && b.High == r.Shown.High) {
		return ""
	}
	line := b.Answer + " moved the range from " + t.Amount(b.Low) + "–" + t.Amount(b.High) + " to " + t.Amount(r.Shown.Low) + "–" + t.Amount(r.Shown.High) + "."
	if r.Shown.High-r.Shown.Low > b.High-b.Low {
		line += " That made it wider: more can be wrong with such a car, or less is known of it."
	}
	return line
}

// Car is the car in words.
func (t *Text) Car(r *session.Ranges) string {
	c := r.Car
	parts := []string{}
	for _, b := range r.Bodies {
		parts = append(parts, t.In(b.Name))
	}
	line := strings.Join(parts, " or ")
	switch {
	case c.Made.Year != 0:
		line += " · " + strconv.Itoa(c.Made.Year)
	case c.Made.Decade != 0:
		line += " · " + strconv.Itoa(c.Made.Decade) + "s"
	default:
		line += " · year not known"
	}
	line += " · " + t.lifePlace(c.Life[0])
	if n := len(c.Life); n > 1 {
		line += " and " + strconv.Itoa(n-1) + " more"
	}
	if c.Standard == carfile.NotSure {
		return line + " · all three standards"
	}
	return line + " · " + c.Standard + " standard"
}
