package pricing

import (
	"errors"

	"underpaint/engine/chance"
	"underpaint/engine/rates"
)

// flat collects lists under their names until all are passed on.
type flat struct {
	put func(name string, values []float64)
}

// Flat passes to put, list by list, everything that [Table.Price] reads, for a table
// with nothing decided. lastPlaces are the places where the car was last, by history
// level. Distributions of hours and prices are six numbers each ([chance.Flat]); where
// there is none, all six are 0. Lists of several dimensions are written row by row. A
// list of lists becomes two: how many entries each has, and all of them.
func Flat(t *Table, lastPlaces []string, put func(name string, values []float64)) error {
	if t.decided != nil {
		return errors.New("work: expected a table with nothing decided")
	}
	f := flat{put}
	f.items(t)
	f.rules(t)
	f.access(t, lastPlaces)
	f.strip(t)
	f.money(t)
	return nil
}

func (f flat) items(t *Table) {
	var chances, instead, once, leftOut, count, trade, hours, price, metal []float64
	for i := range t.items {
		line := &t.items[i]
		for k := range line.chance {
			chances = append(chances, line.chance[k][:]...)
		}
		for w := range line.ways {
			one := &line.ways[w]
			instead, count = append(instead, float64(line.instead[w])), append(count, float64(one.n))
			for k := range one.n {
				trade, hours = append(trade, float64(one.trade[k])), append(hours, six(&one.hours[k])...)
			}
			price, metal = append(price, six(one.price)...), append(metal, one.likelyMetal)
		}
		once, leftOut = append(once, truth(line.once)), append(leftOut, truth(line.leftOut))
	}
	f.put("way_chance", chances)
	f.put("way_instead", instead)
	f.put("way_lines", count)
	f.put("way_line_trade", trade)
	f.put("way_line_hours", hours)
	f.put("way_price", price)
	f.put("way_likely_metal", metal)
	f.put("item_once", once)
	f.put("item_left_out", leftOut)
	var finding []float64
	for _, tp := range append(t.finding[:], t.failedLead) {
		finding = append(finding, six(tp)...)
	}
	f.put("finding_hours", finding)
}

// rules are the openings, what full panels cover, the seams, and the braces that
// are drilled from above.
func (f flat) rules(t *Table) {
	var when, unless, raised [][]int
	var least, unlessLeast, to, seams, above, aboveHours []float64
	for k := range t.openings {
		r := &t.openings[k]
		var items []int
		for _, x := range r.raise {
			items, to = append(items, x.item), append(to, float64(x.to))
		}
		when, unless, raised = append(when, r.ifItems), append(unless, r.unless), append(raised, items)
		least, unlessLeast = append(least, float64(r.atLeast)), append(unlessLeast, float64(r.unlessAtLeast))
	}
	f.lists("opening_if", when)
	f.put("opening_at_least", least)
	f.lists("opening_unless", unless)
	f.put("opening_unless_at_least", unlessLeast)
	f.lists("opening_raise", raised)
	f.put("opening_raise_to", to)
	f.lists("covers", t.covers)
	f.panels(t)
	for _, s := range t.seams {
		seams = append(seams, float64(s.first), float64(s.second))
	}
	f.put("seams", seams)
	for _, a := range t.above {
		rule := &t.fig.above[a.above]
		above = append(above, float64(a.brace), float64(a.floor), float64(rule.atLeast), float64(rule.atMost))
		aboveHours = append(aboveHours, six(t.money.above[a.above])...)
	}
	f.put("above", above)
	f.put("above_hours", aboveHours)
}

// panels lists the items whose full panel may be fitted whole, in order.
func (f flat) panels(t *Table) {
	var items []float64
	for _, p := range t.panels {
		items = append(items, float64(p.item))
	}
	f.put("panels", items)
	f.put("panel_times", []float64{t.fig.wholePanel})
	f.put("panel_money", append(t.money.perHour[:], t.money.handled)) // an hour of each trade, and a part with its handling
}

