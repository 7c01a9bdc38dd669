package message

import (
	"encoding/json"
	"strings"
	"testing"

	"underpaint/engine/carfile"
)

// ask sends one request about a car and decodes the reply.
func ask(t testing.TB, e *Engine, what, car string) map[string]any {
	t.Helper()
	var reply map[string]any
	text := e.Ask([]byte(`{"id":7,"ask":` + what + `,"car":` + car + `}`))
	if err := json.Unmarshal(text, &reply); err != nil {
		t.Fatalf("%v in %.200s", err, text)
	}
	return reply
}

// TestFaults: the tally names every fault with its path and still counts everything else.
// A range is refused.
func TestFaults(t *testing.T) {
	for _, c := range []struct{ name, from, to, path, expected string }{
		{"item of another body", `{"on":"front_floor.left"`, `{"on":"chassis_rail.left"`, "survey[4].on", "a part of this body"},
		{"twice at one stage", `{"on":"front_floor.left"`, `{"on":"outer_sill.left"`, "survey[4].on", "survey[0] records this part already"},
		{"opened before stripping", `,{"stage":"survey","on":"2026-06-20"},{"stage":"opening_up","on":"2026-07-01"}]`, `]`, "opened[0].box", "after the survey, because closed boxes are opened then"},
		{"survey not begun", `{"stage":"survey","on":"2026-06-20"},{"stage":"opening_up","on":"2026-07-01"}]`, `{"stage":"opening_up","on":"2026-07-01"}]`, "stages", "the strip and survey first"},
		{"box opened before the survey", `{"stage":"survey","on":"2026-06-20"},{"stage":"opening_up","on":"2026-07-01"}]`, `{"stage":"opening_up","on":"2026-07-01"}]`, "opened[0].box", "the strip and survey first"},
		{"a part that is missing, with a condition", `"stage":"survey","condition":"sound"`, `"stage":"survey","condition":"sound","also":["bad_weld","missing"]`, "survey[4].also[1]", "either missing or a condition"},
		{"sure of no condition", `"could_not_see":true`, `"could_not_see":true,"sure":true`, "survey[3].sure", "a condition that was checked again"},
		{"sure of an item of another body", `{"on":"front_floor.left"`, `{"sure":true,"on":"chassis_rail.left"`, "survey[4].on", "a part of this body"},
		{"box not opened", `"opened":[{"box":"sill.left","at":"2026-07-01T09:30"}],`, ``, "survey[2].stage", "the box sill.left"},
		{"opened, but no closed box", `{"on":"inner_sill.left","stage":"opening_up"`, `{"on":"front_floor.right","stage":"opening_up"`, "survey[2].stage", "not in a closed box"},
		{"unknown box", `"box":"sill.left"`, `"box":"roof"`, "opened[0].box", "a closed box"},
		{"could not see, yet seen", `"could_not_see":true`, `"could_not_see":true,"condition":"sound"`, "survey[3].could_not_see", "only one of the two"},
		{"finding that the part cannot have", `"also":["brazed"]`, `"also":["packed"]`, "survey[0].also[0]", "that this part can have"},
		{"dent in a hidden part", `"condition":"heavy_pitting"`, `"condition":"heavy_pitting","dent":true`, "survey[1].dent", "only an outer part"},
		{"lead where there is none", `"stage":"survey","condition":"sound"`, `"stage":"survey","condition":"sound","lead_failed":1`, "survey[4].lead_failed", "at most 0"},
		{"stages out of order", `{"stage":"survey","on":"2026-06-20"}`, `{"stage":"survey","on":"2026-06-01"}`, "stages[1].on", "no earlier than"},
		{"look that does not fit", `{"look":"tap","on":"inner_sill.left"`, `{"look":"carpet","on":"inner_sill.left"`, "looks[1].on", "that the check carpet can be made on"},
		{"structural metal left", `"way":"section"`, `"way":"leave"`, "ways[0].way", "one of "},
		{"way for an unrecorded item", `"ways":[{"on":"outer_sill.left"`, `"ways":[{"on":"outer_sill.right"`, "ways[0].on", "whose condition is recorded"},
		{"hours of a trade without any", `"strip_hours":{"prep":120.5}`, `"strip_hours":{"body":12}`, "strip_hours.body", ""},
		{"not a finding of the car", `"whole_car":["twist"]`, `"whole_car":["brazed"]`, "whole_car[0]", "about the whole car"},
	} {
		t.Run(c.name, func(t *testing.T) {
			car := strings.Replace(seenCar, c.from, c.to, 1)
			if car == seenCar {
				t.Fatal("the case changes nothing")
			}
			e := opened(t)
			tally := ask(t, e, `"tally"`, car)
			named := false
			for _, f := range tally["faults"].([]any) {
				fault := f.(map[string]any)
				named = named || fault["path"] == c.path && strings.Contains(fault["expected"].(string), c.expected)
			}
			if !named {
				t.Errorf("want %s, %s: %v", c.path, c.expected, tally["faults"])
			}
			if tally["canonical"] != "" {
				t.Error("a file with a fault is offered for keeping as whole")
			}
			if done := tally["survey"].(map[string]any)["done"].(float64); done < 3 {
				t.Errorf("the rest of the survey does not count: %v", done)
			}
			reply := ask(t, e, `"range","effort":"rough"`, car)
			if reply["kind"] != "refused" || reply["rows"] != nil {
				t.Errorf("a range in spite of it: %.100v", reply)
			}
			decoded, err := carfile.Decode([]byte(car))
			if err != nil {
				t.Fatal(err)
			}
			if len(decoded.Check()) == 0 {
				t.Error("the prompt finds nothing wrong")
			}
		})
	}
}

