package rates

import (
	"slices"
	"strconv"
	"strings"

	"underpaint/engine/car"
	"underpaint/engine/money"
)

// Warning is about something that the file may say but that is usually a slip: a
// sentence for the shop, and the path of the member.
type Warning struct{ Path, Text string }

// Warnings lists what is usually a slip, in the order of the file. today is YYYY-MM-DD,
// or "" to say nothing about the present day; the engine reads no clock.
func (r *Rates) Warnings(today string) []Warning {
	var w warnings
	w.dates(r, today)
	w.labour(r)
	w.materials(r)
	w.parts(r)
	w.whatIsDone(r)
	w.stage(r)
	w.supplies(r)
	w.tax(r)
	w.wide("time.hours_a_week", "Hours a week", r.Time.HoursAWeek)
	w.wide("time.waits_weeks", "Weeks of waiting", r.Time.WaitsWeeks)
	w.allowance(r)
	w.sample(r)
	return w
}

type warnings []Warning

func (w *warnings) add(path, sentence string) { *w = append(*w, Warning{path, sentence}) }

// sample: the shop would publish the rates of a shop that does not exist as its own.
func (w *warnings) sample(r *Rates) {
	still := r.StillSample()
	if n := len(still); n == 1 {
		w.add(still[0], "One figure is still exactly that of the invented sample.")
	} else if n > 1 {
		w.add("", strconv.Itoa(n)+" figures are still exactly those of the invented sample.")
	}
}

// dates: customers would compare rates that are years old with today's prices.
func (w *warnings) dates(r *Rates, today string) {
	from, until := r.RatesOf, r.ValidUntil
	if today > until { // ISO 8601 dates sort as text
		w.add("valid_until", "The rates ran out on "+until+". Customers are told so beside every range.")
	}
	if today != "" && from > today {
		w.add("rates_of", "The rates are dated "+from+", which is in the future.")
	}
	years := atoi(until[:4]) - atoi(from[:4])
	if years > 2 || years == 2 && until[4:] > from[4:] {
		w.add("valid_until", "The rates are valid for more than two years, from "+from+" to "+until+".")
	}
	if from == until {
		w.add("valid_until", "The rates run out on the day they begin, "+from+".")
	}
}

// atoi reads the year of a date that Decode has checked.
func atoi(year string) int {
	n, err := strconv.Atoi(year)
	if err != nil {
		panic("engine: internal error: year " + year)
	}
	return n
}

func (w *warnings) labour(r *Rates) {
	const long = 1_000_000_000 // a million hours, so that no digit of a rate is lost to rounding
	lowest, highest := -1, -1
	for t := range r.Labour.Trades {
		rate := r.Labour.Trades[t].Rate.Published
		if rate.IsZero() {
			w.add("labour."+car.TradeIDs[t]+".rate", "An hour of "+tradeName(t)+" has a price of 0.")
			continue
		}
		if lowest < 0 || rate.Less(r.Labour.Trades[lowest].Rate.Published) {
			lowest = t
		}
		if highest < 0 || r.Labour.Trades[highest].Rate.Published.Less(rate) {
			highest = t
		}
	}
	if lowest >= 0 && r.Labour.Trades[highest].Rate.Of(long) > 4*r.Labour.Trades[lowest].Rate.Of(long) {
		w.add("labour."+car.TradeIDs[highest]+".rate", "An hour of "+tradeName(highest)+" costs more than four times an hour of "+tradeName(lowest)+".")
	}
	w.wide("consumables.money_per_metal_hour", "Consumables for an hour of metalwork", r.Consumables.PerMetalHour)
}

var tradeNames = [car.Trades]string{"metalwork", "strip and prep", "body and block", "paint", "fitting and assembly"}

func tradeName(t int) string { return tradeNames[t] }

func labourWord(r *Rates) string { return car.Words{US: "labor", UK: "labour"}.In(r.Words) }

func (w *warnings) materials(r *Rates) {
	stages := map[string]bool{}
	for i, m := range r.Materials {
		stages[m.Stage] = true
		if m.Price.Published.IsZero() {
			w.add("materials["+strconv.Itoa(i)+"].price", "The material "+m.Name.In(r.Words)+" has a price of 0.")
		}
	}
	if !stages[StripStage] {
		w.add("materials", "No material is charged in the strip stage: not even primer and blasting media.")
	}
	if !stages[AfterStage] {
		w.add("materials", "No material is charged after the survey: not even paint.")
	}
}

func (w *warnings) parts(r *Rates) {
	for i, p := range r.Parts.Prices {
		w.wide("parts.prices["+strconv.Itoa(i)+"].price", "The price of "+p.Part+" ("+car.WayIDs[p.Way]+")", p.Price)
	}
}

