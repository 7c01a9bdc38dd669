package pricing

import (
	"math"
	"slices"
	"testing"

	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/rates"
)

// cardOf returns the card of one way; the card must have it.
func cardOf(t *testing.T, table *Table, item, condition int, w car.Way) WayCard {
	t.Helper()
	for _, c := range table.Card(item, condition).Ways {
		if c.Way == w {
			return c
		}
	}
	t.Fatalf("%s, %s: no %s on the card", table.Body.Items[item].ID, car.ConditionIDs[condition], car.WayIDs[w])
	return WayCard{}
}

// setAll sets all uniforms to p, and those of the whole-car factors to one half.
func setAll(u *Uniforms, p float64) {
	for _, list := range u.lists() {
		for k := range list {
			list[k] = p
		}
	}
	u.Car, u.Wire, u.Week, u.Wait = [2]float64{.5, .5}, p, p, p
}

// TestCardAgainstDrawnWork: the low, likely and high hours and prices of every way on
// every item are what a car draws with all uniforms at .1, .5 or .9, the way chosen and
// nothing else done. Where one uniform sets a whole sum, percentiles of the sum are
// sums of percentiles.
func TestCardAgainstDrawnWork(t *testing.T) {
	model, table := testTable(t, "pickup", "concours")
	c, u, b := model.NewCar(), table.NewUniforms(), table.NewBill()
	table.seams = nil // a card leaves out what a seam shared with an opened part saves
	compared := 0
	for i := range table.items {
		for _, card := range table.Card(i, 4).Ways {
			d := choose(table, i, card.Way)
			for k := range d.Way {
				if k != i {
					d.Way[k] = int8(car.Leave)
				}
			}
			alone := with(t, table, d)
			for level, p := range []float64{.1, .5, .9} {
				setAll(u, p)
				hours, price := 0.0, int64(0)
				for _, l := range alone.Explain(c, "dry", u, b) {
					if l.Item == i && l.ID == "" || table.items[i].once && l.ID == "other_chassis" {
						hours += float64(l.Thousandths) / 1000
					}
					if l.ID == "part" && (l.Item == i || l.Item < 0 && table.items[i].once && card.Way == car.Full) {
						price += int64(l.Price)
					}
				}
				if math.Abs(hours-card.Hours[level]) > .003 || math.Abs(float64(price)-float64(card.Price[level])) > 1 {
					t.Fatalf("%s %s at %g: drawn %.3f h and %d, card %.3f h and %d", table.Body.Items[i].ID, car.WayIDs[card.Way], p, hours, price, card.Hours[level], card.Price[level])
				}
				compared++
			}
			if sum := card.ByTrade; math.Abs(sum[0][1]+sum[1][1]+sum[2][1]+sum[3][1]+sum[4][1]-card.Hours[1]) > 1e-9 {
				t.Errorf("%s: trades do not add up", table.Body.Items[i].ID)
			}
		}
	}
	if compared < 500 {
		t.Errorf("only %d figures compared", compared)
	}
}

// TestCardOfASection works out an outer sill section on the two-door at driver standard
// by hand: the hours of the body file times the driver's factors (metal .75, prep .8,
// body .55, paint .6, fit .65) at the shop's pace.
func TestCardOfASection(t *testing.T) {
	_, table := testTable(t, "two_door_unitary", "driver")
	i := itemNamed(t, table, "outer_sill.left")
	card := cardOf(t, table, i, 4, car.Section)
	for trade, factor := range []float64{.75, .8, .55, .6, .65} {
		for level, h := range table.Body.PartOf(i).Ways[car.Section].Hours[trade] {
			want := h * factor * table.Rates.Labour.Trades[trade].Pace
			if math.Abs(card.ByTrade[trade][level]-want) > 1e-12 {
				t.Errorf("%s: %g, by hand %g", car.TradeIDs[trade], card.ByTrade[trade][level], want)
			}
		}
	}
	if card.Hours[1] == 0 || !card.HasPart {
		t.Error("an empty card")
	}
}

// TestCardOpensAndCovers: on named items, what the trade has to open and what a whole
// panel replaces along with it.
func TestCardOpensAndCovers(t *testing.T) {
	_, table := testTable(t, "two_door_unitary", "show")
	at := func(id string) int { return itemNamed(t, table, id) }
	opens := cardOf(t, table, at("inner_sill.right"), 4, car.Section).Opens
	if len(opens) != 1 || opens[0].Item != at("outer_sill.right") || opens[0].To != car.Full || opens[0].Why.UK == "" {
		t.Errorf("a section of the inner sill opens %+v", opens)
	}
	if patch := cardOf(t, table, at("inner_sill.right"), 4, car.Patch); len(patch.Opens) != 0 {
		t.Errorf("a patch on the inner sill opens %+v", patch.Opens)
	}
	full := cardOf(t, table, at("quarter_skin.left"), 5, car.Full)
	want := []string{"quarter_lower_front.left", "quarter_lower_rear.left", "wheel_arch_lip.left"}
	for _, id := range want {
		if !slices.Contains(full.Covers, at(id)) {
			t.Errorf("a whole quarter does not cover %s", id)
		}
	}
	if slices.ContainsFunc(full.Covers, func(i int) bool { return table.Body.Items[i].Side == car.Right }) {
		t.Error("a whole left quarter covers the right")
	}
	if section := cardOf(t, table, at("quarter_skin.left"), 5, car.Section); len(section.Covers) != 0 {
		t.Error("a section covers whole panels")
	}
	gap := slices.ContainsFunc(full.GettingIn, func(w car.Words) bool { return w == table.accessNamed("hang_gap") })
	if !gap {
		t.Errorf("a whole quarter without hanging the doors: %v", full.GettingIn)
	}
}