// TestTwoBodiesOneSurvey: a survey needs a car with one body.
func TestTwoBodiesOneSurvey(t *testing.T) {
	car := strings.Replace(seenCar, `["two_door_unitary"]`, `["two_door_unitary","hardtop_on_frame"]`, 1)
	for _, what := range []string{`"range","effort":"rough"`, `"tally"`, `"sheet"`} {
		if reply := ask(t, opened(t), what, car); reply["kind"] != "refused" || reply["path"] != "bodies" {
			t.Errorf("%s: %.200v", what, reply)
		}
	}
}

// TestTally: the counts of a car with few records are as counted by hand here.
func TestTally(t *testing.T) {
	tally := ask(t, opened(t), `"tally"`, seenCar)
	for key, want := range map[string]float64{"survey": 4, "opening_up": 1, "walk_round": 2} {
		if got := tally[key].(map[string]any)["done"]; got != want {
			t.Errorf("%s: %v done, want %v", key, got, want)
		}
	}
	if got := tally["to_do"].(map[string]any)["line"]; got != "What to do: 1 undecided" { // the inner sill
		t.Error(got)
	}
	if got := tally["not_recorded_line"]; got != "Not recorded: 87 parts" { // of 91
		t.Error(got)
	}
	for _, z := range tally["zones"].([]any) {
		zone := z.(map[string]any)
		for _, id := range zone["rest"].([]any) {
			if strings.HasPrefix(id.(string), "inner_sill") || id == "front_floor.left" {
				t.Errorf("%s is offered as sound unseen", id)
			}
		}
	}
}

// beforeAfterOf asks until the answer is settled.
func beforeAfterOf(t *testing.T, e *Engine, car string) (reply map[string]any) {
	t.Helper()
	for range 200 {
		if reply = ask(t, e, `"before_after"`, car); reply["state"] != "refining" {
			return reply
		}
	}
	t.Fatal("never settled")
	return nil
}

// TestBeforeAfter: every stage reached has a row, the last one narrower than the first
// here, and the reply says what changed.
func TestBeforeAfter(t *testing.T) {
	reply := beforeAfterOf(t, opened(t), seenCar)
	rows := reply["rows"].([]any)
	var names []string
	for _, r := range rows {
		row := r.(map[string]any)
		names = append(names, row["id"].(string))
		if row["done"] != true || len(row["dots"].([]any)) != 20 {
			t.Errorf("row %v is not done", row["id"])
		}
	}
	if got := strings.Join(names, " "); got != "told walk_round survey opening_up chosen" {
		t.Error(got)
	}
	if len(reply["headline"].([]any)) != 3 {
		t.Error(reply["headline"])
	}
	top := reply["items"].([]any)[0].(map[string]any)
	if top["on"] != "inner_sill.left" {
		t.Errorf("opening the left box moved %v most", top)
	}
}

// TestComparedWays: a way compared with itself makes no difference; more expensive ways
// do.
func TestComparedWays(t *testing.T) {
	reply := ask(t, opened(t), `"compare_ways","on":"outer_sill.left"`, seenCar)
	for _, w := range reply["ways"].([]any) {
		way := w.(map[string]any)
		if same := way["line"] == "No difference."; same != (way["id"] == "section") {
			t.Errorf("%v: %v", way["id"], way["line"])
		}
	}
}

// TestWorth: before anyone has seen the car, every stage to come is valued and the reply
// offers checks that a customer can do.
func TestWorth(t *testing.T) {
	e := opened(t)
	reply := ask(t, e, `"worth","for":"customer"`, goodCar)
	looks := reply["looks"].([]any)
	if len(looks) == 0 {
		t.Fatal("no looks")
	}
	for _, l := range looks {
		look := l.(map[string]any)
		if id := look["look"]; id == "jack" || id == "prod" || id == "scope" || id == "gauge" {
			t.Errorf("a customer is offered %v", id)
		}
		if look["how"] == "" || look["place_line"] == "" && look["look"] != "magnet" && look["look"] != "photos" {
			t.Errorf("without words: %v", look)
		}
	}
	for n := 0; reply["state"] == "refining"; n++ {
		if n == 200 { // more than the odds and the cars of three stages on twelve outcomes
			t.Fatal("never settled")
		}
		if len(reply["stages"].([]any)) > 0 {
			t.Fatal("widths before they are worked out")
		}
		reply = ask(t, e, `"worth","for":"customer"`, goodCar)
	}
	if reply["done"] != reply["of"] || len(listIn(t, reply, "stages")) != 3 {
		t.Errorf("settled after %v outcomes with %v", reply["done"], reply["stages"])
	}
	done := ask(t, e, `"worth"`, seenCar)
	if done["state"] != "settled" || len(done["stages"].([]any)) != 0 || len(done["looks"].([]any)) != 0 {
		t.Errorf("a car that has been through every stage: %.200v", done)
	}
}
