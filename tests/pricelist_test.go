//go:build !js

package tests

import (
	"testing"

	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"
	"github.com/shopspring/decimal"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/damage"
	"underpaint/engine/exposure"
	"underpaint/engine/money"
	"underpaint/engine/pricing"
	"underpaint/engine/rates"
)

// TestExactPriceOfAList: a list of work priced in exact decimals, at rates and
// percentages of six decimals, equals the bill that the loop over simulated cars adds
// up in whole minor units. Each figure of the bill is rounded once, half away from
// zero, as in section 324 of the Streamlined Sales and Use Tax Agreement.
func TestExactPriceOfAList(t *testing.T) {
	lists := map[string]func(shop, uint64) (bill, exact billed){}
	for _, body := range []string{"two_door_unitary", "hardtop_on_frame"} {
		lists[body] = listsOf(t, body)
	}
	parameters := gopter.DefaultTestParametersWithSeed(20260611)
	parameters.MinSuccessfulTests = 150
	properties := gopter.NewProperties(parameters)
	// Half of the figures are coarse, so that exact ties occur.
	upTo := func(most int64) gopter.Gen {
		return gen.OneGenOf(gen.Int64Range(0, most), gen.Int64Range(0, most/5_000_000).Map(func(n int64) int64 { return n * 5_000_000 }),
			gen.Int64Range(0, most/500_000).Map(func(n int64) int64 { return n * 500_000 }))
	}
	percent := upTo(100_000_000)
	for body, list := range lists {
		properties.Property(body+": the bill is the exact price of the list", prop.ForAllNoShrink(func(hour []int64, handling, supplies, tax int64, currency string, n uint64) string {
			bill, exact := list(shop{hour, handling, supplies, tax, currency}, n)
			if bill != exact {
				return "bill " + bill.String() + ", exact " + exact.String()
			}
			return ""
		}, gen.SliceOfN(int(car.Trades), upTo(400_000_000)), percent, percent, percent,
			gen.OneConstOf("USD", "JPY", "KWD"), gen.UInt64()))
	}
	properties.TestingRun(t)
}

// shop is what a shop publishes, in millionths of a major unit or of a per cent.
type shop struct {
	hour                    []int64 // by trade
	handling, supplies, tax int64
	currency                string
}

// billed are the amounts of a bill, in minor units: labour by trade after the survey,
// then parts with handling, supplies and tax.
type billed [int(car.Trades) + 3]money.Minor

func (f billed) String() (s string) {
	for _, m := range f {
		s += " " + decimal.New(int64(m), 0).String()
	}
	return s
}

// listsOf returns a function that prices car n of one body both ways.
func listsOf(t *testing.T, body string) func(shop, uint64) (bill, exact billed) {
	t.Helper()
	b, err := car.Load(body)
	must(t, err)
	common, err := car.LoadCommon()
	must(t, err)
	histories, err := exposure.Exact([]exposure.Alternative{{Chance: 1, Periods: []exposure.Period{{Climate: "salt", Years: 12, Kept: "driven_all_year"}, {Climate: "salt", Years: 43, Kept: "garage"}}}}, exposure.Asked{Year: 2026})
	must(t, err)
	model, err := damage.New(damage.Known{Body: b, Histories: histories}, damage.StandardGrids)
	must(t, err)
	return func(s shop, n uint64) (bill, exact billed) {
		table, err := pricing.NewTable(b, common, s.rates(t), "show", "whole_body")
		must(t, err)
		table = table.Doubting(pricing.DoubtAt(table.Rates, "told"))
		c, u, got := model.NewCar(), table.NewUniforms(), table.NewBill()
		stream := chance.NewStream(7, n)
		model.Draw(&stream, c)
		u.Fill(&stream)
		u.Doubt = stream.Uniform()
		lines := table.Explain(c, "salt", u, got)
		copy(bill[:], got.Labour[:])
		copy(bill[car.Trades:], []money.Minor{got.Parts, got.Supplies, got.Tax})
		return bill, s.exactly(table, lines, got)
	}
}

// rates returns the sample's rates with the shop's own figures, decoded like any rates
// file.
func (s shop) rates(t *testing.T) *rates.Rates {
	t.Helper()
	r, err := rates.Decode(rates.Sample())
	must(t, err)
	r.OverTime = nil // a list of prices is of one day
	r.Currency, err = money.CurrencyOf(s.currency)
	must(t, err)
	published := func(millionths int64) money.Decimal {
		d, err := money.Parse(decimal.New(millionths, -6).String())
		must(t, err)
		return d
	}
	for trade := range r.Labour.Trades {
		d := published(s.hour[trade])
		rate, err := r.Currency.NewRate(d)
		must(t, err)
		r.Labour.Trades[trade].Rate = rates.Price{Rate: rate, Published: d}
	}
	for to, from := range map[*rates.Percent]int64{&r.Parts.Handling: s.handling, &r.Supplies.Percent: s.supplies, &r.Tax.Percent: s.tax} {
		d := published(from)
		p, err := money.NewPercent(d)
		must(t, err)
		*to = rates.Percent{Percent: p, Published: d}
	}
	r.Supplies.ShareOfLabour, r.Supplies.Capped = true, false
	r.Tax.Published, r.Tax.On = rates.WithoutTax, rates.TaxOn{Labour: rates.Yes, Materials: rates.No, Parts: rates.Yes, Supplies: rates.Yes, SentOut: rates.No}
	return r
}

// exactly prices the list in decimals of any length.
func (s shop) exactly(t *pricing.Table, lines []pricing.Line, b *pricing.Bill) (f billed) {
	places := int32(t.Rates.Currency.Digits)
	minor := func(d decimal.Decimal) money.Minor { return money.Minor(d.Round(places).Shift(places).IntPart()) }
	major := func(m money.Minor) decimal.Decimal { return decimal.New(int64(m), -places) }
	part := func(m money.Minor, millionths int64) money.Minor {
		return minor(major(m).Mul(decimal.New(millionths, -8)))
	}
	var after, strip [car.Trades]decimal.Decimal
	parts := money.Minor(0)
	for _, l := range lines {
		switch hours := decimal.New(l.Thousandths, -3); {
		case l.ID == "part":
			parts += l.Price
		case l.Strip:
			strip[l.Trade] = strip[l.Trade].Add(hours)
		default:
			after[l.Trade] = after[l.Trade].Add(hours)
		}
	}
	stage := t.StagePrice()
	labour := stage.Fixed - stage.Materials + b.Least
	for trade := range after {
		hour := decimal.New(s.hour[trade], -6)
		f[trade] = minor(after[trade].Mul(hour))
		labour += f[trade] + minor(strip[trade].Mul(hour))
	}
	withParts := parts + part(parts, s.handling)
	supplies := part(labour, s.supplies)
	copy(f[car.Trades:], []money.Minor{withParts, supplies, part(labour+withParts+supplies, s.tax)})
	return f
}
