package pricing

import (
	"underpaint/engine/car"
	"underpaint/engine/strict"
)

func words(f strict.Field) car.Words {
	return car.Words{US: f.Get("us").Text(200), UK: f.Get("uk").Text(200)}
}

func triple(f strict.Field) car.Hours {
	n := f.Numbers(3, 0, 1e6)
	if len(n) != 3 {
		return car.Hours{}
	}
	return car.Hours{n[0], n[1], n[2]}
}

func texts(f strict.Field) (out []string) {
	for _, t := range f.Items() {
		out = append(out, t.Text(60))
	}
	return out
}

func wayOf(f strict.Field) car.Way {
	id := f.OneOf(car.WayIDs[:]...)
	for w, known := range car.WayIDs {
		if known == id {
			return car.Way(w)
		}
	}
	return car.Leave
}

func tradeOf(f strict.Field) car.Trade {
	id := f.OneOf(car.TradeIDs[:]...)
	for t, known := range car.TradeIDs {
		if known == id {
			return car.Trade(t)
		}
	}
	return car.Metal
}

func (g *figures) readOpenings(f strict.Field) {
	for _, o := range f.Get("opened_because").Items() {
		one := opening{id: o.Get("id").Text(60), parts: texts(o.Get("if")), atLeast: wayOf(o.Get("at_least")), sameSide: o.Get("same_side").Bool(), why: words(o.Get("why"))}
		if o.Has("unless") {
			one.unless, one.unlessAtLeast = o.Get("unless").Text(60), wayOf(o.Get("unless_at_least"))
		}
		for _, r := range o.Get("raise").Items() {
			raise := raising{part: r.Get("part").Text(60), to: wayOf(r.Get("to"))}
			if r.Has("end") {
				raise.end = r.Get("end").Text(10)
			}
			one.raise = append(one.raise, raise)
		}
		g.openings = append(g.openings, one)
	}
	for _, a := range f.Get("drilled_from_above").Items() {
		one := fromAbove{id: a.Get("id").Text(60), part: a.Get("part").Text(60), end: a.Get("end").Text(10), floor: a.Get("floor").Text(60),
			atLeast: wayOf(a.Get("at_least")), atMost: wayOf(a.Get("at_most")), metal: triple(a.Get("metal")), why: words(a.Get("why"))}
		if a.Has("else_floor") {
			one.elseFloor = a.Get("else_floor").Text(60)
		}
		g.above = append(g.above, one)
	}
}

func readGettingIn(f strict.Field) gettingIn {
	g := gettingIn{id: f.Get("id").Text(60), name: words(f.Get("name")), trade: tradeOf(f.Get("trade")), per: f.Get("per").Text(20)}
	for _, name := range []string{"when", "when_front", "when_rear"} {
		if f.Has(name) {
			g.when = append(g.when, readTrigger(f.Get(name)))
		}
	}
	if f.Has("unless") {
		u := f.Get("unless")
		g.unless, g.unlessExact = u.Get("part").Text(60), u.Has("is")
		if g.unlessExact {
			g.unlessAtLeast = wayOf(u.Get("is"))
		} else {
			g.unlessAtLeast = wayOf(u.Get("at_least"))
		}
	}
	if f.Has("not_if_done") {
		g.notIfDone = texts(f.Get("not_if_done"))
	}
	if f.Has("covers") {
		g.covers = texts(f.Get("covers"))
	}
	if f.Has("chance_by_place") {
		g.parts, g.chance = texts(f.Get("parts")), map[string]float64{}
		by := f.Get("chance_by_place")
		for _, place := range by.Names() {
			g.chance[place] = by.Get(place).Number(0, 1)
		}
	}
	return g
}

func readTrigger(f strict.Field) trigger {
	if f.Has("is") {
		return trigger{parts: texts(f.Get("parts")), way: wayOf(f.Get("is")), exact: true}
	}
	return trigger{parts: texts(f.Get("parts")), way: wayOf(f.Get("at_least"))}
}
