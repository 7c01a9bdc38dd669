package rates

import (
	"strconv"
	"sync"

	"underpaint/engine/car"
	"underpaint/engine/money"
	"underpaint/engine/strict"
)

// sections read the parts of the file, each up to its first fault.
var sections = []func(r *Rates, f strict.Field){
	func(r *Rates, f strict.Field) {
		f.Get("format").Format(Format)
		f.Keys(fileKeys...)
		note(f)
		source(f)
	},
	func(r *Rates, f strict.Field) { r.Shop = readShop(f.Get("shop")) },
	func(r *Rates, f strict.Field) { r.readDates(f) },
	func(r *Rates, f strict.Field) {
		r.Words = f.Get("words").OneOf("us", "uk")
		r.Units = f.Get("units").OneOf("us", "metric")
		r.Country = readCountry(f.Get("country"))
	},
	func(r *Rates, f strict.Field) { r.Labour = readLabour(f.Get("labour"), r.Currency) },
	func(r *Rates, f strict.Field) { r.Materials = readMaterials(f.Get("materials"), r.Currency) },
	func(r *Rates, f strict.Field) { r.Consumables = readConsumables(f.Get("consumables")) },
	func(r *Rates, f strict.Field) { r.Parts = readParts(f.Get("parts")) },
	func(r *Rates, f strict.Field) { r.WhatIsDone = readWhatIsDone(f.Get("what_is_done")) },
	func(r *Rates, f strict.Field) { r.Strip = readStrip(f.Get("strip_and_survey"), r.Currency) },
	func(r *Rates, f strict.Field) { r.SentOut = readSentOut(f.Get("sent_out")) },
	func(r *Rates, f strict.Field) { r.Supplies = readSupplies(f.Get("supplies"), r.Currency) },
	func(r *Rates, f strict.Field) { r.Tax = readTax(f.Get("tax")) },
	func(r *Rates, f strict.Field) { r.Time = readTime(f.Get("time")) },
	func(r *Rates, f strict.Field) { r.Allowance = readAllowance(f.Get("allowance")) },
	func(r *Rates, f strict.Field) { r.OldDamage = readOldDamage(f) },
	func(r *Rates, f strict.Field) {
		if r.Doubt = StartingDoubt(); f.Has("doubt") {
			r.Doubt = readDoubt(f.Get("doubt"))
		}
	},
	func(r *Rates, f strict.Field) {
		if f.Has("prices_over_time") {
			r.OverTime = readOverTime(f.Get("prices_over_time"), f.Get("rates_of"))
		}
		if f.Has("another_body") {
			r.AnotherBody = readAnotherBody(f.Get("another_body"))
		}
	},
	func(r *Rates, f strict.Field) { r.Terms = readTerms(f.Get("terms")) },
	func(r *Rates, f strict.Field) { r.Own = readOwn(f.Get("own_figures")) },
	func(r *Rates, f strict.Field) {
		if f.Has("record") {
			r.Past = readPast(f.Get("record"))
		}
	},
}

// Check reads a rates file as [Decode] does, but returns the first fault of every
// section, so that a form can show several at once. A text that is not JSON, or another
// kind of file, has one fault.
func Check(data []byte) (*Rates, []error) {
	r, err := Decode(data)
	if err == nil {
		return r, nil
	}
	f, parseErr := strict.Parse(data)
	if parseErr != nil {
		return nil, []error{parseErr}
	}
	if f.Get("format").Format(Format); f.Err() != nil {
		return nil, []error{f.Err()}
	}
	var faults []error
	in := f.Apart()
	currency := readCurrency(in.Get("currency"))
	if in.Err() != nil {
		faults = append(faults, in.Err())
		currency = money.Currency{Digits: 2}
	}
	for _, read := range sections {
		own := f.Apart()
		read(&Rates{Currency: currency}, own)
		if own.Err() != nil {
			faults = append(faults, own.Err())
		}
	}
	return nil, faults
}

// StillSample lists the paths of the figures that are exactly those of one of the
// invented samples. For a shop that is itself invented it returns none.
func (r *Rates) StillSample() (paths []string) {
	if r.Shop.Invented {
		return nil
	}
	samples := decodedSamples()
	same := func(path string, equal func(s *Rates) bool) {
		if equal(samples[0]) || equal(samples[1]) {
			paths = append(paths, path)
		}
	}
	for t, id := range car.TradeIDs {
		rate := r.Labour.Trades[t].Rate.Published
		same("labour."+id+".rate", func(s *Rates) bool { return s.Labour.Trades[t].Rate.Published.Equal(rate) })
	}
	for i, m := range r.Materials {
		same("materials["+strconv.Itoa(i)+"].price", func(s *Rates) bool { return s.hasMaterial(m) })
	}
	for i, p := range r.Parts.Prices {
		same("parts.prices["+strconv.Itoa(i)+"].price", func(s *Rates) bool { return s.hasPart(p) })
	}
	same("strip_and_survey.to_stop", func(s *Rates) bool { return s.Strip.ToStop == r.Strip.ToStop })
	for i, w := range r.SentOut.Work {
		same("sent_out.work["+strconv.Itoa(i)+"].price", func(s *Rates) bool { return s.hasSent(w) })
	}
	return paths
}

// decodedSamples reads both samples once, because every range of a real shop asks
// whether its figures are still theirs.
var decodedSamples = sync.OnceValue(func() (samples [2]*Rates) {
	for k, text := range [][]byte{sampleUS, sampleUK} {
		s, err := Decode(text)
		if err != nil {
			panic("engine: internal error: sample rates: " + err.Error())
		}
		samples[k] = s
	}
	return samples
})

func (r *Rates) hasMaterial(m Material) bool {
	for _, own := range r.Materials {
		if own.ID == m.ID && own.Price.Published.Equal(m.Price.Published) {
			return true
		}
	}
	return false
}

func (r *Rates) hasPart(p PartPrice) bool {
	own, found := r.Parts.Find(p.Body, p.Part, p.Way)
	return found && p.Priced && own.Priced && same(own.Published, p.Published)
}

func (r *Rates) hasSent(w Sent) bool {
	for _, own := range r.SentOut.Work {
		if own.ID == w.ID && same(own.Published, w.Published) {
			return true
		}
	}
	return false
}
