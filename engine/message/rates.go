package message

import (
	"errors"

	"underpaint/engine/car"
	"underpaint/engine/columns"
	"underpaint/engine/money"
	"underpaint/engine/rates"
	"underpaint/engine/session"
	"underpaint/engine/strict"
	"underpaint/engine/wording"
)

func checkRates(_ *Engine, f strict.Field) (Reply, error) {
	f.Keys("id", "ask", "rates", "today")
	text, today := []byte(f.Get("rates").Document(strict.MaxBytes)), f.Get("today").Date()
	if f.Err() != nil {
		return nil, f.Err()
	}
	v := session.CheckRates(text, today)
	out := &RatesCheckedReply{OK: v.Rates != nil, Faults: textFaults(v.Faults)}
	if v.Rates == nil {
		return out, nil
	}
	for _, w := range v.Warnings {
		out.Warnings = append(out.Warnings, CarNote{w.Path, w.Text})
	}
	if v.StripBelow != nil {
		o, err := openAt(v.Rates)
		if err != nil {
			return nil, refuse("rates", err)
		}
		out.Warnings = append(out.Warnings, CarNote{"strip_and_survey.price", o.text.StripBelow(v.StripBelow)})
	}
	out.StillSample, out.CheckCode, out.RatesLine, out.Canonical = v.Rates.StillSample(), v.Rates.CheckCode(), wording.RatesLine(v.Rates), v.Canonical
	return out, nil
}

// openAt opens a session at rates that are already decoded.
func openAt(r *rates.Rates) (*openShop, error) {
	s, err := session.Of(r)
	if err != nil {
		return nil, err
	}
	return open(s)
}

// textFaults turns errors into faults with their path in the user's file.
func textFaults(faults []error) (out []TextFault) {
	for _, err := range faults {
		var at *strict.Error
		if !errors.As(err, &at) {
			at = &strict.Error{Expected: err.Error()}
		}
		out = append(out, textFault(at))
	}
	return out
}

func ratesOutline(_ *Engine, f strict.Field) (Reply, error) {
	f.Keys("id", "ask")
	o, err := session.NewOutline()
	if err != nil {
		return nil, refuse("outline", err)
	}
	out := &RatesOutlineReply{Currencies: money.Codes(), SampleUS: string(rates.Sample()), SampleUK: string(rates.SampleUK()),
		Bodies: outlineNames(car.BodyIDs, o.Bodies), Ways: outlineNames(car.WayIDs[:], o.Common.Ways[:]), Conditions: outlineNames(car.ConditionIDs[:], o.Common.Conditions[:])}
	for _, p := range o.Parts {
		part := OutlinePart{OutlineName: OutlineName{p.ID, p.Name.US, p.Name.UK}, Bodies: p.Bodies, Ways: p.WayIDs()}
		for k, price := range p.Start {
			if price != (car.Hours{}) {
				part.Start = append(part.Start, entry[[]float64]{car.WayIDs[k], price[:]})
			}
		}
		out.Parts = append(out.Parts, part)
	}
	for _, s := range o.Steps {
		out.Steps = append(out.Steps, OutlineName{s.ID, s.Name.US, s.Name.UK})
	}
	for s, standard := range car.Standards {
		var kinds object[object[[]float64]]
		for k, kind := range rates.Kinds {
			var conditions object[[]float64]
			for c, condition := range car.ConditionIDs {
				conditions = append(conditions, entry[[]float64]{condition, o.Ways[s][k][c][:]})
			}
			kinds = append(kinds, entry[object[[]float64]]{kind, conditions})
		}
		out.WhatIsDone = append(out.WhatIsDone, entry[object[object[[]float64]]]{standard, kinds})
	}
	doubt := rates.StartingDoubt()
	out.Doubt = object[object[float64]]{{"shared", byDoubtStage(doubt.Shared)}, {"own", byDoubtStage(doubt.Own)}}
	return out, nil
}

func byDoubtStage(of map[string]float64) (out object[float64]) {
	for _, stage := range rates.DoubtStages {
		out = append(out, entry[float64]{stage, of[stage]})
	}
	return out
}

func outlineNames(ids []string, words []car.Words) (out []OutlineName) {
	for k, id := range ids {
		out = append(out, OutlineName{id, words[k].US, words[k].UK})
	}
	return out
}

var decimals = map[string]columns.Decimal{"": columns.Unknown, "point": columns.Point, "comma": columns.Comma}

// separatorOf returns the separator with the decimal mark that goes with it. Spreadsheets
// that separate cells by semicolons write decimals with a comma.
func separatorOf(name string) (byte, columns.Decimal) {
	switch name {
	case ";":
		return ';', columns.Comma
	case "tab":
		return '\t', columns.Point
	}
	return ',', columns.Point
}

func readPrices(_ *Engine, f strict.Field) (Reply, error) {
	f.Keys("id", "ask", "text", "decimal", "words", "currency")
	text, decimal := f.Get("text").Document(columns.MaxBytes), decimals[f.Get("decimal").OneOf("", "point", "comma")]
	f.Get("words").OneOf("us", "uk")
	currency := ""
	if f.Has("currency") {
		currency = f.Get("currency").Text(3)
	}
	if f.Err() != nil {
		return nil, f.Err()
	}
	prices, table, err := session.ReadPrices(text, decimal, currency)
	if err != nil {
		return nil, refuse("table", err)
	}
	out := &PricesReadReply{TableFaults: tableFaults(table)}
	for k := range prices {
		out.Prices = append(out.Prices, partPrice(&prices[k]))
	}
	return out, nil
}

func partPrice(p *rates.PartPrice) PartPrice {
	out := PartPrice{Part: p.Part, Way: car.WayIDs[p.Way], Body: p.Body, Note: p.Note, Source: "the shop's own figure"}
	if p.Priced {
		out.Price = &[3]rawJSON{}
		for k, v := range p.Published {
			out.Price[k] = rawJSON(v.String())
		}
	}
	if p.Had != "" {
		out.Had = &p.Had
	}
	return out
}

func tableFaults(t *columns.Table) TableFaults {
	out := TableFaults{Refused: t.Refused, Ignored: t.Ignored}
	for k := range t.Refusals {
		r := &t.Refusals[k]
		out.Refusals = append(out.Refusals, TableRefusal{r.Row, r.Column, r.Heading, r.Found, r.Expected, r.Error()})
	}
	for k := range t.Questions {
		q := &t.Questions[k]
		out.Questions = append(out.Questions, TableQuestion{q.Heading, q.Row, q.Found, q.AsPoint, q.AsComma, wording.TableQuestion(q)})
	}
	return out
}

func writePrices(_ *Engine, f strict.Field) (Reply, error) {
	f.Keys("id", "ask", "rates", "separator")
	text, separator := f.Get("rates").Document(strict.MaxBytes), f.Get("separator").OneOf(",", ";", "tab")
	if f.Err() != nil {
		return nil, f.Err()
	}
	r, err := rates.Decode([]byte(text))
	if err != nil {
		return nil, refuse("rates", err)
	}
	cut, mark := separatorOf(separator)
	table, err := session.WritePrices(r, cut, mark)
	if err != nil {
		return nil, refuse("table", err)
	}
	return &PricesWrittenReply{table}, nil
}
