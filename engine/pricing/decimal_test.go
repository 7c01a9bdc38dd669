package pricing

import (
	"testing"

	"github.com/shopspring/decimal"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/damage"
	"underpaint/engine/exposure"
	"underpaint/engine/money"
	"underpaint/engine/rates"
)

func testTable(t testing.TB, body, standard string) (*damage.Model, *Table) {
	t.Helper()
	b, err := car.Load(body)
	if err != nil {
		t.Fatal(err)
	}
	common, err := car.LoadCommon()
	if err != nil {
		t.Fatal(err)
	}
	histories, err := exposure.Exact([]exposure.Alternative{{Chance: 1, Periods: []exposure.Period{{Climate: "salt", Years: 12, Kept: "driven_all_year"}, {Climate: "salt", Years: 43, Kept: "garage"}}}}, exposure.Asked{Year: 2026})
	if err != nil {
		t.Fatal(err)
	}
	m, err := damage.New(damage.Known{Body: b, Histories: histories}, damage.StandardGrids)
	if err != nil {
		t.Fatal(err)
	}
	r, err := rates.Decode(rates.Sample())
	if err != nil {
		t.Fatal(err)
	}
	r.OverTime = nil // most tests look at prices as published; risingTable puts it back
	table, err := NewTable(b, common, r, standard, "whole_body")
	if err != nil {
		t.Fatal(err)
	}
	return m, table
}

// TestDecimalPriceOfAList prices drawn lists of work a second time, in decimals of
// arbitrary precision, and compares to the minor unit.
func TestDecimalPriceOfAList(t *testing.T) {
	for _, body := range car.BodyIDs {
		m, table := testTable(t, body, "show")
		table = table.Doubting(Doubt{SD: 0.2, Growth: 0.05})
		c, u, b := m.NewCar(), table.NewUniforms(), table.NewBill()
		for n := range uint64(300) {
			s := chance.NewStream(7, n)
			m.Draw(&s, c)
			u.Fill(&s)
			u.Doubt = s.Uniform()
			lines := table.Explain(c, "salt", u, b)
			var hours [car.Trades]decimal.Decimal
			parts := money.Minor(0)
			for _, l := range lines {
				if l.ID == "part" {
					parts += l.Price
				} else if !l.Strip {
					hours[l.Trade] = hours[l.Trade].Add(thousandthsDecimal(l.Thousandths))
				}
			}
			for trade := range hours {
				want := inCents(hours[trade].Mul(arbitrary(table.Rates.Labour.Trades[trade].Rate.Published)))
				if b.Labour[trade] != want {
					t.Fatalf("%s car %d %s: %d, in decimals %d", body, n, car.TradeIDs[trade], b.Labour[trade], want)
				}
			}
			handling := inCents(decimal.New(int64(parts), -2).Mul(arbitrary(table.Rates.Parts.Handling.Published)).Shift(-2))
			if b.Parts != parts+handling {
				t.Fatalf("%s car %d: parts %d, in decimals %d", body, n, b.Parts, parts+handling)
			}
		}
	}
}

func thousandthsDecimal(n int64) decimal.Decimal { return decimal.New(n, -3) }

func arbitrary(d money.Decimal) decimal.Decimal { return decimal.RequireFromString(d.String()) }

func inCents(d decimal.Decimal) money.Minor { return money.Minor(d.Round(2).Shift(2).IntPart()) }

// TestForcedWorkIsExplained: every opening has a reason and raises the item.
func TestForcedWorkIsExplained(t *testing.T) {
	m, table := testTable(t, "two_door_unitary", "show")
	c, u, b := m.NewCar(), table.NewUniforms(), table.NewBill()
	forced := 0
	for n := range uint64(500) {
		s := chance.NewStream(9, n)
		m.Draw(&s, c)
		u.Fill(&s)
		table.Price(c, "salt", u, b)
		for i, by := range b.RaisedBy {
			if by < 0 {
				continue
			}
			forced++
			if table.OpeningReason(by).US == "" {
				t.Fatalf("car %d: %s was opened without a reason", n, table.Body.Items[i].ID)
			}
			if !b.Covered[i] && b.Way[i] <= b.Drawn[i] {
				t.Fatalf("car %d: %s was raised and is not", n, table.Body.Items[i].ID)
			}
		}
	}
	if forced == 0 {
		t.Error("nothing was ever forced open in 500 rusty cars")
	}
}
