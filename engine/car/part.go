package car

import (
	"slices"

	"underpaint/engine/strict"
)

var partKeys = []string{"id", "name", "zone", "group", "face", "structural", "near_mounting", "table", "area_m2",
	"gauge", "mm", "trap", "splash", "rust", "lead_joints", "seen_when_stripped", "joint", "had", "option",
	"covered_by", "items", "ways"}

// readPart adds one part and its items, unless it belongs to an option that was
// not chosen.
func readPart(f strict.Field, b *Body, options []string) {
	f.Keys(partKeys...)
	p := Part{ID: f.Get("id").Text(60), Name: words(f.Get("name"))}
	if f.Has("option") {
		p.Option = f.Get("option").Text(60)
		if !slices.Contains(options, p.Option) {
			return
		}
	}
	p.Zone = indexOf(f.Get("zone"), zoneIDs(b))
	p.Group = indexOf(f.Get("group"), groupIDs(b))
	p.Face = Face(indexOf(f.Get("face"), []string{"outer", "hidden", "seen_when_open"}))
	p.Structural = f.Get("structural").Bool()
	p.NearMounting = f.Get("near_mounting").Bool()
	p.Table = f.Get("table").OneOf("outer", "hidden", "structural", "structural_near_mounting")
	p.AreaM2 = f.Get("area_m2").Number(0.001, 20)
	p.Gauge = f.Get("gauge").Whole(8, 26)
	p.MM = f.Get("mm").Number(0.3, 5)
	p.Trap = f.Get("trap").Whole(1, 5)
	p.Splash = f.Get("splash").Number(0, 1)
	p.Rust = readRust(f, p.Trap)
	if f.Has("lead_joints") {
		p.LeadJoints = f.Get("lead_joints").Whole(1, 8)
	}
	p.SeenWhenStripped = f.Get("seen_when_stripped").Bool()
	p.Joint = f.Get("joint").Text(120)
	p.Had = f.Get("had").OneOf("made_today", "section_only", "found", "by_hand", "specialist")
	for _, c := range list(f, "covered_by") {
		p.CoveredBy = append(p.CoveredBy, c.Text(60))
	}
	readWays(f.Get("ways"), &p)
	index := len(b.Parts)
	for _, it := range f.Get("items").Items() {
		p.Items = append(p.Items, readItem(it, b, index, p.Group))
	}
	b.partIndex[p.ID] = index
	b.Parts = append(b.Parts, p)
}

func readRust(f strict.Field, trap int) Rust {
	if !f.Has("rust") {
		return RustByTrap(trap)
	}
	r := f.Get("rust")
	r.Keys("m", "b", "life")
	return Rust{M: r.Get("m").Number(1, 10), B: r.Get("b").Number(0.3, 1), Life: r.Get("life").Number(1, 30)}
}

func readItem(f strict.Field, b *Body, part, group int) int {
	f.Keys("id", "pocket", "side", "end", "place")
	it := Item{ID: f.Get("id").Text(60), Part: part}
	if f.Has("side") {
		it.Side = Side(1 + indexOf(f.Get("side"), []string{"left", "right"}))
	}
	if f.Has("end") {
		it.End = f.Get("end").OneOf("front", "rear")
	}
	if f.Has("place") {
		it.Place = f.Get("place").Text(60)
	}
	pocket := f.Get("pocket").Text(60)
	it.Pocket = -1
	for k := range b.Pockets {
		if b.Pockets[k].ID == pocket {
			it.Pocket = k
		}
	}
	if it.Pocket < 0 {
		it.Pocket = len(b.Pockets)
		b.Pockets = append(b.Pockets, Pocket{ID: pocket, Group: group})
	}
	b.itemIndex[it.ID] = len(b.Items)
	b.Items = append(b.Items, it)
	return len(b.Items) - 1
}

// readWays reads the work of each way. Leaving an item is always possible and takes no
// work beyond the strip and the primer.
func readWays(f strict.Field, p *Part) {
	f.Keys(WayIDs[1:]...)
	p.Ways[Leave].Done = true
	for w := Treat; w < Ways; w++ {
		one := f.Get(WayIDs[w])
		if one.Has("instead") {
			one.Keys("instead")
			instead := one.Get("instead").Text(60)
			if k := slices.Index(WayIDs[:], instead); k >= 0 {
				p.Ways[w].Instead = Way(k)
			} else {
				p.Ways[w].Once = instead
			}
			continue
		}
		one.Keys("hours", "price")
		p.Ways[w].Done = true
		hours := one.Get("hours")
		hours.Keys(TradeIDs[:]...)
		for t := Trade(0); t < Trades; t++ {
			if hours.Has(TradeIDs[t]) {
				p.Ways[w].Hours[t] = triple(hours.Get(TradeIDs[t]))
			}
		}
		if one.Has("price") {
			p.Ways[w].Price = triple(one.Get("price"))
		}
	}
}

func zoneIDs(b *Body) (ids []string) {
	for _, z := range b.Zones {
		ids = append(ids, z.ID)
	}
	return ids
}

func groupIDs(b *Body) (ids []string) {
	for _, g := range b.Groups {
		ids = append(ids, g.ID)
	}
	return ids
}

// indexOf reads one of the ids and returns its index, or 0 after a complaint.
func indexOf(f strict.Field, ids []string) int {
	return max(0, slices.Index(ids, f.OneOf(ids...)))
}