func (f flat) access(t *Table, lastPlaces []string) {
	var items, unless, covers [][]int
	var rule, hours, price, nutTrade, nutHours, nutChance []float64
	for k := range t.accesses {
		a := &t.accesses[k]
		items, unless, covers = append(items, a.items), append(unless, a.unless), append(covers, a.covers)
		rule = append(rule, float64(a.way), truth(a.exact), float64(a.unlessAtLeast), float64(a.line.trade), truth(a.line.id == "body_off"))
		hours, price = append(hours, six(a.line.hours)...), append(price, six(a.price)...)
	}
	f.lists("access_items", items)
	f.lists("access_unless", unless)
	f.lists("access_covers", covers)
	f.put("access_rule", rule) // way, exactly it, unless at least, trade, lifts the body
	f.put("access_hours", hours)
	f.put("access_price", price)
	for k := range t.nuts {
		nutTrade, nutHours = append(nutTrade, float64(t.nuts[k].line.trade)), append(nutHours, six(t.nuts[k].line.hours)...)
	}
	for _, place := range lastPlaces {
		nutChance = append(nutChance, t.money.nutChance[place])
	}
	f.put("nut_trade", nutTrade)
	f.put("nut_hours", nutHours)
	f.put("nut_chance", nutChance) // by history level
	f.put("lifted_in_strip", []float64{truth(t.doneInStrip("body_lift"))})
}

func (f flat) strip(t *Table) {
	var rule, hours, trade, after []float64
	for k := range t.strip {
		l := &t.strip[k]
		ceiling := -1.0 // none
		if l.ceiling > 0 {
			ceiling = float64(thousandths(l.ceiling))
		}
		rule = append(rule, float64(l.trade), ceiling, truth(l.byCustomer), truth(l.chargedAsWorked()))
		hours = append(hours, six(l.hours)...)
	}
	f.put("strip_rule", rule) // trade, ceiling in thousandths, left to the customer, charged as worked
	f.put("strip_hours", hours)
	for k := range t.after {
		trade, after = append(trade, float64(t.after[k].trade)), append(after, six(t.after[k].hours)...)
	}
	f.put("after_trade", trade)
	f.put("after_hours", after)
}

func (f flat) money(t *Table) {
	r, m := t.Rates, &t.money
	var rate, sent, sentIn, taxed []float64
	divisor := uint64(1)
	for trade := range r.Labour.Trades {
		n, d := r.Labour.Trades[trade].Rate.Rate.Ratio()
		rate, divisor = append(rate, float64(n)), max(divisor, d) // a rate of 0 has no divisor
	}
	for k, tp := range m.sent {
		sent, sentIn = append(sent, six(tp)...), append(sentIn, truth(r.SentOut.Work[k].Stage == rates.StripStage))
	}
	for _, v := range m.taxed {
		taxed = append(taxed, truth(v))
	}
	percent := float64(r.Tax.Percent.Percent.Millionths())
	if r.Tax.Published == rates.WithTax || r.Tax.NotSure() {
		percent = 0
	}
	supplies := []float64{truth(r.Supplies.ShareOfLabour), float64(r.Supplies.Percent.Percent.Millionths()), truth(r.Supplies.Capped), float64(r.Supplies.NoMoreThan)}
	f.put("rate", append(rate, float64(divisor)))
	f.put("sent_price", sent)
	f.put("sent_in_strip", sentIn)
	f.put("handling", []float64{float64(r.Parts.Handling.Percent.Millionths()), float64(r.SentOut.Handling.Percent.Millionths())})
	f.put("supplies", supplies) // a share of labour, per cent, capped, no more than
	f.put("tax", append([]float64{percent}, taxed...))
	f.put("fixed", []float64{float64(m.stripLabour), float64(m.stripMaterials), float64(m.materials), float64(thousandths(r.Labour.LeastHours)), t.minorPerMajor()})
	f.surfaces(t)
	f.put("wire_week_wait", append(append(six(m.wire), six(m.week)...), six(m.wait)...))
	f.put("whole_car", []float64{t.fig.sdMetal, t.fig.sdOther, t.fig.rho, m.rhoRest, t.fig.seam, q90, float64(t.fig.perCar())})
}

// surfaces are what primer takes: on everything reached but the parts replaced, and later
// on these.
func (f flat) surfaces(t *Table) {
	f.put("item_faces", t.surfaces.byItem)
	f.put("faces", []float64{t.surfaces.reached})
	for name, list := range map[string][]coat{"primers": t.surfaces.primers, "new_parts": t.surfaces.newParts} {
		var out []float64
		for _, c := range list {
			n, d := c.price.Rate.Ratio()
			out = append(out, c.perM2, float64(n), float64(max(d, 1)))
		}
		f.put(name, out) // thousandths of a unit per m², price, divisor
	}
}

func (f flat) lists(name string, of [][]int) {
	var count, all []float64
	for _, items := range of {
		count = append(count, float64(len(items)))
		for _, i := range items {
			all = append(all, float64(i))
		}
	}
	f.put(name+"_count", count)
	f.put(name, all)
}

func six(tp *chance.ThreePoint) []float64 {
	if tp == nil {
		return make([]float64, 6)
	}
	x := chance.Flat(*tp)
	return x[:]
}

func truth(b bool) float64 {
	if b {
		return 1
	}
	return 0
}
