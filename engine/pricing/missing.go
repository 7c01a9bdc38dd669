package pricing

import (
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/strict"
)

// Missing is the id of the finding that a part is not on the car. It says nothing about
// rust: the part is replaced whole.
const Missing = "missing"

// CanBeHad says whether there is a way to replace an item whole: a panel or section with a
// price, one made by hand, or another chassis.
func (t *Table) CanBeHad(i int) bool {
	w := t.parts[i].whole
	if t.items[i].once && w == car.Full {
		return true
	}
	one := &t.labour[i][w]
	return t.isDone(i, w) && len(one.hours) > 0 && (one.price != nil || w == car.Fabricate)
}

// AllowedMissing lists the ways of replacing an item that is missing.
func (t *Table) AllowedMissing(i int) (ways []car.Way) {
	for w := min(t.parts[i].whole, car.Full); w < car.Ways; w++ {
		if t.isDone(i, w) && (w == t.parts[i].whole || w >= car.Full) {
			ways = append(ways, w)
		}
	}
	return ways
}

// CardMissing returns what can be done about an item that is missing.
func (t *Table) CardMissing(item int) Card {
	c := Card{Item: item, Condition: -1}
	b := &Bill{Missing: make([]bool, len(t.items))}
	if t.decided != nil && t.decided.missing != nil {
		copy(b.Missing, t.decided.missing)
	}
	for _, w := range t.AllowedMissing(item) {
		one := t.wayCard(item, w)
		times := t.metalOfMissing(item, w, b)
		for k := range one.Hours {
			less := float64(one.ByTrade[car.Metal][k] * (1 - times))
			one.ByTrade[car.Metal][k] -= less
			one.Hours[k] -= less
		}
		hours := t.parts[item].search
		if w == car.Fabricate {
			hours = t.parts[item].byHand
		}
		if hours != nil && len(t.labour[item][w].hours) > 0 {
			one.addHours(car.Fit, car.Hours{hours.Low(), hours.Likely(), hours.High()})
		}
		c.Ways = append(c.Ways, one)
	}
	return c
}

// setMissing records that an item is missing.
func (t *Table) setMissing(to *decided, i int) error {
	if !t.CanBeHad(i) {
		return &strict.Error{Path: "also", Found: t.Body.Items[i].ID + ": " + Missing, Expected: "a price for the part in the rates first, because nothing says where the part comes from"}
	}
	if to.way != nil && to.way[i] >= 0 && !slices.Contains(t.AllowedMissing(i), car.Way(to.way[i])) {
		return &strict.Error{Path: "ways", Found: t.Body.Items[i].ID + ": " + wayID(to.way[i]), Expected: "a way of replacing the part whole, because it is missing"}
	}
	if to.missing == nil {
		to.missing = make([]bool, len(t.items))
	}
	to.missing[i] = true
	return nil
}

// setFit records how panels fit that somebody has tried on the car.
func (t *Table) setFit(to *decided, d Decided) error {
	if d.PanelFit == nil {
		return nil
	}
	t.checkLength(len(d.PanelFit))
	to.fit = make([]int, len(d.PanelFit))
	for i, id := range d.PanelFit {
		to.fit[i] = slices.Index(PanelFits, id)
		if id != "" && (to.fit[i] < 0 || !t.Bought(i)) {
			return &strict.Error{Path: "panel_fit", Found: t.Body.Items[i].ID + ": " + id, Expected: "fits, needs_work or wrong, on a part for which a panel can be bought"}
		}
	}
	return nil
}

// Bought says whether a panel or a section can be bought for an item.
func (t *Table) Bought(i int) bool {
	return slices.ContainsFunc([]car.Way{car.Section, car.Full}, func(w car.Way) bool { return t.isDone(i, w) && t.labour[i][w].price != nil })
}
