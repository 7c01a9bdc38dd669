package carfile

import (
	"encoding/json"
	"os"
	"slices"
	"strings"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/damage"
)

// TestSchema: the groups of the schema have the members that the program knows, and
// no group is left uncompared.
func TestSchema(t *testing.T) {
	text, err := os.ReadFile("../../site/schema/car.schema.json")
	if err != nil {
		t.Fatal(err)
	}
	var s map[string]any
	if err := json.Unmarshal(text, &s); err != nil {
		t.Fatal(err)
	}
	want := map[string][]string{
		"":                       fileKeys,
		"properties.made":        madeKeys,
		"properties.came_to":     StepIDs[:],
		"properties.strip_hours": car.TradeIDs[:],
		"$defs.life":             lifeKeys,
		"$defs.look":             lookKeys,
		"$defs.stage":            stageKeys,
		"$defs.record":           recordKeys,
		"$defs.was":              wasKeys,
		"$defs.opened":           openedKeys,
		"$defs.choice":           choiceKeys,
	}
	compared := 0
	groups(s, "", func(path string, group map[string]any) {
		known, there := want[path]
		if !there {
			t.Errorf("the schema has a group %q that the program does not", path)
			return
		}
		compared++
		var got []string
		for name := range group["properties"].(map[string]any) {
			got = append(got, name)
		}
		if !sameSet(got, known) {
			t.Errorf("%s: schema has %v, the program knows %v", path, got, known)
		}
		if group["additionalProperties"] != false {
			t.Errorf("%s takes unknown members", path)
		}
	})
	if compared != len(want) {
		t.Errorf("%d groups compared, want %d", compared, len(want))
	}
	if format := at(s, "properties.format")["const"]; format != Format {
		t.Errorf("format %v", format)
	}
	for path, want := range map[string][]string{
		"properties.bodies.items":           car.BodyIDs,
		"$defs.record.properties.condition": car.ConditionIDs[:],
		"$defs.record.properties.finding":   damage.FindingIDs[:],
		"$defs.choice.properties.way":       car.WayIDs[:],
		"$defs.stage.properties.stage":      StageIDs,
		"properties.earlier_work":           damage.Answers,
	} {
		var got []string
		for _, id := range at(s, path)["enum"].([]any) {
			got = append(got, id.(string))
		}
		if !sameSet(got, want) {
			t.Errorf("%s: schema has %v, the program takes %v", path, got, want)
		}
	}
}

func groups(v any, path string, f func(path string, group map[string]any)) {
	group, ok := v.(map[string]any)
	if !ok {
		return
	}
	if _, closed := group["additionalProperties"]; closed {
		f(path, group)
	}
	for name, x := range group {
		groups(x, strings.TrimPrefix(path+"."+name, "."), f)
	}
}

func at(s map[string]any, path string) map[string]any {
	for _, name := range strings.Split(path, ".") {
		s, _ = s[name].(map[string]any)
	}
	return s
}

func sameSet(a, b []string) bool {
	a, b = slices.Clone(a), slices.Clone(b)
	slices.Sort(a)
	slices.Sort(b)
	return slices.Equal(a, b)
}
