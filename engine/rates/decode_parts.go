package rates

import (
	"slices"
	"sync"

	"underpaint/engine/car"
	"underpaint/engine/strict"
)

// hadIDs say where a part comes from.
var hadIDs = []string{"made_today", "section_only", "found", "by_hand", "specialist"}

func readParts(f strict.Field) Parts {
	f.Keys(partsKeys...)
	p := Parts{
		PriceFactor: decimal(f.Get("price_factor"), "0.01", "100000", "a factor"),
		Handling:    percent(f.Get("handling_percent")),
		Source:      source(f),
	}
	p.AsTheyShould = f.Has("as_they_come") && !f.Get("as_they_come").Bool()
	for _, item := range f.Get("prices").Items() {
		one := readPartPrice(item)
		if f.Err() != nil {
			return p
		}
		checkPart(item, one)
		agree(item, one, p.Prices)
		p.Prices = append(p.Prices, one)
	}
	return p
}

func readPartPrice(f strict.Field) PartPrice {
	f.Keys(partPriceKeys...)
	p := PartPrice{Part: word(f.Get("part")), Note: note(f), Source: source(f)}
	if f.Has("body") {
		p.Body = f.Get("body").OneOf(car.BodyIDs...)
	}
	bought := car.WayIDs[car.Patch:]
	p.Way = car.Patch + car.Way(slices.Index(bought, f.Get("way").OneOf(bought...)))
	if figures := f.Get("price"); !figures.IsNull() {
		p.SetPrice(threePrices(figures, highestAmount))
	}
	if had := f.Get("had"); !had.IsNull() {
		p.Had = had.OneOf(hadIDs...)
	}
	p.readComing(f)
	checkHad(f, p)
	return p
}

// checkHad refuses an entry that says nothing or contradicts itself.
func checkHad(f strict.Field, p PartPrice) {
	panel := p.Way == car.Section || p.Way == car.Full
	switch {
	case !p.Priced && p.Had == "" && !p.saysHowItComes():
		f.Complain("a price, or how the part is had, or both, or how it comes")
	case !panel && p.saysHowItComes():
		f.Complain("fit, weeks and used_share on a section or a full panel only, because no other way takes a bought panel")
	case p.Had == "by_hand" && panel && p.Priced:
		f.Get("price").Complain("null, because a part made by hand cannot be bought")
	case p.Had == "section_only" && p.Way == car.Full && p.Priced:
		f.Get("price").Complain("null, because only a repair section can be bought")
	}
}

// agree refuses a second entry for the same part and way, and two answers to where one
// part comes from.
func agree(f strict.Field, p PartPrice, before []PartPrice) {
	for _, b := range before {
		if b.Part != p.Part || b.Body != p.Body {
			continue
		}
		if b.Way == p.Way {
			f.Complain("one entry for a part and way; there is one above")
		}
		if b.Had != "" && p.Had != "" && b.Had != p.Had {
			f.Get("had").Complain("\"" + b.Had + "\", as in the entry above for the same part")
		}
	}
}

// checkPart refuses a part or way that none of the bodies has: nothing would ever use
// its price.
func checkPart(f strict.Field, p PartPrice) {
	bodies := car.BodyIDs
	if p.Body != "" {
		bodies = []string{p.Body}
	}
	known := false
	for _, id := range bodies {
		done := waysDone[id]()
		if done[p.Part+"/"+car.WayIDs[p.Way]] {
			return
		}
		known = known || done[p.Part+"/"+car.WayIDs[car.Leave]]
	}
	if known {
		f.Get("way").Complain("a way in which this part is repaired")
	} else {
		f.Get("part").Complain("the id of a part of the body")
	}
}

// waysDone says for each body which way is done on which part, as "part/way". Bodies
// are large and never change, so each is read once and only when needed: the shop's
// page decodes the rates after every field.
var waysDone = func() map[string]func() map[string]bool {
	all := map[string]func() map[string]bool{}
	for _, id := range car.BodyIDs {
		all[id] = sync.OnceValue(func() map[string]bool { return readWaysDone(id) })
	}
	return all
}()

// readWaysDone reads a body with none and with all of its options, because an option
// can bring parts of its own.
func readWaysDone(id string) map[string]bool {
	done := map[string]bool{}
	var options []string
	for _, o := range addWaysDone(done, id).Options {
		options = append(options, o.ID)
	}
	if len(options) > 0 {
		addWaysDone(done, id, options...)
	}
	return done
}

func addWaysDone(done map[string]bool, id string, options ...string) *car.Body {
	body, err := car.Load(id, options...)
	if err != nil {
		panic("engine: internal error: body " + id + ": " + err.Error())
	}
	for _, part := range body.Parts {
		for w, way := range part.Ways {
			if way.Done {
				done[part.ID+"/"+car.WayIDs[w]] = true
			}
		}
	}
	return body
}
