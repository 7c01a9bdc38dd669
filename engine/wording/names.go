package wording

import (
	"strings"

	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/estimate"
	"underpaint/engine/exposure"
)

var standardNames = map[string]string{"driver": "Driver standard", "show": "Show standard", "concours": "Concours standard"}

// Standard names a standard by its id.
func Standard(id string) string { return standardNames[id] }

var scopeNames = map[string]string{"whole_body": "whole body", "outside_only": "outside only", "metalwork_only": "metalwork only"}

// Stage names a stage at which more becomes known about a car, by its id.
func (t *Text) Stage(id string) string {
	switch id {
	case carfile.Told:
		return "From your answers"
	case carfile.WalkRound:
		return t.say("Walk-around", "Walk-round")
	case carfile.Survey:
		return StripAndSurvey
	case carfile.OpeningUp:
		return "Opening up"
	}
	return "Work chosen"
}

// StripAndSurvey is the name of the first stage of the work.
const StripAndSurvey = "Strip and survey"

// afterStage begins a sentence about what holds after a stage.
func (t *Text) afterStage(id string) string {
	switch id {
	case carfile.WalkRound:
		return t.say("After the walk-around", "After the walk-round")
	case carfile.Survey:
		return "After the survey"
	case carfile.OpeningUp:
		return "After opening up"
	}
	return "With the chosen work"
}

// Step names the k-th stage of the plan, counted from 0.
func (t *Text) Step(k int) string {
	return [...]string{StripAndSurvey, "Structure and hidden metal", "Outer metal",
		t.say("Body and block, paint", "Filling and flatting, paint"), "Assembly and remaining work"}[k]
}

// Item names an item of a body, with its side where it has one.
func (t *Text) Item(b *car.Body, i int) string { return b.ItemName(i, t.words) }

// Pocket names a pocket, with its side where it has one.
func (t *Text) Pocket(b *car.Body, k int) string {
	p := &b.Pockets[k]
	name := t.In(b.Groups[p.Group].Name)
	if dot := strings.IndexByte(p.ID, '.'); dot >= 0 {
		name += ", " + strings.ReplaceAll(p.ID[dot+1:], "_", " ")
	}
	return name
}

// Trade names a trade by its index.
func (t *Text) Trade(k int) string { return t.In(t.shop.Common.Trades[k]) }

// Condition names a condition by its index on the scale.
func (t *Text) Condition(k int) string { return t.In(t.shop.Common.Conditions[k]) }

// ConditionLooks says what a condition looks like.
func (t *Text) ConditionLooks(k int) string { return t.shop.Common.LooksLike[k] }

// Way names a way of repairing a part.
func (t *Text) Way(w car.Way) string { return t.In(t.shop.Common.Ways[w]) }

// Kind names a kind of line of the range.
func (t *Text) Kind(k estimate.Kind) string {
	switch k {
	case estimate.StripStage:
		return StripAndSurvey
	case estimate.Materials:
		return "Materials"
	case estimate.Parts:
		return "Parts"
	case estimate.SentOut:
		return t.say("Work sent out (sublet)", "Work sent out (subcontract)")
	case estimate.Supplies:
		return t.say("Shop supplies", "Consumables")
	case estimate.AnotherBodyKind:
		return "Another body"
	case estimate.Tax:
		return t.In(t.rates.Tax.Name) + " (added on top)"
	}
	return t.Trade(int(k - estimate.MetalLabour))
}

func (t *Text) lifePlace(l carfile.Life) string {
	if p, ok := exposure.PlaceOf(l.Place); ok {
		return t.In(car.Words(p.Name))
	}
	if c, ok := exposure.ClimateOf(l.Place); ok {
		return lowerFirst(t.In(car.Words(c.Name)))
	}
	return "place not known"
}

// customerPlaces are the places on the car that the customer is asked about.
var customerPlaces = map[string]car.Words{
	"behind_front_wheels": {US: "Front fenders behind the wheel", UK: "Front wings behind the wheel"},
	"rockers":             {US: "Rockers", UK: "Sills"},
	"door_bottoms":        {US: "Door bottoms", UK: "Door bottoms"},
	"rear_arches":         {US: "Rear wheel openings", UK: "Rear wheel arches"},
	"behind_rear_wheels":  {US: "Behind the rear wheels", UK: "Behind the rear wheels"},
	"floors":              {US: "Floor, with the carpet up", UK: "Floor, with the carpet up"},
	"trunk_floor":         {US: "Trunk floor, with the mat up", UK: "Boot floor, with the mat up"},
	"glass":               {US: "Around the front and rear glass", UK: "Around the front and rear glass"},
}

// CustomerPlace names, by its id, a place that the customer is asked about.
func (t *Text) CustomerPlace(id string) string { return t.In(customerPlaces[id]) }

// walkSections are the sections of the walk-around, one for each place to stand.
var walkSections = map[string]car.Words{
	"doors":  {US: "Doors and gaps", UK: "Doors and gaps"},
	"front":  {US: "Front and hood", UK: "Front and bonnet"},
	"left":   {US: "Left side, front to back", UK: "Left (nearside), front to back"},
	"rear":   {US: "Rear and trunk", UK: "Rear and boot"},
	"right":  {US: "Right side, back to front", UK: "Right (offside), back to front"},
	"glass":  {US: "Glass, cowl and roof", UK: "Glass, scuttle and roof"},
	"inside": {US: "Inside, carpets up", UK: "Inside, carpets up"},
	"under":  {US: "Underneath, with the car safely supported", UK: "Underneath, with the car safely supported"},
	"jack":   {US: "Lift at the jacking point", UK: "Lift at the jacking point"},
	"water":  {US: "Water (do this last)", UK: "Water (do this last)"},
	"hits":   {US: "Old accidents", UK: "Old accidents"},
	"papers": {US: "Photographs, bills and what sellers said", UK: "Photographs, bills and what sellers said"},
}

// WalkSection names a section of the walk-around by its id.
func (t *Text) WalkSection(id string) string { return t.In(walkSections[id]) }
