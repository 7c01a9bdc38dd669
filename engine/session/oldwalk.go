package session

import (
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/evidence"
	"underpaint/engine/olddamage"
)

// walkOf returns all checks of a body in the order of the walk, with those for old
// accidents before the water if hits is set.
func walkOf(b *car.Body, hits bool) []WalkSection {
	out := walkSections(b)
	if !hits {
		return out
	}
	at := slices.IndexFunc(out, func(s WalkSection) bool { return s.ID == "water" || s.ID == "papers" })
	return slices.Insert(out, at, oldWalk(b))
}

// oldWalk returns the checks for old accidents, zone by zone and then of the whole car.
// They are one section of the walk-around.
func oldWalk(b *car.Body) WalkSection {
	out := WalkSection{ID: "hits"}
	for _, zone := range append(zonesOf(b), olddamage.WholeCar) {
		for _, l := range olddamage.Looks() {
			for _, on := range l.Zones {
				if on == zone {
					kind := evidence.Kind{ID: l.ID, Name: l.Name, How: l.How, Needs: l.Needs, CustomerCan: l.CustomerCan}
					out.Lines = append(out.Lines, WalkLine{Kind: kind, On: on, Item: -1, Zone: on})
				}
			}
		}
	}
	return out
}

// zonesOf are the zones in which a body can have been hit.
func zonesOf(b *car.Body) []string {
	if olddamage.HasRoof(b) {
		return olddamage.ZoneIDs[:]
	}
	return olddamage.ZoneIDs[:olddamage.Roof]
}
