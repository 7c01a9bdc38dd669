package rates

import "underpaint/engine/car"

// The ids of units, rules for a quantity, areas and stages.
const (
	Litre    = "litre"
	Kilogram = "kilogram"
	Each     = "each"

	ByFilm = "film"
	PerM2  = "per_m2"
	PerCar = "per_car"

	Reached        = "reached"
	Outer          = "outer"
	InsideAndUnder = "inside_and_under"
	Frame          = "frame"
	Replaced       = "replaced"
	NoArea         = "none"

	StripStage = "strip"
	AfterStage = "after"
)

// Material is something that is used up on the car and charged by quantity.
type Material struct {
	ID       string
	Name     car.Words
	Unit     string // Litre, Kilogram or Each
	Price    Price  // per unit
	How      string // ByFilm, PerM2 or PerCar
	Film     Film   // if How is ByFilm
	Quantity float64
	Area     string // Reached, Outer, InsideAndUnder, Frame, Replaced; NoArea with PerCar
	Stage    string // StripStage or AfterStage
	// Factor multiplies the quantity, by index in car.Standards; 0 = not used at
	// that standard.
	Factor       [3]float64
	Scopes       [3]bool // by index in ScopeIDs
	Note, Source string
}

// UnitsPerM2 returns the quantity per square metre before the standard's factor, in the
// material's unit; 0 for a quantity per car.
func (m Material) UnitsPerM2() float64 {
	switch m.How {
	case ByFilm:
		return m.Film.LitresPerM2()
	case PerM2:
		return m.Quantity
	}
	return 0
}

// Film is a coat of paint of known thickness.
type Film struct {
	Coats        float64
	DryUM        float64 // dry film of one coat, µm
	VolumeSolids float64 // share by volume that remains when dry, of paint ready to spray
	Transfer     float64 // share of what leaves the gun that stays on the car
	BaseShare    float64 // share of the litres ready to spray that is the tin of base; 1 = not said
}

// LitresPerM2 returns litres ready to spray per square metre.
//
// A dry film of 1 µm on 1 m² is a millilitre of solids; the wet paint is that divided
// by the share of solids and by the share that lands. Geometry; in US units the same
// rule spreads a gallon (231 in³) of solids over 1604 ft² at one mil.
func (f Film) LitresPerM2() float64 {
	return f.Coats * f.DryUM / (1000 * f.VolumeSolids * f.Transfer)
}
