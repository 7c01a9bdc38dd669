package wording

import (
	"strings"
	"testing"

	"underpaint/engine/estimate"
	"underpaint/engine/rates"
	"underpaint/engine/session"
)

// TestPromiseInWords says every promise that a shop can make, in both word sets, to the
// customer, in the letter and to the estimator.
func TestPromiseInWords(t *testing.T) {
	labour, both := []string{rates.OnLabour}, []string{rates.OnLabour, rates.OnMaterials}
	r := &session.Range{Exact: estimate.Range{Rise: estimate.Quantiles{Low: 30_000, Half: 70_000, High: 250_000}}}
	const added = "Rising prices add about $700 in the middle, and more than $2,500 in 1 car out of 10. The range includes that."
	for _, c := range []struct {
		promise              rates.Promise
		customer, letter, uk string
	}{
		{rates.Promise{How: rates.HeldMonths, Months: 12, From: rates.FromBegun, On: labour},
			"Hourly rates are held for 12 months from the start of the strip. A longer job pays the rates of its day. Materials, parts and work sent out are charged at the prices of their day.",
			"We hold our hourly rates for 12 months from the start of the strip; after that, and for materials, parts and work sent out, we charge the prices of the day.", ""},
		{rates.Promise{How: rates.HeldMonths, Months: 1, From: rates.FromAuthorized, On: both},
			"Hourly rates and prices of materials are held for 1 month from the day the strip is authorized. A longer job pays the prices of its day. Parts and work sent out are charged at the prices of their day.",
			"We hold our hourly rates and our prices of materials for 1 month from the day the strip is authorized; after that, and for parts and work sent out, we charge the prices of the day.",
			"the day the strip is agreed"},
		{rates.Promise{How: rates.HeldUntil, Until: "2027-06-03", On: []string{rates.OnMaterials}},
			"Prices of materials are held until June 3, 2027. A longer job pays the prices of its day. Labor, parts and work sent out are charged at the prices of their day.",
			"We hold our prices of materials until June 3, 2027; after that, and for labor, parts and work sent out, we charge the prices of the day.", "until 3 June 2027"},
		{rates.Promise{How: rates.HeldThroughout, On: labour},
			"Hourly rates are held for the whole job. Materials, parts and work sent out are charged at the prices of their day.",
			"We hold our hourly rates for the whole job; for materials, parts and work sent out, we charge the prices of the day.", ""},
		{rates.Promise{How: rates.NotHeld},
			"We hold no prices. Everything is charged at the prices of its day.",
			"We do not hold our prices: everything is charged at the prices of its day.", ""},
	} {
		shop := sampleShop(t)
		own := *shop.Rates
		own.OverTime = &rates.OverTime{Promise: c.promise}
		text := textOf(t, &session.Shop{Rates: &own, Common: shop.Common})
		if got := text.Held(); got != c.customer {
			t.Errorf("%s: customer %q", c.promise.How, got)
		}
		if got, none := text.Rise(r), text.Rise(&session.Range{}); got != added || none != "" {
			t.Errorf("%s: %q; where nothing rises %q", c.promise.How, got, none)
		}
		if got := text.Promise(); got != c.letter {
			t.Errorf("%s: letter %q", c.promise.How, got)
		}
		british := own
		british.Words = "uk"
		if got := textOf(t, &session.Shop{Rates: &british, Common: shop.Common}).Held(); !strings.Contains(got, c.uk) || strings.Contains(got, "Labor,") {
			t.Errorf("%s: UK %q", c.promise.How, got)
		}
		own.OverTime = nil
		if text = textOf(t, &session.Shop{Rates: &own, Common: shop.Common}); text.Held()+text.Promise() != "" {
			t.Errorf("nothing is said, yet %q %q", text.Held(), text.Promise())
		}
	}
}

// TestPromiseEnd says when a promise ends and what is left then.
func TestPromiseEnd(t *testing.T) {
	text := textOf(t, sampleShop(t))
	months := &rates.Promise{How: rates.HeldMonths, Months: 12, From: rates.FromBegun, On: []string{rates.OnLabour}}
	until := &rates.Promise{How: rates.HeldUntil, Until: "2027-06-03", On: months.On}
	for want, end := range map[string]*session.PromiseEnd{
		"": nil,
		"Our promise on hourly rates ends 12 months after the start of the strip. In the middle, about 370 hours of work are left then. In 1 car out of 10, it is more than 980.": {
			Promise: months, Still: estimate.Quantiles{Half: 372, High: 978}},
		"Our promise on hourly rates ends in about April 2027. In half of all cars like this one, all the work is done by then. In 1 car out of 10, more than 200 hours are left.": {
			Promise: months, On: "2027-04-20", About: true, Still: estimate.Quantiles{High: 204}},
		"Our promise on hourly rates ends on June 3, 2027. In 9 cars out of 10, all the work is done by then.": {Promise: until, On: until.Until},
	} {
		if got := text.PromiseEnd(end); got != want {
			t.Errorf("%q, expected %q", got, want)
		}
	}
	if HeldLong(0) != "" || !strings.Contains(HeldLong(118.7), "more than 118 weeks") {
		t.Errorf("%q, %q", HeldLong(0), HeldLong(118.7))
	}
}
