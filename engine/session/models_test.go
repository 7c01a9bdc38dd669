package session

import (
	"strings"
	"testing"
)

// modelOf opens a car and returns the model that the session uses for its range.
func modelOf(t *testing.T, s *Session, text string) conditionedModel {
	t.Helper()
	if err := s.Open(decoded(t, text)); err != nil {
		t.Fatal(err)
	}
	return s.car.runs[0].conditionedModel
}

// TestOneModelServesAll: a change that says nothing about rust keeps the model, and one
// that says something makes a new model. The rows of the stages share the range's model.
func TestOneModelServesAll(t *testing.T) {
	s := opened(t)
	car := strings.Replace(seenCar, `"way":"section"`, `"way":"full"`, 1) // which every condition here allows
	first := modelOf(t, s, car)
	for _, c := range []struct {
		name, from, to string
		same           bool
	}{
		{"another standard", `"show"`, `"driver"`, true},
		{"another scope", `"standard":"show"`, `"standard":"show","scope":"outside_only"`, true},
		{"another note", `"note":"two plates"`, `"note":"three plates"`, true},
		{"what an earlier hand left", `"also":["brazed"],`, ``, false},
		{"no dent", `"dent":true`, `"dent":false`, false},
		{"another finding", `"finding":"patch_over_rust"`, `"finding":"filler_over_hole"`, false},
		{"another year", `"year":1967`, `"year":1957`, false},
		{"another condition", `"condition":"rusted_through"`, `"condition":"sound"`, false},
		{"another answer to a check", `"result":"yes"`, `"result":"no"`, false},
	} {
		text := strings.Replace(car, c.from, c.to, 1)
		if text == car {
			t.Fatalf("%s: %s does not stand in the car", c.name, c.from)
		}
		if same := modelOf(t, s, text).model == first.model; same != c.same {
			t.Errorf("%s: the same model %v, expected %v", c.name, same, c.same)
		}
		first = modelOf(t, s, car)
	}
	if _, err := s.CheckValues(decoded(t, car), "shop"); err != nil {
		t.Fatal(err)
	}
	if _, now := s.stages.lastTwo(); now.model != first.model {
		t.Error("the last stage has a model of its own")
	}
}
