package rates

import (
	"underpaint/engine/car"
	"underpaint/engine/money"
	"underpaint/engine/strict"
)

// includable are the things that an hourly rate may include.
var includable = []string{"supplies", "booth", "parts_chasing"}

func readLabour(f strict.Field, c money.Currency) Labour {
	f.Keys(labourKeys...)
	l := Labour{LeastHours: f.Get("least_charge_hours").Number(0, 40), Source: source(f)}
	for t, id := range car.TradeIDs {
		one := f.Get(id)
		one.Keys(tradeKeys...)
		l.Trades[t] = Trade{
			Rate: price(one.Get("rate"), c),
			Pace: one.Get("pace").Number(0.3, 3),
			Note: note(one), Source: source(one),
		}
	}
	for i, marked := range chosen(f.Get("includes"), includable, 0) {
		if marked {
			l.Includes = append(l.Includes, includable[i])
		}
	}
	return l
}

func readConsumables(f strict.Field) Consumables {
	f.Keys(consumablesKeys...)
	c := Consumables{Source: source(f)}
	if figures := f.Get("money_per_metal_hour"); !figures.IsNull() {
		c.Charged = true
		c.PerMetalHour = nearest(threePrices(figures, highestPrice))
	}
	return c
}

func readSupplies(f strict.Field, c money.Currency) Supplies {
	f.Keys(suppliesKeys...)
	s := Supplies{Source: source(f)}
	if f.Get("how").OneOf("in_the_rate", "share_of_labour") == "in_the_rate" {
		for _, name := range []string{"percent", "no_more_than"} {
			if f.Has(name) {
				f.Get(name).Complain("no such entry where supplies are in the rate")
			}
		}
		return s
	}
	s.ShareOfLabour = true
	s.Percent = percent(f.Get("percent"))
	if f.Has("no_more_than") {
		s.Capped = true
		s.NoMoreThan = amount(f.Get("no_more_than"), c)
	}
	return s
}

func readTime(f strict.Field) Time {
	f.Keys(timeKeys...)
	t := Time{
		HoursAWeek:      three(f.Get("hours_a_week"), 1, 400),
		WeeksUntilStart: f.Get("weeks_until_start").Number(0, 520),
		Source:          source(f),
	}
	if f.Has("waits_weeks") {
		t.Waits = true
		t.WaitsWeeks = three(f.Get("waits_weeks"), 0.1, 520)
	}
	return t
}

func readAllowance(f strict.Field) Allowance {
	f.Keys(allowanceKeys...)
	return Allowance{
		Before:  percent(f.Get("before_percent")),
		After:   percent(f.Get("after_percent")),
		InRange: !f.Has("in_range") || f.Get("in_range").Bool(),
		Source:  source(f),
	}
}
