package wording

import (
	"strconv"
	"strings"

	"underpaint/engine/rates"
	"underpaint/engine/session"
)

// Held says to the customer how long prices hold. It is empty where the rates say nothing
// about it.
func (t *Text) Held() string {
	o := t.rates.OverTime
	switch {
	case o == nil:
		return ""
	case o.Promise.How == rates.NotHeld:
		return "We hold no prices. Everything is charged at the prices of its day."
	}
	line := upperFirst(t.held(&o.Promise)) + " are held " + t.howLong(&o.Promise) + ". "
	if ends(&o.Promise) {
		line += "A longer job pays the " + ratesOrPrices(&o.Promise) + " of its day. "
	}
	return line + upperFirst(t.notHeld(&o.Promise)) + " are charged at the prices of their day."
}

// Rise says how much of a range is there because prices rise while the job runs. It is
// empty where none does.
func (t *Text) Rise(r *session.Range) string {
	x := r.Exact.Rise
	if x.High <= 0 {
		return ""
	}
	return "Rising prices add about " + t.roughly(x.Half) + " in the middle, and more than " + t.roughly(x.High) + " in 1 car out of 10. The range includes that."
}

// Promise says in one sentence how long the shop holds its prices. It is empty where the
// rates say nothing about it.
func (t *Text) Promise() string {
	o := t.rates.OverTime
	switch {
	case o == nil:
		return ""
	case o.Promise.How == rates.NotHeld:
		return "We do not hold our prices: everything is charged at the prices of its day."
	}
	line := "We hold " + t.ours(&o.Promise) + " " + t.howLong(&o.Promise) + "; "
	if ends(&o.Promise) {
		line += "after that, and for "
	} else {
		line += "for "
	}
	return line + t.notHeld(&o.Promise) + ", we charge the prices of the day."
}

// PromiseEnd says to the estimator when the promise ends and how much work is left then.
// It is empty where no promise ends.
func (t *Text) PromiseEnd(e *session.PromiseEnd) string {
	if e == nil {
		return ""
	}
	line := "Our promise on " + t.held(e.Promise) + " ends "
	switch {
	case e.About:
		line += "in about " + months[monthOf(e.On)-1] + " " + e.On[:4]
	case e.On != "":
		line += "on " + t.Date(e.On)
	default:
		line += counted(e.Promise.Months, "month", "months") + " after " + t.begins(e.Promise)
	}
	half, high := hoursLeft(e.Still.Half), hoursLeft(e.Still.High)
	switch {
	case high == 0:
		return line + ". In 9 cars out of 10, all the work is done by then."
	case half == 0:
		return line + ". In half of all cars like this one, all the work is done by then. In 1 car out of 10, more than " + Grouped(high) + " hours are left."
	}
	return line + ". In the middle, about " + Grouped(half) + " hours of work are left then. In 1 car out of 10, it is more than " + Grouped(high) + "."
}

// HeldLong warns the shop about prices that it holds for a very long job. It is empty
// where there is nothing to warn about.
func HeldLong(weeks float64) string {
	if weeks == 0 {
		return ""
	}
	return "You hold prices for the whole job, and 1 job in 10 like these takes more than " + Grouped(int64(weeks)) + " weeks. If prices rise, you pay the difference."
}

// hoursLeft rounds hours to tens, since nobody knows them better.
func hoursLeft(hours float64) int64 { return 10 * int64(float64(hours/10)+0.5) }

func ends(p *rates.Promise) bool { return p.How == rates.HeldMonths || p.How == rates.HeldUntil }

// held names what a promise holds.
func (t *Text) held(p *rates.Promise) string {
	switch {
	case !p.Holds(rates.OnMaterials):
		return "hourly rates"
	case !p.Holds(rates.OnLabour):
		return "prices of materials"
	}
	return "hourly rates and prices of materials"
}

// ours names the same as the shop's.
func (t *Text) ours(p *rates.Promise) string {
	return strings.Replace(strings.Replace(t.held(p), "hourly", "our hourly", 1), "prices", "our prices", 1)
}

// notHeld names what no promise holds.
func (t *Text) notHeld(p *rates.Promise) string {
	switch {
	case !p.Holds(rates.OnMaterials):
		return "materials, parts and work sent out"
	case !p.Holds(rates.OnLabour):
		return t.say("labor, parts and work sent out", "labour, parts and work sent out")
	}
	return "parts and work sent out"
}

func ratesOrPrices(p *rates.Promise) string {
	if p.Holds(rates.OnMaterials) {
		return "prices"
	}
	return "rates"
}

// howLong follows "held".
func (t *Text) howLong(p *rates.Promise) string {
	switch p.How {
	case rates.HeldUntil:
		return "until " + t.Date(p.Until)
	case rates.HeldThroughout:
		return "for the whole job"
	}
	return "for " + counted(p.Months, "month", "months") + " from " + t.begins(p)
}

// begins names the day from which months count.
func (t *Text) begins(p *rates.Promise) string {
	if p.From == rates.FromBegun {
		return "the start of the strip"
	}
	return t.say("the day the strip is authorized", "the day the strip is agreed")
}

// monthOf is the month of a date, 1 to 12.
func monthOf(iso string) int {
	n, err := strconv.Atoi(iso[5:7])
	if err != nil {
		panic("engine: internal error: date " + iso)
	}
	return n
}
