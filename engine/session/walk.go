package session

import (
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/evidence"
)

// WalkLine is one check of one item, or of one whole side.
type WalkLine struct {
	Kind evidence.Kind
	On   string
	Item int    // −1: a whole side, or a zone
	Zone string // of a check for old accidents
}

// WalkSection lists the checks that the shop makes from one place beside the car.
type WalkSection struct {
	ID    string
	Lines []WalkLine
}

// sectionIDs are the places to stand, in the order of a walk around the car: doors,
// front, left side, rear, right side, glass, inside, under the car, the lift at the
// jacking point. Water comes last on the car because it wets everything.
var sectionIDs = []string{"doors", "front", "left", "rear", "right", "glass", "inside", "under", "jack", "water", "papers"}

// walkSections returns all checks of rust on a body in the order of the walk.
func walkSections(b *car.Body) []WalkSection {
	out := make([]WalkSection, len(sectionIDs))
	for n, id := range sectionIDs {
		out[n].ID = id
	}
	for _, kind := range evidence.Kinds() {
		for _, l := range placesOf(b, kind) {
			at := sectionOf(kind.ID, map[string]string{"gaps": "doors"}[kind.ID])
			if l.Item >= 0 {
				at = sectionOf(standingPlace(b, kind.ID, l.Item))
			}
			out[at].Lines = append(out[at].Lines, l)
		}
	}
	for n := range out {
		sortWalk(b, out[n].Lines, out[n].ID == "right")
	}
	return slices.DeleteFunc(out, func(s WalkSection) bool { return len(s.Lines) == 0 })
}

// placesOf returns the items or sides on which a check can be made.
func placesOf(b *car.Body, kind evidence.Kind) (out []WalkLine) {
	if kind.BySide {
		for _, side := range []car.Side{car.Left, car.Right} {
			if len(evidence.OnSide(b, kind.ID, side.String())) > 0 {
				out = append(out, WalkLine{Kind: kind, On: side.String(), Item: -1})
			}
		}
		return out
	}
	for _, i := range evidence.Items(b, kind.ID) {
		out = append(out, WalkLine{Kind: kind, On: b.Items[i].ID, Item: i})
	}
	return out
}

func sectionOf(ids ...string) int {
	return max(0, slices.IndexFunc(sectionIDs, func(id string) bool { return slices.Contains(ids, id) }))
}

// standingPlace returns the section from which the shop checks an item.
func standingPlace(b *car.Body, check string, i int) string {
	switch check {
	case "water", "jack":
		return check
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

// sortWalk sorts lines by the body's zones and items, with all checks of one item
// together, and from the back to the front of the car if fromBack is set.
func sortWalk(b *car.Body, lines []WalkLine, fromBack bool) {
	place := func(l WalkLine) int {
		if l.Item < 0 {
			return 0
		}
		n := b.PartOf(l.Item).Zone*len(b.Items) + l.Item
		if fromBack {
			return -n
		}
		return n
	}
	slices.SortStableFunc(lines, func(x, y WalkLine) int { return place(x) - place(y) })
}
