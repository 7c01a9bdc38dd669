package message

import (
	"slices"
	"strconv"

	"underpaint/engine/car"
	"underpaint/engine/evidence"
	"underpaint/engine/strict"
)

// walkLine is one look at one item, or at one side for the looks that speak of a
// whole side.
type walkLine struct {
	kind evidence.Kind
	on   string
	item int // −1: a side
}

// walkSection is what is looked at from one standing place.
type walkSection struct {
	id    string
	name  car.Words
	lines []walkLine
}

// walkSections are all looks at a body in the order in which one walks round it:
// doors, front, left side, rear, right side, glass, inside, under the car, the
// lift at the jacking point, and water last because it wets everything.
func walkSections(b *car.Body) []walkSection {
	out := []walkSection{
		{id: "doors", name: car.Words{US: "Doors and gaps", UK: "Doors and gaps"}},
		{id: "front", name: car.Words{US: "Front and hood", UK: "Front and bonnet"}},
		{id: "left", name: car.Words{US: "Left side, front to back", UK: "Left (nearside), front to back"}},
		{id: "rear", name: car.Words{US: "Rear and trunk", UK: "Rear and boot"}},
		{id: "right", name: car.Words{US: "Right side, back to front", UK: "Right (offside), back to front"}},
		{id: "glass", name: car.Words{US: "Glass, cowl and roof", UK: "Glass, scuttle and roof"}},
		{id: "inside", name: car.Words{US: "Inside, carpets up", UK: "Inside, carpets up"}},
		{id: "under", name: car.Words{US: "Underneath, safely up", UK: "Underneath, safely up"}},
		{id: "jack", name: car.Words{US: "Lift at the jacking point", UK: "Lift at the jacking point"}},
		{id: "water", name: car.Words{US: "Water, last of all", UK: "Water, last of all"}},
		{id: "papers", name: car.Words{US: "Photographs, bills and what was said", UK: "Photographs, bills and what was said"}},
	}
	for _, kind := range evidence.Kinds() {
		if kind.BySide {
			at := sectionOf(out, kind.ID, map[string]string{"gaps": "doors"}[kind.ID])
			for _, side := range sidesOf(b, kind.ID) {
				out[at].lines = append(out[at].lines, walkLine{kind, side, -1})
			}
			continue
		}
		for _, i := range evidence.Items(b, kind.ID) {
			at := sectionOf(out, standingPlace(b, kind.ID, i))
			out[at].lines = append(out[at].lines, walkLine{kind, b.Items[i].ID, i})
		}
	}
	for n := range out {
		sortWalk(b, out[n].lines, out[n].id == "right")
	}
	return slices.DeleteFunc(out, func(s walkSection) bool { return len(s.lines) == 0 })
}

func sectionOf(all []walkSection, ids ...string) int {
	for n := range all {
		if slices.Contains(ids, all[n].id) {
			return n
		}
	}
	return 0
}

// sidesOf are the sides on which a body has parts that a look at a side speaks of.
func sidesOf(b *car.Body, look string) (out []string) {
	for _, side := range []car.Side{car.Left, car.Right} {
		if len(evidence.OnSide(b, look, side.String())) > 0 {
			out = append(out, side.String())
		}
	}
	return out
}

// standingPlace is where one stands for a look at an item.
func standingPlace(b *car.Body, look string, i int) string {
	switch look {
	case "water", "jack":
		return look
	case "photos", "word":
		return "papers"
	case "carpet", "wet":
		return "inside"
	case "prod", "tap", "fresh_under":
		return "under"
	}
	p, side := b.PartOf(i), b.Items[i].Side
	zone := b.Zones[p.Zone].ID
	switch {
	case zone == "under" || zone == "mount":
		return "under"
	case zone == "floor":
		return "inside"
	case side != car.NoSide:
		return side.String()
	case zone == "front":
		return "front"
	case zone == "lid" && p.ID != "trunk_lid" && p.ID != "trunk_lid_edge" && p.ID != "tailgate":
		return "front"
	case zone == "scuttle" || zone == "roof":
		return "glass"
	}
	return "rear"
}

// sortWalk puts lines in the order of the body's zones and items, from the back
// when asked, with all looks at one item together.
func sortWalk(b *car.Body, lines []walkLine, fromBack bool) {
	place := func(l walkLine) int {
		if l.item < 0 {
			return 0
		}
		n := b.PartOf(l.item).Zone*len(b.Items) + l.item
		if fromBack {
			return -n
		}
		return n
	}
	slices.SortStableFunc(lines, func(x, y walkLine) int { return place(x) - place(y) })
}

func (s *Session) writeWalk(w *strict.Writer, b *car.Body) {
	sections := walkSections(b)
	type tool struct {
		name string
		n    int
	}
	var tools []tool
	toolOf := func(k evidence.Kind) int {
		name := k.Needs.In(s.Rates.Words)
		n := slices.IndexFunc(tools, func(t tool) bool { return t.name == name })
		if n < 0 {
			tools, n = append(tools, tool{name: name}), len(tools)
		}
		return n
	}
	w.Key("walk_round")
	w.Array(func() {
		for _, section := range sections {
			w.Object(func() {
				w.Member("id", section.id)
				w.Member("name", section.name.In(s.Rates.Words))
				w.Objects("lines", len(section.lines), func(n int) {
					k := toolOf(section.lines[n].kind)
					tools[k].n++
					s.writeWalkLine(w, b, section.lines[n], k)
				})
			})
		}
	})
	w.Objects("tools", len(tools), func(n int) {
		w.Member("id", "tool_"+strconv.Itoa(n))
		w.Member("name", tools[n].name)
		w.Member("lines_text", tools[n].name+": "+strconv.Itoa(tools[n].n)+" lines")
	})
}

func (s *Session) writeWalkLine(w *strict.Writer, b *car.Body, l walkLine, tool int) {
	words := s.Rates.Words
	place, beside := "The whole "+l.on+" side", ""
	if l.item >= 0 {
		place = b.ItemName(l.item, words)
		if l.kind.NotAtLead && b.PartOf(l.item).LeadJoints > 0 {
			beside = "Lead-loaded joint here: keep a hand's breadth away from it, where lead and filler read alike."
		}
	}
	w.Member("look", l.kind.ID)
	w.Member("on", l.on)
	w.Member("text", place+": "+lowerFirst(l.kind.Name.In(words)))
	w.Member("place", place)
	w.Member("name", l.kind.Name.In(words))
	w.Member("how", l.kind.How.In(words))
	w.Member("needs", l.kind.Needs.In(words))
	w.Member("caution", l.kind.Caution.In(words))
	w.Member("tool", "tool_"+strconv.Itoa(tool))
	w.Key("customer_can")
	w.Bool(l.kind.CustomerCan)
	w.Member("not_here", "")
	w.Member("beside_lead", beside)
}
