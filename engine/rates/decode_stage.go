package rates

import (
	"slices"
	"strings"

	"underpaint/engine/car"
	"underpaint/engine/money"
	"underpaint/engine/strict"
)

func readStrip(f strict.Field, c money.Currency) Strip {
	f.Keys(stripKeys...)
	s := Strip{
		Charged:  readCharged(f.Get("charged")),
		ToStop:   amount(f.Get("to_stop"), c),
		Includes: text(f.Get("includes"), 2000),
		Note:     note(f), Source: source(f),
	}
	if set := f.Get("price"); !set.IsNull() {
		s.PriceSet = true
		s.Price = amount(set, c)
	}
	return s
}

// readCharged reads the steps, each of which must appear once in any order, and returns
// them in working order.
func readCharged(f strict.Field) []Charge {
	charged := make([]Charge, len(StepIDs))
	for _, item := range f.Items() {
		one := readCharge(item)
		i := slices.Index(StepIDs, one.Step)
		if i < 0 {
			return nil
		}
		if charged[i].Step != "" {
			item.Get("step").Complain("each step only once")
		}
		charged[i] = one
	}
	var missing []string
	for i, one := range charged {
		if one.Step == "" {
			missing = append(missing, StepIDs[i])
		}
	}
	if len(missing) > 0 {
		f.Complain("every step; missing: " + strings.Join(missing, ", "))
	}
	return charged
}

func readCharge(f strict.Field) Charge {
	f.Keys(chargeKeys...)
	one := Charge{
		Step: f.Get("step").OneOf(StepIDs...),
		How:  f.Get("how").OneOf(Fixed, EachOne, ByTheHour, AtCost),
		Note: note(f), Source: source(f),
	}
	if f.Has("no_more_than") {
		one.Capped = true
		one.NoMoreThan = f.Get("no_more_than").Number(0.1, 1000)
		if one.How != ByTheHour {
			f.Get("no_more_than").Complain("no ceiling except on a step charged by the hour")
		}
	}
	return one
}

func readSentOut(f strict.Field) SentOut {
	f.Keys(sentOutKeys...)
	s := SentOut{Handling: percent(f.Get("handling_percent")), Source: source(f)}
	seen := map[string]bool{}
	for _, item := range f.Get("work").Items() {
		one := readSent(item)
		unique(item, one.ID, seen)
		s.Work = append(s.Work, one)
		if f.Err() != nil {
			return s
		}
	}
	return s
}

func readSent(f strict.Field) Sent {
	f.Keys(sentKeys...)
	s := Sent{
		ID:    word(f.Get("id")),
		Name:  words(f.Get("name")),
		Stage: f.Get("stage").OneOf(StripStage, AfterStage),
		Note:  note(f), Source: source(f),
	}
	s.Published = threePrices(f.Get("price"), highestAmount)
	s.Price = nearest(s.Published)
	standards := f.Get("standards")
	copy(s.Standards[:], chosen(standards, car.Standards, 1))
	copy(s.Scopes[:], chosen(f.Get("scopes"), ScopeIDs, 1))
	if s.Stage == StripStage && s.Standards != [3]bool{true, true, true} {
		standards.Complain("all three standards: the strip stage is the same for each")
	}
	return s
}

func readTax(f strict.Field) Tax {
	f.Keys(taxKeys...)
	t := Tax{
		Name:      words(f.Get("name")),
		Percent:   percent(f.Get("percent")),
		Published: f.Get("published").OneOf(WithoutTax, WithTax),
		Note:      f.Get("note").Text(longestSource),
		Source:    source(f),
	}
	on := f.Get("on")
	on.Keys(taxOnKeys...)
	for i, to := range []*string{&t.On.Labour, &t.On.Materials, &t.On.Parts, &t.On.Supplies, &t.On.SentOut} {
		*to = on.Get(taxOnKeys[i]).OneOf(Yes, No, NotSure)
	}
	return t
}
