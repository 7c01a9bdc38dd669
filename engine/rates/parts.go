package rates

import (
	"underpaint/engine/car"
	"underpaint/engine/money"
)

// Parts says what replacement parts cost.
type Parts struct {
	PriceFactor money.Decimal // multiplies the starting prices
	Handling    Percent
	Prices      []PartPrice // in file order
	// AsTheyShould says that every car has all its parts and every bought part fits until
	// somebody has found otherwise: the shop counts that elsewhere.
	AsTheyShould bool
	Source       string
}

// PartPrice is what the shop knows about one part: its price for one way of repair, and
// where it comes from.
type PartPrice struct {
	Body         string // "" = every body that has the part
	Part         string
	Way          car.Way
	Priced       bool             // false: starting price × factor
	Published    [3]money.Decimal // low, likely, high in major units, if Priced
	Price        [3]float64       // the binary numbers nearest to them
	Had          string           // "" = as the starting figures
	Fit          string           // one of FitIDs, "" = not said
	Weeks        [3]float64       // until another one is there, low, likely, high; zero = as the starting figures
	HasUsedShare bool
	UsedShare    float64 // of parts that must be found, how many are used ones
	Note, Source string
}

// SetPrice sets low, likely and high in major units, and says whether none is below the
// one before it.
func (p *PartPrice) SetPrice(published [3]money.Decimal) bool {
	p.Priced, p.Published, p.Price = true, published, nearest(published)
	return !falling(published)
}

// Find returns the shop's own entry for a part. An entry for this body takes precedence
// over one for every body.
func (p Parts) Find(body, part string, way car.Way) (PartPrice, bool) {
	best, found := PartPrice{}, false
	for _, one := range p.Prices {
		if one.Part != part || one.Way != way || (one.Body != "" && one.Body != body) {
			continue
		}
		if !found || one.Body != "" {
			best, found = one, true
		}
	}
	return best, found
}

// HadAs says where the shop gets the part, or "" if the rates do not say.
func (p Parts) HadAs(body, part string) string {
	had := ""
	for _, one := range p.Prices {
		if one.Part != part || one.Had == "" {
			continue
		}
		if one.Body == body {
			return one.Had
		}
		if one.Body == "" {
			had = one.Had
		}
	}
	return had
}

// Kinds are the tables of what is done; each part names the one that applies to it.
var Kinds = []string{"outer", "hidden", "structural", "structural_near_mounting"}

// WhatIsDone is the shop's own table: the probability of each way by standard (as in
// car.Standards), kind (as in Kinds) and condition (as in car.ConditionIDs). Every row
// adds to 1.
type WhatIsDone struct {
	Chance [3][4][car.Conditions][car.Ways]float64
}
