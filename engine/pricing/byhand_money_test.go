package pricing

import (
	"math"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/money"
	"underpaint/engine/rates"
)

// allHours adds up the hours of all trades, strip and after, in thousandths.
func allHours(b *Bill) (sum int64) {
	for trade := range b.StripHours {
		sum += b.StripHours[trade] + b.AfterHours[trade]
	}
	return sum
}

// TestWeeksByHand: weeks are the hours of all trades, strip and after, divided by 20,
// 25 or 30 hours a week, plus a wait of 4, 8 or 20 weeks, as the sample shop publishes
// them.
func TestWeeksByHand(t *testing.T) {
	model, table := testTable(t, "pickup", "show")
	for level, p := range []float64{.1, .5, .9} {
		b, _ := bill(t, table, model.NewCar(), only(t, table, nil), p)
		hours := allHours(b)
		want := float64(hours)/1000/[]float64{20, 25, 30}[level] + []float64{4, 8, 20}[level]
		if hours < 100_000 || math.Abs(b.Weeks-want) > 1e-9 {
			t.Errorf("at %g: %.6f weeks for %d thousandths of hours, by hand %.6f", p, b.Weeks, hours, want)
		}
	}
	table.money.wait = nil
	b, _ := bill(t, table, model.NewCar(), only(t, table, nil), .5)
	hours := allHours(b)
	if math.Abs(b.Weeks-float64(hours)/25_000) > 1e-9 {
		t.Errorf("without a wait %.6f weeks, by hand %.6f", b.Weeks, float64(hours)/25_000)
	}
}

// TestTaxByHand: tax is 6.25 % of what the shop says is taxed, added up and rounded
// once, half away from zero (Streamlined Sales and Use Tax Agreement, section 324). It
// is 0 where the rates already include it or the shop is not sure.
func TestTaxByHand(t *testing.T) {
	model, table := testTable(t, "two_door_unitary", "show")
	sample := table.Rates.Tax
	price := func() *Bill {
		if err := table.setMoney(); err != nil {
			t.Fatal(err)
		}
		b, _ := bill(t, table, model.NewCar(), only(t, table, map[string]car.Way{"quarter_skin.left": car.Full}), .5)
		return b
	}
	b := price()
	labour := table.money.stripLabour + b.Least
	for trade, l := range b.Labour {
		labour += l + table.Rates.Labour.Trades[trade].Rate.Of(b.billed[trade])
	}
	materials := table.money.stripMaterials + table.primer(b.ReplacedM2) + b.Materials + b.Consumables
	for _, c := range []struct {
		name   string
		change func(*rates.Tax)
		base   money.Minor
	}{
		{"as published, materials and parts", func(*rates.Tax) {}, materials + b.Parts},
		{"labour too", func(x *rates.Tax) { x.On.Labour = rates.Yes }, labour + materials + b.Parts},
		{"parts alone", func(x *rates.Tax) { x.On.Materials = rates.No }, b.Parts},
		{"work sent out", func(x *rates.Tax) { x.On.SentOut = rates.Yes }, materials + b.Parts + b.sentIn + b.SentOut},
		{"not sure", func(x *rates.Tax) { x.On.Labour = rates.NotSure }, 0},
		{"with tax", func(x *rates.Tax) { x.Published = rates.WithTax }, 0},
	} {
		table.Rates.Tax = sample
		c.change(&table.Rates.Tax)
		if want := money.Minor(math.Floor(float64(c.base)*.0625 + .5)); price().Tax != want || price().Total != b.Total {
			t.Errorf("%s: tax %d on a total of %d, by hand %d on %d", c.name, price().Tax, price().Total, want, b.Total)
		}
	}
	if b.Parts == 0 || materials == 0 || b.Tax == 0 {
		t.Error("nothing to tax")
	}
}

// TestLeastCharge: a job shorter than the sample shop's two hours is topped up to them
// at 85.00 an hour, to the thousandth of an hour.
func TestLeastCharge(t *testing.T) {
	_, table := testTable(t, "two_door_unitary", "show")
	for hours, want := range map[int64]money.Minor{0: 17000, 500: 12750, 1999: 9, 2000: 0, 2001: 0} {
		if got := table.least(hours); got != want {
			t.Errorf("%d thousandths of an hour: topped up by %d, by hand %d", hours, got, want)
		}
	}
}
