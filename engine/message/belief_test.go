package message

import (
	"bytes"
	"strings"
	"testing"

	"underpaint/engine/carfile"
)

// beliefOf is what a session goes on after it was asked for the range of a car.
func beliefOf(t *testing.T, s *Session, text string) belief {
	t.Helper()
	c, err := carfile.Decode([]byte(text))
	if err == nil {
		err = s.Open(c)
	}
	if err != nil {
		t.Fatal(err)
	}
	return s.job.runs[0].belief
}

// TestOneModelServesAll: what says nothing about rust leaves the model as it is; the
// rows of the stages and what hangs on them share the range's; what says something
// makes another.
func TestOneModelServesAll(t *testing.T) {
	e := opened(t)
	s := e.session
	car := strings.Replace(seenCar, `"way":"section"`, `"way":"full"`, 1) // which every condition here allows
	first := beliefOf(t, s, car)
	for _, c := range []struct {
		name, from, to string
		same           bool
	}{
		{"another standard", `"show"`, `"driver"`, true},
		{"another scope", `"standard":"show"`, `"standard":"show","scope":"outside_only"`, true},
		{"another note", `"note":"two plates"`, `"note":"three plates"`, true},
		{"further work", `"also":["brazed"],`, ``, true},
		{"no dent", `"dent":true`, `"dent":false`, false},
		{"another finding", `"finding":"patch_over_rust"`, `"finding":"filler_over_hole"`, false},
		{"another year", `"year":1967`, `"year":1957`, false},
		{"another condition", `"condition":"rusted_through"`, `"condition":"sound"`, false},
		{"another answer to a look", `"result":"yes"`, `"result":"no"`, false},
	} {
		text := strings.Replace(car, c.from, c.to, 1)
		if text == car {
			t.Fatalf("%s: %s does not stand in the car", c.name, c.from)
		}
		if same := beliefOf(t, s, text).model == first.model; same != c.same {
			t.Errorf("%s: the same model %v, expected %v", c.name, same, c.same)
		}
		first = beliefOf(t, s, car)
	}
	ask(t, e, `"worth"`, car)
	if _, now := s.stages.lastTwo(); now.model != first.model {
		t.Error("the last stage has a model of its own")
	}
}

// TestSharingChangesNothing: replies after others, which leave models behind, are those
// of a fresh engine.
func TestSharingChangesNothing(t *testing.T) {
	driver := strings.Replace(seenCar, `"show"`, `"driver"`, 1)
	shared := opened(t)
	settled := func(e *Engine, what, car string) (reply []byte) {
		for range 100 {
			reply = e.Ask([]byte(`{"id":7,"ask":` + what + `,"car":` + car + `}`))
			if !bytes.Contains(reply, []byte(`"state":"refining"`)) {
				return reply
			}
		}
		t.Fatalf("%s: never settled", what)
		return nil
	}
	for _, what := range []string{`"range","effort":"settle"`, `"before_after"`, `"two_ways"`, `"range","effort":"settle"`} {
		for _, car := range []string{seenCar, driver} {
			if got, want := settled(shared, what, car), settled(opened(t), what, car); !bytes.Equal(got, want) {
				t.Errorf("%s: %.300s, from a fresh engine %.300s", what, got, want)
			}
		}
	}
}