// whatIsDone: rust left in a part that carries the load is dangerous.
func (w *warnings) whatIsDone(r *Rates) {
	if r.WhatIsDone == nil {
		return
	}
	for s, standard := range car.Standards {
		for k, kind := range Kinds {
			for c, condition := range car.ConditionIDs {
				row := r.WhatIsDone.Chance[s][k][c]
				if strings.HasPrefix(kind, "structural") && c >= 3 && row[car.Leave]+row[car.Treat] > 0 {
					w.add("what_is_done."+standard+"."+kind+"."+condition, "What is done ("+standard+", "+kind+", "+condition+
						"): a part that carries the load is left or only treated although it has holes.")
				}
			}
		}
	}
}

func (w *warnings) stage(r *Rates) {
	open := false
	for _, c := range r.Strip.Charged {
		open = open || c.How == ByTheHour && !c.Capped
	}
	if open {
		w.add("strip_and_survey.charged", "A step of the strip and survey is charged by the hour without a ceiling: the customer cannot know what the stage costs.")
	}
	if r.Strip.ToStop == 0 {
		w.add("strip_and_survey.to_stop", "Stopping after the survey has a price of 0: is putting the car back or boxing it up free?")
	}
	if r.Strip.PriceSet && r.Strip.Price == 0 {
		w.add("strip_and_survey.price", "The price of the strip and survey is set to 0.")
	}
	for i, s := range r.SentOut.Work {
		w.wide("sent_out.work["+strconv.Itoa(i)+"].price", "Work sent out, "+s.Name.In(r.Words), s.Price)
	}
}

func (w *warnings) supplies(r *Rates) {
	inRate := r.Labour.IncludesIn("supplies")
	switch {
	case r.Supplies.ShareOfLabour && inRate:
		w.add("supplies.how", "Supplies are charged twice: the hourly rate includes them and they are also a share of "+labourWord(r)+".")
	case !r.Supplies.ShareOfLabour && !inRate:
		w.add("labour.includes", "Supplies are said to be in the rate, but the list of what the rate includes does not name them.")
	}
	if r.Supplies.ShareOfLabour && r.Supplies.Percent.Published.IsZero() {
		w.add("supplies.percent", "Supplies are a share of "+labourWord(r)+" of 0 %.")
	}
	if r.Supplies.Capped && r.Supplies.NoMoreThan == money.Minor(0) {
		w.add("supplies.no_more_than", "The cap on supplies is 0.")
	}
}

func (w *warnings) tax(r *Rates) {
	kinds := r.Tax.On.Kinds()
	taxed := slices.Contains(kinds[:], Yes)
	zero := r.Tax.Percent.Published.IsZero()
	switch {
	case r.Tax.NotSure():
		w.add("tax.on", "Tax is not worked out, because it is not settled for every kind of line. Ask your adviser.")
	case taxed && zero:
		w.add("tax.percent", "Some lines are taxed, but at 0 %.")
	case !taxed && !zero:
		w.add("tax.on", "A tax is named, but no kind of line is taxed.")
	}
	if r.Tax.Published == WithTax && (!taxed || zero) {
		w.add("tax.published", "Tax both ways: the published figures are said to have tax in them, but no line is taxed.")
	} else if r.Tax.Published == WithTax && slices.Contains(kinds[:], No) {
		w.add("tax.published", "Tax both ways: the published figures are said to have tax in them, but some kinds of line are not taxed.")
	}
	// CAP Code 3.18 and Directive 2005/29/EC art. 7(4)(c): prices for consumers include
	// tax. The list has only the countries for which the sources say so.
	if r.Tax.Published == WithoutTax && taxed && slices.Contains([]string{"GB", "IE", "DE", "AT"}, r.Country) {
		w.add("tax.published", "Prices shown to consumers in this country usually have to include tax, and these do not.")
	}
}

func (w *warnings) allowance(r *Rates) {
	if r.Allowance.Before.Published.Less(r.Allowance.After.Published) {
		w.add("allowance.after_percent", "The allowance for the unknown grows after the survey; it should shrink.")
	}
	if must("20").Less(r.Allowance.Before.Published) {
		w.add("allowance.before_percent", "The allowance for the unknown is more than 20 %: the range already includes what is usually found.")
	}
}

// wide warns when the high figure is far out compared with the low one. The formula
// then makes up the tail between the three figures, not the shop.
func (w *warnings) wide(path, what string, t [3]float64) {
	if t[0] > 0 && t[2]*t[0] > 2.5*t[1]*t[1] {
		w.add(path, what+": high is far above likely compared with low ("+plain(t[0])+", "+plain(t[1])+", "+
			plain(t[2])+"). One job in ten should come out above the high figure, not one in a hundred.")
	}
}
