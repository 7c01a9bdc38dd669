package carfile

import (
	"errors"
	"strings"
	"testing"

	"underpaint/engine/strict"
)

// TestFiguresOfAStage: the code of a stage is read and written back; left out, it is not
// written; in another form it is refused with its path.
func TestFiguresOfAStage(t *testing.T) {
	file := func(stage string) string {
		return `{"format":"underpaint car 1","asked_in":2026,"bodies":["two_door_unitary"],"made":{"year":1967},"life":[{"place":"mild","kept":"driven_all_year"}],"standard":"show","scope":"whole_body","looks":[],"stages":[{"stage":"walk_round","on":"2026-06-02"` + stage + `}]}`
	}
	for _, stage := range []string{``, `,"figures":"0a1b2 c3d4e"`, `,"rates":"249fe 4a158","figures":"99999 fffff"`} {
		c, err := Decode([]byte(file(stage)))
		if err != nil {
			t.Fatalf("%s: %v", stage, err)
		}
		if text := string(c.Text()); !strings.Contains(text, `"on":"2026-06-02"`+stage+`}`) {
			t.Errorf("%s is not in %s", stage, text)
		}
	}
	for _, code := range []string{`""`, `"0A1B2 C3D4E"`, `"0a1b2c3d4e"`, `"0a1b2 c3d4"`, `"0a1b2 c3d4g"`, `"0a1b2-c3d4e"`, `17`, `null`} {
		_, err := Decode([]byte(file(`,"figures":` + code)))
		var complaint *strict.Error
		if !errors.As(err, &complaint) || complaint.Path != "stages[0].figures" || complaint.Found == "" || complaint.Expected == "" {
			t.Errorf("%s: %v", code, err)
		}
	}
}
