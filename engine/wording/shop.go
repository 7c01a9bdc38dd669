package wording

import (
	"strings"

	"underpaint/engine/rates"
	"underpaint/engine/session"
)

// RatesLine names the rates by their dates.
func RatesLine(r *rates.Rates) string {
	return "Rates of " + dateIn(r.Words, r.RatesOf) + ", valid until " + dateIn(r.Words, r.ValidUntil)
}

// RatesPast says that the rates have run out.
func (t *Text) RatesPast() string {
	return "These rates ran out on " + t.Date(t.rates.ValidUntil) + ". " + t.say("Ask the shop for its current rates.", "Ask the workshop for its current rates.")
}

// YearExpected says which years of manufacture we accept.
const YearExpected = "a year from 1920 to 1999"

// AnHour writes the published rate of a trade.
func (t *Text) AnHour(trade int) string {
	m, _ := t.currency.Round(t.rates.Labour.Trades[trade].Rate.Published)
	return t.Amount(m) + " an hour"
}

// LabourIncludes says what the hourly rate includes.
func (t *Text) LabourIncludes() string {
	names := map[string]string{"supplies": t.say("shop supplies", "consumables"), "booth": "the paint booth", "parts_chasing": "finding parts"}
	var in []string
	for _, id := range t.rates.Labour.Includes {
		in = append(in, names[id])
	}
	if len(in) == 0 {
		return "The hourly rate includes nothing else."
	}
	return "The hourly rate includes " + strings.Join(in, ", ") + "."
}

// RatesWarnings returns the warnings of the rates that do not depend on the day, because
// the page itself says when rates have run out.
func (t *Text) RatesWarnings() (out []string) {
	for _, w := range t.rates.Warnings("") {
		out = append(out, w.Text)
	}
	return out
}

// NotInIt lists what no range includes. A shop that reckons with old damage leaves out
// only what nobody thought of.
func (t *Text) NotInIt() []string {
	list := t.all(t.lists.notInIt)
	if t.rates.Reckoned() != nil {
		list[len(list)-1] = "Damage that nobody has thought of"
	}
	return list
}

// StripBelow warns of a strip and survey priced below its own hours.
func (t *Text) StripBelow(b *session.StripBelow) string {
	return "The strip and survey is priced at " + t.ToTheUnit(b.Price) +
		", but on a two-door its fixed work is likely to take hours worth " + t.ToTheUnit(b.Labour) + " at your rates, before materials."
}

// Broken tells the user that the program failed.
const Broken = "Something went wrong on our side. Nothing you entered is lost."
