package pricing

import (
	"slices"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/damage"
	"underpaint/engine/rates"
)

// draws makes a car and uniforms that draw these ways. Every other item is sound and
// every other uniform is one half.
func draws(t *testing.T, model *damage.Model, table *Table, ways map[string]car.Way) (*damage.Car, *Uniforms) {
	t.Helper()
	c, u := model.NewCar(), table.NewUniforms()
	setAll(u, .5)
	for id, w := range ways {
		i := itemNamed(t, table, id)
		c.Condition[i], u.Way[i] = drawing(t, table, i, w)
	}
	return c, u
}

// drawing returns a condition of item i, and a uniform, for which this way is drawn.
func drawing(t *testing.T, table *Table, i int, w car.Way) (condition int8, uniform float64) {
	t.Helper()
	for k := range table.items[i].chance {
		below := 0.0
		for drawn, p := range table.items[i].chance[k] {
			if p > 0 && table.items[i].instead[drawn] == w {
				return int8(k), below + p/2
			}
			below += p
		}
	}
	t.Fatalf("%s is never drawn to %s", table.Body.Items[i].ID, car.WayIDs[w])
	return 0, 0
}

// On a two-door at show standard, with every uniform at one half, at the sample shop's
// rates (metal and paint 85, prep 65, body 78, fit 75 an hour; ten per cent on parts):
//
//	hood            patch 593.50   section 1,434.00   full 1,147 + 495 = 1,642.00
//	its edge        patch 411.40   section   980.50
//	quarter         section 1,728.50                  full 4,302 + 572 = 4,874.00
//	its three low sections 1,014.00, 1,110.00 and 1,125.50; by hand 1,580.40, 1,750.40 and 1,705.40
//	door skin       section 1,327.00                  full 1,586 + 176 = 1,762.00
//	its low section 886.50, bottom section 815.50
//	door shell      treat 176.20                      full 1,377 + 660 = 2,037.00
//
// So the hood, for example, may cost 1.15 × 1,642 = 1,888.30 in pieces.
func TestWholePanelByHand(t *testing.T) {
	const p, s, f, hand = car.Patch, car.Section, car.Full, car.Fabricate
	model, table := testTable(t, "two_door_unitary", "show")
	for _, c := range []struct {
		name  string
		ways  map[string]car.Way
		whole string // the panels that must be fitted whole
	}{
		{"1,434.00 + 411.40 = 1,845.40", map[string]car.Way{"hood.whole": s, "hood_edge.whole": p}, ""},
		{"1,434.00 + 980.50 = 2,414.50", map[string]car.Way{"hood.whole": s, "hood_edge.whole": s}, "hood.whole"},
		{"593.50 + 980.50 = 1,574.00", map[string]car.Way{"hood.whole": p, "hood_edge.whole": s}, ""},
		{"a sound hood, 1,805.00 of edge", map[string]car.Way{"hood_edge.whole": hand}, ""},
		{"a hood by hand is by hand", map[string]car.Way{"hood.whole": hand, "hood_edge.whole": s}, ""},
		{"4,978.00 of 5,605.10", map[string]car.Way{"quarter_skin.left": s, "quarter_lower_front.left": s, "quarter_lower_rear.left": s, "wheel_arch_lip.left": s}, ""},
		{"1,728.50 + 1,580.40 + 1,110.00 + 1,705.40 = 6,124.30", map[string]car.Way{"quarter_skin.left": s, "quarter_lower_front.left": hand, "quarter_lower_rear.left": s,
			"wheel_arch_lip.left": hand}, "quarter_skin.left"},
		{"the same, its pieces on two sides", map[string]car.Way{"quarter_skin.left": s, "quarter_lower_front.left": hand, "quarter_lower_rear.right": s,
			"wheel_arch_lip.right": hand}, ""},
		{"a skin of 2,213.50 of 2,026.30 leaves 1,762.00 of shell", map[string]car.Way{"door_skin.right": s, "door_lower.right": s}, "door_skin.right"},
		{"the skin, then 176.20 + 1,762.00 + 815.50 of 2,342.55", map[string]car.Way{"door_skin.right": s, "door_lower.right": s, "door_bottom.right": s,
			"door_shell.right": car.Treat}, "door_shell.right"},
		{"a new skin covers the low section: 1,762.00, not 2,648.50", map[string]car.Way{"door_skin.right": f, "door_lower.right": s}, ""},
	} {
		drawn, u := draws(t, model, table, c.ways)
		b := table.NewBill()
		table.Price(drawn, "dry", u, b)
		whole := ""
		for i, w := range b.Way {
			if w == car.Full && b.Drawn[i] < car.Full {
				whole += table.Body.Items[i].ID
				for _, k := range table.covers[i] {
					if !b.Covered[k] || b.Way[k] != car.Leave {
						t.Errorf("%s: %s is still worked on", c.name, table.Body.Items[k].ID)
					}
				}
			}
		}
		if whole != c.whole {
			t.Errorf("%s: %q fitted whole, by hand %q", c.name, whole, c.whole)
		}
	}
}

