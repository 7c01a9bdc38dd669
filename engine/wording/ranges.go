package wording

import (
	"strconv"
	"strings"

	"underpaint/engine/carfile"
	"underpaint/engine/estimate"
	"underpaint/engine/money"
	"underpaint/engine/session"
)

// eachPriced says how many replicates price each simulated car, and why.
var eachPriced = "each priced " + strconv.Itoa(estimate.Replicates) + " times, because the work can go well or badly"

// HowSure says how many simulated cars are behind the ranges, and how accurate the ends
// are.
func (t *Text) HowSure(r *session.Ranges) string {
	line := "Worked out on " + Grouped(int64(r.Cars)) + " simulated cars, " + eachPriced + ". " + t.goodTo(&r.Rows[0]) + "."
	switch r.State {
	case session.Rough, session.Refining:
		return "Approximate: we are still working it out. " + line
	case session.BudgetEnded:
		return "Less accurate than we aim for, because the calculation reached its limit. " + line
	}
	return line
}

// goodTo says how accurate the ends of a range are. U+2060 keeps the sign and the
// amount on one line.
func (t *Text) goodTo(r *session.Range) string {
	return "Each end is accurate to about ±\u2060" + t.Amount(r.GoodTo)
}

// OwnRecord says how the shop's earlier ranges came out, if the shop publishes that, and
// how many starting figures it has replaced with its own.
func (t *Text) OwnRecord() (out []string) {
	if p := t.rates.Past; p != nil {
		out = append(out, "Of "+Jobs(p.Jobs())+" that "+t.say("this shop", "this workshop")+" finished from "+t.Date(p.From)+" to "+t.Date(p.To)+", "+strconv.Itoa(p.Above)+
			" came out above the first range, "+strconv.Itoa(p.Below)+" below it and "+strconv.Itoa(p.Inside)+" inside it. We expect 2 in 10 outside."+recordJudged(p))
	}
	if n := t.rates.Own.Figures(); n > 0 {
		out = append(out, counted(n, "figure comes", "figures come")+" from "+t.say("this shop's", "this workshop's")+" own finished jobs, as of "+t.Date(t.rates.Own.LearntOn)+". All others are starting figures.")
	}
	return out
}

// NotInRange lists what the ranges leave out, first what the scope leaves out.
func (t *Text) NotInRange(r *session.Ranges) []string {
	var own []string
	switch r.Car.Scope {
	case "outside_only":
		own = append(own, "Metal under the outer panels, underneath and inside, unless work on an outer panel opens it up")
	case "metalwork_only":
		own = append(own, t.say("Body and block, paint and final assembly", "Filling, flatting, paint and final assembly"))
	}
	return append(own, t.NotInIt()...)
}

// Warnings lists the warnings of the rates and of the car.
func (t *Text) Warnings(r *session.Ranges) []string {
	out := t.RatesWarnings()
	if len(r.Bodies) > 1 {
		out = append(out, "Each body has its own range. We never mix them.")
	}
	return out
}

// Before is the range that was shown before the last answer, in minor units, and that
// answer in words.
type Before struct {
	Low, High money.Minor
	Answer    string
}

// Moved says how the last answer changed the range. It is empty where it did not.
func (t *Text) Moved(r *session.Range, b *Before) string {
	if b == nil || b.High <= b.Low || (b.Low == r.Shown.Low && b.High == r.Shown.High) {
		return ""
	}
	line := b.Answer + " changed the range from " + t.Amount(b.Low) + "–" + t.Amount(b.High) + " to " + t.Amount(r.Shown.Low) + "–" + t.Amount(r.Shown.High) + "."
	if r.Shown.High-r.Shown.Low > b.High-b.Low {
		line += " It is wider now, because more can be wrong with such a car or we know less about it."
	}
	return line
}

// Car describes the car in one line.
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