func (t *Table) accessNamed(id string) car.Words {
	for k := range t.accesses {
		if t.accesses[k].line.id == id {
			return t.accesses[k].line.name
		}
	}
	return car.Words{}
}

// TestCardOfAnotherChassis: replacing a chassis rail means another chassis, at the
// hours of the body file and without a standard's factor. It covers the frame's parts.
func TestCardOfAnotherChassis(t *testing.T) {
	_, table := testTable(t, "hardtop_on_frame", "concours")
	i := itemNamed(t, table, "chassis_rail.left")
	card := cardOf(t, table, i, 5, car.Full)
	body := table.gettingInOf("other_chassis")
	for level, h := range body.Hours {
		want := h * table.Rates.Labour.Trades[car.Metal].Pace
		for trade, also := range body.Also {
			want += also[level] * table.Rates.Labour.Trades[trade].Pace
		}
		if math.Abs(card.Hours[level]-want) > 1e-9 {
			t.Errorf("%g hours, body file %g", card.Hours[level], want)
		}
	}
	if !card.HasPart || !slices.Contains(card.Covers, itemNamed(t, table, "chassis_rail.right")) || slices.Contains(card.Covers, i) {
		t.Errorf("%+v", card)
	}
}

// TestStructuralMetalIsNotLeft: on no body may a structural item with heavy pitting or
// worse be left, even if a shop's own table says so. Other items may.
func TestStructuralMetalIsNotLeft(t *testing.T) {
	structural, left := 0, 0
	for _, body := range car.BodyIDs {
		_, table := testTable(t, body, "driver")
		lax := &rates.WhatIsDone{}
		for s := range lax.Chance {
			for k := range lax.Chance[s] {
				for c := range lax.Chance[s][k] {
					lax.Chance[s][k][c] = [car.Ways]float64{.5, .5}
				}
			}
		}
		table.Rates.WhatIsDone = lax
		for i := range table.items {
			for c := range car.Conditions {
				ways := table.Allowed(i, c)
				switch leave := slices.Contains(ways, car.Leave); {
				case leave && c >= 2 && table.Body.PartOf(i).Structural:
					t.Errorf("%s: %s in condition %d is left", body, table.Body.Items[i].ID, c)
				case table.Body.PartOf(i).Structural:
					structural++
				case leave:
					left++
				}
			}
		}
	}
	if structural < 100 || left < 100 {
		t.Errorf("%d structural items checked, %d others left", structural, left)
	}
}

// TestAllowedProperties: whatever the tables draw or openings force, at any standard,
// is allowed in that condition, and every allowed way can be chosen.
func TestAllowedProperties(t *testing.T) {
	model, driver := testTable(t, "two_door_unitary", "driver")
	_, concours := testTable(t, "two_door_unitary", "concours")
	c, u := model.NewCar(), driver.NewUniforms()
	properties := gopter.NewProperties(parameters())
	properties.Property("what is done is allowed", prop.ForAll(func(n uint64) bool {
		s := chance.NewStream(seed, n)
		model.Draw(&s, c)
		u.Fill(&s)
		for _, table := range []*Table{driver, concours} {
			b := table.NewBill()
			table.drawWays(c, u, b)
			table.raiseWays(b.Way, b.RaisedBy)
			for i, w := range b.Way {
				if allowed := driver.Allowed(i, int(c.Condition[i])); !slices.Contains(allowed, w) || !slices.Contains(allowed, b.Drawn[i]) {
					t.Logf("%s, %s: %s is not allowed", table.Body.Items[i].ID, car.ConditionIDs[c.Condition[i]], car.WayIDs[w])
					return false
				}
			}
		}
		return true
	}, gen.UInt64()))
	properties.TestingRun(t)
	for i := range driver.items {
		for k := range car.Conditions {
			for _, w := range driver.Allowed(i, k) {
				with(t, driver, choose(driver, i, w))
			}
		}
	}
	if slices.Contains(driver.Allowed(itemNamed(t, driver, "rear_rail.left"), 5), car.Treat) {
		t.Error("a rail that is gone can be treated")
	}
}
