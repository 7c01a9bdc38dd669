package pricing

import (
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/money"
)

// Card lists what can be done about one item in one condition, with figures.
type Card struct {
	Item, Condition int
	Ways            []WayCard // least work first
}

// WayCard holds the hours and price of one way and the work that it brings with it.
// Hours and prices are low, likely and high, at the shop's standard and pace. They
// leave out how hard the work on this car goes as a whole, what a seam shared with
// another new panel saves, what findings add, and the rust of another chassis.
type WayCard struct {
	Way car.Way
	// Total hours add up the low, likely and high figures of the trades. That is exact,
	// because one number in (0, 1) sets the hours of all trades on one item.
	Hours     car.Hours
	ByTrade   [car.Trades]car.Hours
	HasPart   bool
	Price     [3]money.Minor // of the part, before handling
	Covers    []int          // items that then need no work of their own
	Opens     []Opened       // what would have to be opened if this were the only work on the car
	GettingIn []car.Words    // charged once, however much work asks for it
}

// Opened is an item that other work raises to a way.
type Opened struct {
	Item int
	To   car.Way
	Why  car.Words
}

// Card returns what can be done about an item in a condition (index in
// car.ConditionIDs; 0 = sound).
func (t *Table) Card(item, condition int) Card {
	c := Card{Item: item, Condition: condition}
	for _, w := range t.Allowed(item, condition) {
		c.Ways = append(c.Ways, t.wayCard(item, w))
	}
	return c
}

// Allowed lists the ways that the trade allows on an item in a condition. They are the
// ways done on that item that the tables give a chance in that condition at some
// standard, and those to which an opening may raise it. Structural metal with heavy
// pitting or worse is never left as it is.
func (t *Table) Allowed(item, condition int) (ways []car.Way) {
	p, line := t.Body.PartOf(item), &t.items[item]
	var allowed [car.Ways]bool
	kind := slices.Index(partKinds, p.Table)
	for standard := range car.Standards {
		chance := &t.fig.done[standard][kind][condition]
		if own := t.Rates.WhatIsDone; own != nil {
			chance = &own.Chance[standard][kind][condition]
		}
		for w, v := range chance {
			if v > 0 {
				allowed[line.instead[w]] = true
			}
		}
	}
	for k := range t.openings {
		for _, x := range t.openings[k].raise {
			if x.item == item {
				allowed[line.instead[x.to]] = true
			}
		}
	}
	if p.Structural && condition >= heavyPitting {
		allowed[car.Leave] = false
	}
	for w := car.Leave; w < car.Ways; w++ {
		if allowed[w] && t.isDone(item, w) {
			ways = append(ways, w)
		}
	}
	return ways
}

// heavyPitting is the mildest condition in which structural metal must not be left.
const heavyPitting = 2

func (t *Table) wayCard(item int, w car.Way) WayCard {
	one, c := &t.items[item].ways[w], WayCard{Way: w}
	for k := 0; k < one.n; k++ {
		c.addHours(one.trade[k], car.Hours{one.hours[k].Low(), one.hours[k].Likely(), one.hours[k].High()})
	}
	if one.price != nil {
		c.HasPart = true
		c.Price = [3]money.Minor{wholeMinor(one.price.Low()), wholeMinor(one.price.Likely()), wholeMinor(one.price.High())}
	}
	if w == car.Full {
		c.Covers = slices.Clone(t.covers[item])
	}
	way, by := make([]car.Way, len(t.items)), make([]int16, len(t.items))
	way[item] = w
	t.raiseWays(way, by)
	for i, to := range way {
		if i != item && to > car.Leave {
			c.Opens = append(c.Opens, Opened{Item: i, To: to, Why: t.OpeningReason(by[i])})
		}
	}
	t.addGettingIn(&c, item, way)
	return c
}

func (c *WayCard) addHours(trade car.Trade, h car.Hours) {
	for k, v := range h {
		c.ByTrade[trade][k] += v
		c.Hours[k] += v
	}
}

// addGettingIn names the work that is charged once. Another chassis is such a line too;
// for the item that it replaces, the line is the way itself.
func (t *Table) addGettingIn(c *WayCard, item int, way []car.Way) {
	for k := range t.accesses {
		a := &t.accesses[k]
		if !a.needed(way) {
			continue
		}
		if !(t.items[item].once && c.Way == car.Full && slices.Contains(a.covers, item)) {
			c.GettingIn = append(c.GettingIn, a.line.name)
			continue
		}
		for _, l := range append([]plainLine{a.line}, a.also...) {
			c.addHours(l.trade, car.Hours{l.hours.Low(), l.hours.Likely(), l.hours.High()})
		}
		if a.price != nil {
			c.HasPart = true
			c.Price = [3]money.Minor{wholeMinor(a.price.Low()), wholeMinor(a.price.Likely()), wholeMinor(a.price.High())}
		}
		for _, i := range a.covers {
			if i != item {
				c.Covers = append(c.Covers, i)
			}
		}
	}
}
