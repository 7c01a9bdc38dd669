package pricing

import (
	"testing"

	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/money"
	"underpaint/engine/rates"
)

const seed = 20260603

func parameters() *gopter.TestParameters {
	p := gopter.DefaultTestParametersWithSeed(seed)
	p.MinSuccessfulTests = 300
	return p
}

// TestWorkProperties checks what must be true of any bill.
func TestWorkProperties(t *testing.T) {
	model, table := testTable(t, "two_door_unitary", "show")
	c, u, b := model.NewCar(), table.NewUniforms(), table.NewBill()
	drawn := func(n uint64) []Line {
		s := chance.NewStream(seed, n)
		model.Draw(&s, c)
		u.Fill(&s)
		return table.Explain(c, "salt", u, b)
	}
	properties := gopter.NewProperties(parameters())

	properties.Property("splitting every line in two keeps the bill to the minor unit", prop.ForAll(func(n uint64, share int64) bool {
		var hours [car.Trades]int64
		for _, l := range drawn(n) {
			if l.ID != "part" && !l.Strip {
				first := l.Thousandths * share / 100
				hours[l.Trade] += first + (l.Thousandths - first)
			}
		}
		for trade, h := range hours {
			if table.Rates.Labour.Trades[trade].Rate.Of(h) != b.Labour[trade] {
				return false
			}
		}
		return true
	}, gen.UInt64(), gen.Int64Range(0, 100)))

	properties.Property("the kinds of line add up to the total", prop.ForAll(func(n uint64) bool {
		drawn(n)
		sum := b.Strip + b.Least + b.Materials + b.Consumables + b.Parts + b.SentOut + b.Supplies
		for _, l := range b.Labour {
			sum += l
		}
		return sum == b.Total && b.Total > 0
	}, gen.UInt64()))

	properties.Property("what is covered is not worked on", prop.ForAll(func(n uint64) bool {
		lines := drawn(n)
		for _, l := range lines {
			if l.Item >= 0 && b.Covered[l.Item] {
				return false
			}
		}
		return true
	}, gen.UInt64()))

	properties.Property("getting in is charged once", prop.ForAll(func(n uint64) bool {
		seen := map[string]int{}
		for _, l := range drawn(n) {
			seen[l.ID]++
		}
		return seen["brace_datum"] <= 1 && seen["open_plenum"] <= 1 && seen["hang_gap"] <= 2
	}, gen.UInt64()))

	properties.TestingRun(t)
}

// TestZeroRates: when an hour costs nothing, the bill has no labour.
func TestZeroRates(t *testing.T) {
	model, table := testTable(t, "hardtop_on_frame", "concours")
	for trade := range table.Rates.Labour.Trades {
		zero, err := table.Rates.Currency.NewRate(money.Decimal{})
		if err != nil {
			t.Fatal(err)
		}
		table.Rates.Labour.Trades[trade].Rate = rates.Price{Rate: zero}
	}
	if err := table.setMoney(); err != nil {
		t.Fatal(err)
	}
	c, u, b := model.NewCar(), table.NewUniforms(), table.NewBill()
	for n := range uint64(100) {
		s := chance.NewStream(seed, n)
		model.Draw(&s, c)
		u.Fill(&s)
		table.Price(c, "salt", u, b)
		if b.Labour != [car.Trades]money.Minor{} {
			t.Fatalf("car %d: labour %v", n, b.Labour)
		}
		if want := table.money.stripMaterials + table.primer(b.ReplacedM2) + b.sentIn; b.Strip != want {
			t.Fatalf("car %d: strip %d, materials and work sent out are %d", n, b.Strip, want)
		}
		if b.AfterHours == [car.Trades]int64{} {
			t.Fatal("no hours at all")
		}
	}
}

// TestMoreDamageNeverCostsLess: on every item of every body, at every standard, the
// mean price of the work (at likely hours and prices) does not fall from one condition
// to the next worse. A single draw may fall: a bolted-on panel can be cheaper than a
// section let into a bad one.
func TestMoreDamageNeverCostsLess(t *testing.T) {
	items := 0
	for _, body := range car.BodyIDs {
		for _, standard := range car.Standards {
			_, table := testTable(t, body, standard)
			for i := range table.items {
				line, before := &table.items[i], 0.0
				if line.once {
					continue // another chassis is priced once, for the whole car
				}
				for k := range line.chance {
					mean := 0.0
					for w, p := range line.chance[k] {
						one := &line.ways[line.instead[w]]
						cost := 0.0
						for n := 0; n < one.n; n++ {
							cost += one.hours[n].Likely() * table.Rates.Labour.Trades[one.trade[n]].Rate.Published.Float()
						}
						if one.price != nil {
							cost += one.price.Likely() / table.minorPerMajor()
						}
						mean += p * cost
					}
					if mean < before-1e-9 {
						t.Errorf("%s, %s, %s: %s costs %.2f, a step better %.2f", body, standard, table.Body.Items[i].ID, car.ConditionIDs[k], mean, before)
					}
					before = mean
				}
				items++
			}
		}
	}
	if items < 1500 {
		t.Errorf("only %d items checked", items)
	}
}
