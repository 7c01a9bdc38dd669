package wording

import (
	"strings"

	"underpaint/engine/rates"
	"underpaint/engine/session"
)

// RatesLine names the rates by their dates.
func RatesLine(r *rates.Rates) string {
	return "Rates of " + Date(r.RatesOf) + ", valid until " + Date(r.ValidUntil)
}

// RatesPast says that the rates have run out.
func (t *Text) RatesPast() string {
	return "These rates ran out on " + Date(t.rates.ValidUntil) + ". Ask the shop for its present ones."
}

// YearExpected says what a year of making may be.
const YearExpected = "a year from 1920 to 1999"

// AnHour is the published rate of a trade.
func (t *Text) AnHour(trade int) string {
	m, _ := t.currency.Round(t.rates.Labour.Trades[trade].Rate.Published)
	return t.Amount(m) + " an hour"
}

// LabourIncludes says what the rate an hour includes.
func (t *Text) LabourIncludes() string {
	names := map[string]string{"supplies": t.say("shop supplies", "consumables"), "booth": "the paint booth", "parts_chasing": "finding parts"}
	var in []string
	for _, id := range t.rates.Labour.Includes {
		in = append(in, names[id])
	}
	if len(in) == 0 {
		return "The rate an hour includes nothing else."
	}
	return "The rate an hour includes " + strings.Join(in, ", ") + "."
}

// RatesWarnings are those of the rates that do not depend on the day: the page says
// itself when rates have run out.
func (t *Text) RatesWarnings() (out []string) {
	for _, w := range t.rates.Warnings("") {
		out = append(out, w.Text)
	}
	return out
}

// NotInIt lists what no range has in it.
func (t *Text) NotInIt() []string { return t.all(t.lists.notInIt) }

// StripBelow warns of a strip and survey priced below its own hours.
func (t *Text) StripBelow(b *session.StripBelow) string {
	return "The strip and survey is set to " + t.ToTheUnit(b.Price) +
		", but the likely hours of its fixed steps on a two-door come to " + t.ToTheUnit(b.Labour) + " at your rates, before materials."
}

// Broken says that the program stopped on a mistake of its own.
const Broken = "Something went wrong on our side. Nothing you entered is lost."
