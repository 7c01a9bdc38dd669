package session

import (
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/evidence"
	"underpaint/engine/exposure"
)

// CustomerPlace is a place on the car that we ask the customer about, with the check that
// the answer counts as and the items that it covers on each side.
type CustomerPlace struct {
	ID, Check          string
	Left, Right, Whole []string
}

// askedPlaces are the eight places of the question "what can you see?", in the order of a
// walk around the car.
var askedPlaces = []struct {
	id, check string
	parts     []string
}{
	{"behind_front_wheels", "bubbles", []string{"fender_lower"}},
	{"rockers", "bubbles", []string{"outer_sill"}},
	{"door_bottoms", "bubbles", []string{"door_lower", "rear_door_lower"}},
	{"rear_arches", "bubbles", []string{"wheel_arch_lip", "bed_side"}},
	{"behind_rear_wheels", "bubbles", []string{"quarter_lower_rear", "cab_corner"}},
	{"floors", "carpet", []string{"front_floor"}},
	{"trunk_floor", "carpet", []string{"trunk_floor"}},
	{"glass", "open_hole", []string{"ws_channel", "rear_window"}},
}

func customerPlaces(b *car.Body) (out []CustomerPlace) {
	for _, p := range askedPlaces {
		checked := evidence.Items(b, p.check)
		var sides [3][]string
		for _, part := range p.parts {
			k, ok := b.PartNamed(part)
			if !ok {
				continue
			}
			for _, i := range b.Parts[k].Items {
				if slices.Contains(checked, i) {
					sides[b.Items[i].Side] = append(sides[b.Items[i].Side], b.Items[i].ID)
				}
			}
		}
		if len(sides[0])+len(sides[1])+len(sides[2]) > 0 {
			out = append(out, CustomerPlace{p.id, p.check, sides[car.Left], sides[car.Right], sides[car.NoSide]})
		}
	}
	return out
}

// Country is a country with the places where a car may have lived.
type Country struct {
	Name   string
	Places []exposure.Place
}

// countryName joins the code in a rates file to the name in the table of places.
var countryName = map[string]string{"US": "United States", "CA": "Canada", "GB": "United Kingdom", "IE": "Ireland",
	"AU": "Australia", "NZ": "New Zealand"}

// Countries lists the places by country, the shop's own country first.
func (s *Shop) Countries() []Country {
	var own, others []Country
	for _, p := range exposure.Places() {
		list := &others
		if p.Country == countryName[s.Rates.Country] {
			list = &own
		}
		k := slices.IndexFunc(*list, func(c Country) bool { return c.Name == p.Country })
		if k < 0 {
			k = len(*list)
			*list = append(*list, Country{Name: p.Country})
		}
		(*list)[k].Places = append((*list)[k].Places, p)
	}
	return append(own, others...)
}