// TestWholePanelAtItsOwnDraws: with every uniform at one half, a section of the hood
// (50, 100 and 200 of panel) with a patch on its edge takes 1,845.40 of 1,888.30. With
// panels at their low price it takes 1,324 + 55 + 411.40 = 1,790.40 of 1.15 × (1,147 +
// 286) = 1,647.95, and the bill is that of a hood that was drawn full.
func TestWholePanelAtItsOwnDraws(t *testing.T) {
	model, table := testTable(t, "two_door_unitary", "show")
	hood := itemNamed(t, table, "hood.whole")
	at := func(ways map[string]car.Way, price float64) *Bill {
		c, u := draws(t, model, table, ways)
		u.Price[hood] = price
		b := table.NewBill()
		table.Price(c, "dry", u, b)
		return b
	}
	pieces, full := map[string]car.Way{"hood.whole": car.Section, "hood_edge.whole": car.Patch}, map[string]car.Way{"hood.whole": car.Full}
	if b := at(pieces, .5); b.Way[hood] != car.Section || b.Parts != 11000 {
		t.Errorf("in the middle %s, parts %d, by hand a section of 110.00", car.WayIDs[b.Way[hood]], b.Parts)
	}
	if b := at(pieces, .1); b.Way[hood] != car.Full || b.Parts != 28600 || b.Total != at(full, .1).Total {
		t.Errorf("at the low price %s, parts %d, %d in all, by hand full at 286.00 and %d", car.WayIDs[b.Way[hood]], b.Parts, b.Total, at(full, .1).Total)
	}
}

// TestWholePanelIsNotForced: no panel is fitted whole where the customer keeps old
// metal, where a way was chosen on the part or on one that its panel would cover, where
// the shop cannot buy the panel, or where the scope leaves the part out. A choice
// elsewhere changes nothing.
func TestWholePanelIsNotForced(t *testing.T) {
	model, table := testTable(t, "two_door_unitary", "show")
	hood, edge := itemNamed(t, table, "hood.whole"), itemNamed(t, table, "hood_edge.whole")
	pieces := map[string]car.Way{"hood.whole": car.Section, "hood_edge.whole": car.Section}
	way := func(table *Table, d Decided, ways map[string]car.Way, on int) car.Way {
		c, u := draws(t, model, table, ways)
		b := table.NewBill()
		with(t, table, d).Price(c, "dry", u, b)
		return b.Way[on]
	}
	keeps := Undecided()
	keeps.KeepOldMetal = true
	for name, c := range map[string]struct {
		d    Decided
		want car.Way
	}{
		"nothing decided":       {Undecided(), car.Full},
		"old metal kept":        {keeps, car.Section},
		"chosen on the part":    {choose(table, hood, car.Section), car.Section},
		"chosen on its edge":    {choose(table, edge, car.Section), car.Section},
		"chosen on another one": {choose(table, itemNamed(t, table, "trunk_lid.whole"), car.Section), car.Full},
	} {
		if got := way(table, c.d, pieces, hood); got != c.want {
			t.Errorf("%s: %s, by hand %s", name, car.WayIDs[got], car.WayIDs[c.want])
		}
	}
	// A new decision forgets what an earlier one ruled out.
	if got := way(with(t, table, keeps), Undecided(), pieces, hood); got != car.Full {
		t.Errorf("decided twice: %s", car.WayIDs[got])
	}
	_, none := scoped(t, "two_door_unitary", "show", "whole_body", func(r *rates.Rates) {
		r.Parts.Prices = []rates.PartPrice{{Part: "hood", Way: car.Full, Had: "section_only"}}
	})
	if got := way(none, Undecided(), pieces, hood); got != car.Section {
		t.Errorf("no hood to be had: %s", car.WayIDs[got])
	}
	_, outside := scoped(t, "two_door_unitary", "show", "outside_only", asPublished)
	shell := itemNamed(t, outside, "door_shell.left")
	if slices.ContainsFunc(outside.panels, func(p wholePanel) bool { return p.item == shell }) || !slices.ContainsFunc(table.panels, func(p wholePanel) bool { return p.item == shell }) {
		t.Error("a whole door where only the outside is done, or none on the whole body")
	}
}
