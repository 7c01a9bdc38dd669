package wording

import (
	"strconv"
	"strings"

	"underpaint/engine/money"
	"underpaint/engine/pricing"
	"underpaint/engine/rates"
)

// StripLine is one step of the strip and survey: how the shop charges it, and its
// amount, which is empty where the price of the whole stage includes it.
type StripLine struct{ Text, Basis, Amount string }

// StripLines returns the steps of the strip and survey as the customer reads them.
func (t *Text) StripLines(st *pricing.Stage) (out []StripLine) {
	for _, l := range st.Lines {
		line := StripLine{t.In(l.Name), "fixed", t.ToTheUnit(l.Likely)}
		switch l.How {
		case rates.EachOne:
			line.Basis = Grouped(int64(l.Each)) + " at a price each"
		case rates.ByTheHour:
			line.Basis = "by the hour"
			if l.Ceiling > 0 {
				line.Basis += ", no more than " + t.ToTheUnit(l.Ceiling)
			}
		case rates.AtCost:
			line.Basis = "at cost"
		}
		if t.rates.Strip.PriceSet && (l.How == rates.EachOne || line.Basis == "fixed") {
			line.Amount = "" // the shop has one price for the stage
		}
		out = append(out, line)
	}
	if !t.rates.Strip.PriceSet && st.Materials > 0 {
		out = append(out, StripLine{"Materials for this stage" + t.paints(st.Paints), "fixed", t.ToTheUnit(st.Materials)})
	}
	return out
}

// paints says how much paint is in the materials, because base and activator come in tins
// of their own.
func (t *Text) paints(list []pricing.Paint) (out string) {
	for k, p := range list {
		activator := "half"
		if p.Base != 0.5 {
			activator = strconv.Itoa(int(float64((1-p.Base)*100)+0.5)) + "%"
		}
		out += []string{", with", " and"}[min(k, 1)] + " about " + counted(int(p.Litres+0.5), t.say("liter", "litre"), t.say("liters", "litres")) +
			" of " + lowerFirst(t.In(p.Name)) + ", " + activator + " of it activator"
	}
	return out
}

// StripFixed says how much of the strip and survey is fixed, and how the rest is charged.
func (t *Text) StripFixed(st *pricing.Stage) string {
	by := map[string][]string{}
	var ceiling money.Minor
	for _, l := range st.Lines {
		by[l.How] = append(by[l.How], lowerFirst(t.In(l.Name)))
		if l.How == rates.ByTheHour {
			ceiling += l.Ceiling
		}
	}
	line := t.ToTheUnit(st.Fixed) + " of it is fixed."
	if each := by[rates.EachOne]; len(each) > 0 {
		line += " That includes, at a price each: " + strings.Join(each, "; ") + "."
	}
	if hourly := by[rates.ByTheHour]; len(hourly) > 0 {
		line += " By the hour: " + strings.Join(hourly, "; ")
		if ceiling > 0 {
			line += " (those with a ceiling cost no more than " + t.ToTheUnit(ceiling) + " together)"
		}
		line += "."
	}
	if cost := by[rates.AtCost]; len(cost) > 0 || st.SentOut {
		if st.SentOut {
			cost = append(cost, "work sent out")
		}
		line += " At cost: " + strings.Join(cost, "; ") + "."
	}
	return line
}

// StripGet says what the customer gets for it.
const StripGet = "You get the shell in primer and every part's condition in writing."

// StripStop says what it costs to stop after it.
func (t *Text) StripStop(st *pricing.Stage) string {
	return "If you stop there, you pay another " + t.ToTheUnit(st.ToStop) + " to put the car back on its wheels or box it up."
}
