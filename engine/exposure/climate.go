package exposure

import (
	"underpaint/engine/car"
	"underpaint/engine/strict"
)

// Words is a plain name in the trade's US and UK vocabulary.
type Words = car.Words

// Climate is one of the five environments a car can live in. AirUM and SplashUM are the
// loss of open bare steel in the first year in µm, away from road splash and in it.
// PaintLifeFactor multiplies the life of paint. RoadYears is how many years cars there
// were driven, used when nobody knows (rusted cars were laid up or scrapped earlier).
type Climate struct {
	ID                                          string
	AirUM, SplashUM, PaintLifeFactor, RoadYears float64
	Name                                        Words
	Source                                      string
}

// Climates lists the five climates, mildest first. Read only.
func Climates() []Climate { return data().climates }

// ClimateOf finds a climate by its id.
func ClimateOf(id string) (Climate, bool) {
	for _, c := range data().climates {
		if c.ID == id {
			return c, true
		}
	}
	return Climate{}, false
}

// Place is a state, province, region or country, with the climate assumed for it.
type Place struct {
	ID, Country           string
	Name                  Words
	Climate, Source, Note string
	Coast                 bool // it has a sea coast, so the distance to it can be asked
}

// Places lists all places, by country. Read only.
func Places() []Place { return data().places }

// PlaceOf finds a place by its id.
func PlaceOf(id string) (Place, bool) {
	for _, p := range data().places {
		if p.ID == id {
			return p, true
		}
	}
	return Place{}, false
}

// ClimateAt returns the climate for a place (or a climate given directly) and for how
// near the sea the car was kept: "shore" (within about 1 km of surf) is the sea climate;
// "near" (about 1 to 15 km) makes dry and mild places damp; "inland", "" and "not_sure"
// keep the climate of the place. Steel loss falls off within a few hundred metres of the
// shore (OSTI 684446, abstract); the limits in kilometres are assumptions. For a place
// without a sea coast, "shore" and "near" are errors.
func ClimateAt(placeID, shore string) (climateID string, err error) {
	id, coast, name := placeID, true, ""
	if p, ok := PlaceOf(placeID); ok {
		id, coast, name = p.Climate, p.Coast, p.Name.US
	} else if _, ok := ClimateOf(placeID); !ok {
		return "", &strict.Error{Path: "place", Found: placeID, Expected: "a place from the list, or dry, mild, damp, salt, sea or not_sure"}
	}
	switch shore {
	case "inland", "", NotSure:
		return id, nil
	case "shore", "near":
	default:
		return "", &strict.Error{Path: "shore", Found: shore, Expected: "shore, near, inland or not_sure"}
	}
	if !coast {
		return "", &strict.Error{Path: "shore", Found: shore, Expected: "inland or not_sure, because " + name + " has no sea coast"}
	}
	if shore == "shore" {
		return "sea", nil
	}
	if id == "dry" || id == "mild" {
		return "damp", nil
	}
	return id, nil
}

// ClimatesAt turns the place and shore answers of a car file into a mixture of climates.
// If the customer is not sure of the place, all five climates are equally likely
// (assumption). If nobody asked about the shore (""), the climate of the place applies;
// if the customer is not sure, a place with a coast gives a mixture (assumption).
func ClimatesAt(place, shore string) ([]Weighted, error) {
	places, shores := []Weighted{{place, 1}}, []Weighted{{shore, 1}}
	if place == NotSure {
		places = data().placeNotSure
	} else if p, ok := PlaceOf(place); ok && p.Coast && shore == NotSure {
		shores = data().shoreNotSure
	}
	var out []Weighted
	for _, p := range places {
		for _, s := range shores {
			id, err := ClimateAt(p.ID, s.ID)
			if err != nil {
				return nil, err
			}
			out = addWeight(out, id, float64(p.Chance*s.Chance))
		}
	}
	return out, nil
}

func addWeight(list []Weighted, id string, chance float64) []Weighted {
	for i := range list {
		if list[i].ID == id {
			list[i].Chance += chance
			return list
		}
	}
	return append(list, Weighted{id, chance})
}
