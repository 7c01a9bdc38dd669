package session_test

import (
	"fmt"

	"underpaint/engine/carfile"
	"underpaint/engine/rates"
	"underpaint/engine/session"
)

// One shop, one car, one range. Step does a slice of the work and returns the state, so
// that a page can show a rough range in between.
func Example() {
	s, err := session.New(rates.Sample())
	if err != nil {
		fmt.Println(err)
		return
	}
	c, err := carfile.Decode([]byte(`{"format": "underpaint car 1", "asked_in": 2026, "bodies": ["two_door_unitary"], "made": {"year": 1967},
		"life": [{"place": "mild", "kept": "driven_all_year"}], "standard": "show", "scope": "whole_body", "looks": []}`))
	if err != nil {
		fmt.Println(err)
		return
	}
	if err := s.Open(c); err != nil {
		fmt.Println(err)
		return
	}
	state := s.Step()
	for state == session.Refining {
		state = s.Step()
	}
	ranges := s.Ranges(state)
	for _, r := range ranges.Rows {
		fmt.Println(ranges.State, r.Body.ID, r.Standard)
		fmt.Println(s.Rates.Currency.TextWhole(r.Shown.Low), "to", s.Rates.Currency.TextWhole(r.Shown.High))
	}
	// Output:
	// settled two_door_unitary show
	// $75,000 to $175,000
}
