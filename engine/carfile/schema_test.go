package carfile

import (
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/damage"
	"underpaint/engine/olddamage"
	"underpaint/tests/schemas"
)

// TestSchema: the groups of the schema have the members that the program knows, and the
// test compares every group.
func TestSchema(t *testing.T) {
	want := map[string][]string{
		"":                                       fileKeys,
		"properties.made":                        madeKeys,
		"properties.came_to":                     StepIDs[:],
		"properties.strip_hours":                 car.TradeIDs[:],
		"$defs.life":                             lifeKeys,
		"$defs.look":                             lookKeys,
		"$defs.stage":                            stageKeys,
		"$defs.record":                           recordKeys,
		"$defs.was":                              wasKeys,
		"$defs.opened":                           openedKeys,
		"$defs.choice":                           choiceKeys,
		"properties.hit":                         hitKeys,
		"properties.survey_car":                  surveyCarKeys,
		"properties.survey_car.properties.zones": olddamage.ZoneIDs[:],
	}
	s := schemas.Compare(t, "../../site/schema/car.schema.json", want)
	if format := schemas.At(s, "properties.format")["const"]; format != Format {
		t.Errorf("format %v", format)
	}
	for path, want := range map[string][]string{
		"properties.bodies.items":                 car.BodyIDs,
		"$defs.record.properties.condition":       car.ConditionIDs[:],
		"$defs.record.properties.finding":         damage.FindingIDs[:],
		"$defs.choice.properties.way":             car.WayIDs[:],
		"$defs.stage.properties.stage":            StageIDs,
		"properties.earlier_work":                 damage.Answers,
		"properties.covered":                      CoveredAnswers,
		"properties.another_body":                 AnotherBodyAnswers,
		"properties.hit.properties.answer":        olddamage.Answers,
		"properties.survey_car.properties.square": olddamage.SquareIDs,
		"$defs.manner":                            olddamage.MannerIDs[:],
		"properties.hit.properties.where.items":   olddamage.ZoneIDs[:],
		"$defs.life.properties.kept":              append(append([]string{NotSure}, KeptIDs...), "mostly_garaged", "mostly_outside"),
	} {
		var got []string
		for _, id := range schemas.At(s, path)["enum"].([]any) {
			got = append(got, id.(string))
		}
		if !schemas.SameSet(got, want) {
			t.Errorf("%s: schema has %v, the program takes %v", path, got, want)
		}
	}
}
