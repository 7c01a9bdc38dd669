package pricing

import (
	"math"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/rates"
)

// risingTable is the same table at the sample's rising prices, changed by change.
func risingTable(t *testing.T, table *Table, change func(r *rates.Rates)) *Table {
	t.Helper()
	sample, err := rates.Decode(rates.Sample())
	if err != nil {
		t.Fatal(err)
	}
	r := *table.Rates
	o := *sample.OverTime
	r.OverTime = &o
	if change != nil {
		change(&r)
	}
	common, err := car.LoadCommon()
	if err != nil {
		t.Fatal(err)
	}
	out, err := NewTable(table.Body, common, &r, car.Standards[table.Standard], rates.ScopeIDs[table.Scope])
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// day is the price of a day, weeks after the day of the rates, at g % a year: compound
// growth over the mean Gregorian year.
func day(g, weeks float64) float64 { return math.Pow(1+g/100, weeks*7/365.2425) }

// TestRiseByHand prices drawn lists of work a second time at the prices of their day, line
// by line and from the rates file alone: which stage a line belongs to, when that stage is
// in its middle, and by how much each kind of price has risen by then.
func TestRiseByHand(t *testing.T) {
	m, plain := testTable(t, "two_door_unitary", "show")
	table := risingTable(t, plain, nil).Doubting(Doubt{SD: 0.15, Growth: 0.07})
	plain = plain.Doubting(Doubt{SD: 0.15, Growth: 0.07})
	r := table.Rates
	c, u, b, before := m.NewCar(), table.NewUniforms(), table.NewBill(), plain.NewBill()
	grown, free := 0, 0
	for n := range uint64(300) {
		s := chance.NewStream(77, n)
		m.Draw(&s, c)
		u.Fill(&s)
		u.Doubt, u.Rise = s.Uniform(), s.Uniform()
		plain.Price(c, "salt", u, before)
		lines := table.Explain(c, "salt", u, b)

		// 0 strip, 1 structure, 2 outer metal, 3 paint, 4 assembly.
		hours, labour, parts := [5]float64{}, [5][car.Trades]float64{}, [5]float64{}
		for _, h := range b.StripHours {
			hours[0] += float64(h) / 1000
		}
		for _, l := range lines {
			if l.Strip {
				continue
			}
			stage := 4
			switch {
			case l.Trade == car.BodyWork || l.Trade == car.Paint:
				stage = 3
			case l.Item >= 0 && table.Body.PartOf(l.Item).Face == car.Outer && !table.Body.PartOf(l.Item).Structural:
				stage = 2
			case l.Item >= 0 || l.Trade != car.Fit:
				stage = 1
			}
			hours[stage] += float64(l.Thousandths) / 1000
			labour[stage][l.Trade] += float64(l.Thousandths) / 1000
			parts[stage] += float64(l.Price)
		}
		at := func(three [3]float64, u float64) float64 {
			tp, err := chance.NewThreePoint(three[0], three[1], three[2])
			if err != nil {
				t.Fatal(err)
			}
			return tp.Quantile(u)
		}
		week, wait := at(r.Time.HoursAWeek, u.Week), at(r.Time.WaitsWeeks, u.Wait)
		middle, begins := [5]float64{}, r.Time.WeeksUntilStart
		for k, h := range hours {
			if k == 1 || k == 4 {
				begins += wait / 2
			}
			middle[k] = begins + h/week/2
			begins += h / week
		}
		gl, gp, gm := at(r.OverTime.Labour, u.Rise), at(r.OverTime.Parts, u.Rise), at(r.OverTime.Materials, u.Rise)
		held := r.Time.WeeksUntilStart + 365.2425/7 // twelve months from the start of the strip
		money, bought, wire := 0.0, 0.0, 0.0
		perHour := at(r.Consumables.PerMetalHour, u.Wire) * 100
		for k := 1; k < 5; k++ {
			if middle[k] > held {
				for trade, h := range labour[k] {
					money += h * r.Labour.Trades[trade].Rate.Published.Float() * 100 * (day(gl, middle[k]) - 1)
				}
				grown++
			} else {
				free++
			}
			bought += parts[k] * (day(gp, middle[k]) - 1) * (1 + r.Parts.Handling.Published.Float()/100)
			wire += labour[k][car.Metal] * perHour * (day(gm, middle[k]) - 1)
		}
		for _, one := range []struct {
			what      string
			got, want float64
		}{
			{"labour", float64(sum(b.Labour) - sum(before.Labour)), money},
			{"parts", float64(b.Parts - before.Parts), bought},
			{"wire and gas", float64(b.Consumables - before.Consumables), wire},
			{"materials", float64(b.Materials - before.Materials), float64(before.Materials) * (day(gm, middle[3]) - 1)},
			{"sent out", float64(b.SentOut - before.SentOut), float64(before.SentOut) * (day(gp, middle[4]) - 1)},
			{"strip", float64(b.Strip - before.Strip), 0},
			{"all of it", float64(b.Rise), float64(b.Total - before.Total)},
			{"weeks", 1000 * b.Weeks, 1000 * (begins - r.Time.WeeksUntilStart)},
		} {
			if math.Abs(one.got-one.want) > 3.5 { // five trades, each rounded once
				t.Fatalf("car %d, %s: %.2f more, by hand %.2f", n, one.what, one.got, one.want)
			}
		}
		left := 0.0
		for k, begins := 4, begins; k >= 0 && begins > held; k-- {
			left += math.Min(hours[k], (begins-held)*week)
			if begins -= hours[k] / week; k == 1 || k == 4 {
				begins -= wait / 2
			}
		}
		if math.Abs(float64(b.Left)/1000-left) > 0.01 {
			t.Fatalf("car %d: %d thousandths of hours after the promise, by hand %.3f hours", n, b.Left, left)
		}
	}
	if grown < 100 || free < 100 {
		t.Errorf("%d stages after the promise and %d within it: too few to tell", grown, free)
	}
}

func sum[T ~int64](list [car.Trades]T) (all T) {
	for _, v := range list {
		all += v
	}
	return all
}

// TestHeldThroughout: what is held longer than any job takes costs what it did before, to
// the minor unit; what is bought still rises. Where that does not rise either, nothing of
// the bill changes.
func TestHeldThroughout(t *testing.T) {
	m, plain := testTable(t, "two_door_unitary", "show")
	months := rates.Promise{How: rates.HeldMonths, Months: 60, From: rates.FromAuthorized, On: []string{rates.OnLabour, rates.OnMaterials}}
	c, u := m.NewCar(), plain.NewUniforms()
	for _, p := range []rates.Promise{months, {How: rates.HeldThroughout, On: months.On}, {How: rates.HeldUntil, Until: "2040-01-01", On: months.On}} {
		held := risingTable(t, plain, func(r *rates.Rates) { r.OverTime.Promise = p })
		all := risingTable(t, plain, func(r *rates.Rates) { r.OverTime.Promise = p })
		all.overTime.hold[RisingParts] = all.overTime.hold[RisingLabour]
		b, before, nothing := held.NewBill(), plain.NewBill(), all.NewBill()
		for n := range uint64(100) {
			s := chance.NewStream(78, n)
			m.Draw(&s, c)
			u.Fill(&s)
			u.Rise = s.Uniform()
			plain.Price(c, "salt", u, before)
			held.Price(c, "salt", u, b)
			held.Price(c, "salt", u, nothing)
			plain.Price(c, "salt", u, nothing) // one bill serves tables that rise and that do not
			if sums(nothing) != sums(before) {
				t.Fatalf("%s: car %d: %+v after a rise, before %+v", p.How, n, sums(nothing), sums(before))
			}
			all.Price(c, "salt", u, nothing)
			if b.Labour != before.Labour || b.Strip != before.Strip || b.Materials != before.Materials || b.Consumables != before.Consumables || b.Supplies != before.Supplies {
				t.Fatalf("%s: car %d: %+v, before %+v", p.How, n, sums(b), sums(before))
			}
			if b.Rise != b.Parts-before.Parts+b.SentOut-before.SentOut || b.Rise <= 0 {
				t.Fatalf("%s: car %d: rose by %d, parts by %d", p.How, n, b.Rise, b.Parts-before.Parts)
			}
			if sums(nothing) != sums(before) {
				t.Fatalf("%s: car %d: %+v, before %+v", p.How, n, sums(nothing), sums(before))
			}
		}
	}
}

// TestLongerIsNeverCheaper: a shorter promise, a longer queue, fewer hours a week and
// faster rises never make a car cheaper, and each makes some cars costlier. A strip that
// begins after the rates have run out costs more, and one that begins before does not.
func TestLongerIsNeverCheaper(t *testing.T) {
	m, plain := testTable(t, "hardtop_on_frame", "show")
	base := risingTable(t, plain, nil)
	c, u, a, b := m.NewCar(), plain.NewUniforms(), base.NewBill(), base.NewBill()
	for what, change := range map[string]func(r *rates.Rates){
		"shorter":  func(r *rates.Rates) { r.OverTime.Promise.Months = 6 },
		"from now": func(r *rates.Rates) { r.OverTime.Promise.From = rates.FromAuthorized },
		"no":       func(r *rates.Rates) { r.OverTime.Promise = rates.Promise{How: rates.NotHeld} },
		"queue":    func(r *rates.Rates) { r.Time.WeeksUntilStart = 40 },
		"late":     func(r *rates.Rates) { r.Time.WeeksUntilStart = 53 },
		"slow":     func(r *rates.Rates) { r.Time.HoursAWeek = [3]float64{10, 12, 15} },
		"faster":   func(r *rates.Rates) { r.OverTime.Labour = [3]float64{3, 5, 9} },
	} {
		table, costlier := risingTable(t, plain, change), 0
		for n := range uint64(100) {
			s := chance.NewStream(79, n)
			m.Draw(&s, c)
			u.Fill(&s)
			u.Rise = s.Uniform()
			base.Price(c, "salt", u, a)
			table.Price(c, "salt", u, b)
			if b.Total < a.Total {
				t.Fatalf("%s: car %d: %d, before %d", what, n, b.Total, a.Total)
			}
			if b.Total > a.Total {
				costlier++
			}
			if late := b.Strip > a.Strip; late != (what == "late") {
				t.Fatalf("%s: car %d: the strip costs %d, before %d", what, n, b.Strip, a.Strip)
			}
		}
		if costlier < 20 {
			t.Errorf("%s: costlier in %d cars of 100", what, costlier)
		}
	}
}
