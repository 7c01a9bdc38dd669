package carfile

import (
	"errors"
	"strings"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/damage"
	"underpaint/engine/strict"
)

// TestWishAgainstTheStrip: a file that says two things about the strip that cannot both
// be true is refused with an error that has the path of one of them.
func TestWishAgainstTheStrip(t *testing.T) {
	for _, c := range []struct{ name, from, to, path, found, expected string }{
		{"taken apart by the customer, and hours of the shop", `"standard":"show"`, `"standard":"show","options":["own_disassembly"]`, "options[0]", "own_disassembly", "an option of this body"},
		{"hours of a strip that was not begun", `"stages":[{"stage":"walk_round","on":"2026-06-04","rates":"ab12c de34f"},{"stage":"survey","on":"2026-06-20"},{"stage":"opening_up","on":"2026-07-01"}]`,
			`"stages":[{"stage":"walk_round","on":"2026-06-04"}]`, "strip_hours", "hours of a stage that has not begun", "the survey stage with its date"},
		{"hours of a trade that the strip has none of", `"strip_hours":{"prep":120.5}`, `"strip_hours":{"body":12}`, "strip_hours.body", "12", "no hours: the strip and survey has no work of this trade"},
	} {
		text := strings.Replace(seenCar, c.from, c.to, 1)
		if text == seenCar {
			t.Fatalf("%s: the case changes nothing", c.name)
		}
		read, err := Decode([]byte(text))
		wrong := []error{err}
		if err == nil {
			wrong = read.Check()
		}
		named := false
		for _, err := range wrong {
			var at *strict.Error
			named = named || errors.As(err, &at) && at.Path == c.path && strings.Contains(at.Found, c.found) && strings.Contains(at.Expected, c.expected)
		}
		if !named {
			t.Errorf("%s: %v, want %s: found %s, expected %s", c.name, wrong, c.path, c.found, c.expected)
		}
	}
}

// TestHoursReadAsSaid: the hours in a file are read with the scope in the file. 66
// hours of fitting are quick for a whole body (73 likely) and slow where only the
// outside is taken down, with two thirds of the work on running gear and stand left out
// (56.25): the fitting after the strip becomes less in the first case and more in the
// second.
func TestHoursReadAsSaid(t *testing.T) {
	for scope, slow := range map[string]bool{"whole_body": false, "outside_only": true} {
		hours := func(entered string) int64 {
			c, err := Decode([]byte(strings.NewReplacer(`"standard":"show"`, `"standard":"show","scope":"`+scope+`"`, `"strip_hours":{"prep":120.5},`, entered).Replace(seenCar)))
			if err != nil {
				t.Fatal(err)
			}
			if wrong := c.Check(); len(wrong) > 0 {
				t.Fatal(wrong)
			}
			return fittingAfter(t, c)
		}
		if before, after := hours(""), hours(`"strip_hours":{"fit":66},`); (after > before) != slow || after == before {
			t.Errorf("%s: %d thousandths of fitting, with 66 hours entered %d", scope, before, after)
		}
	}
}

// fittingAfter is the fitting after the survey of a sound car on which the work goes
// neither fast nor slow, apart from what the file says, in thousandths of an hour.
func fittingAfter(t *testing.T, c *Car) int64 {
	t.Helper()
	b, table, err := c.atSample(c.Bodies[0])
	if err != nil {
		t.Fatal(err)
	}
	if table, err = table.With(c.Decided(b, Survey, false)); err != nil {
		t.Fatal(err)
	}
	u, bill, s := table.NewUniforms(), table.NewBill(), chance.NewStream(1, 1)
	u.Fill(&s)
	u.Car = [2]float64{.5, .5}
	n := len(b.Items)
	sound := &damage.Car{Condition: make([]int8, n), Finding: make([]damage.Finding, n), Dent: make([]bool, n), LeadFailed: make([]int8, n)}
	table.Price(sound, "mild", u, bill)
	return bill.AfterHours[car.Fit]
}

// TestStripBegun: the survey, opening up or hours of the strip mean that the strip has
// begun; a walk-around does not.
func TestStripBegun(t *testing.T) {
	for _, c := range []struct {
		name  string
		car   Recorded
		begun bool
	}{
		{"told", Recorded{}, false},
		{"walked round", Recorded{Stages: []Stage{{Stage: WalkRound}}}, false},
		{"surveyed", Recorded{Stages: []Stage{{Stage: WalkRound}, {Stage: Survey}}}, true},
		{"opened up", Recorded{Stages: []Stage{{Stage: OpeningUp}}}, true},
		{"hours entered", Recorded{StripHours: [car.Trades]float64{car.Fit: .1}}, true},
	} {
		if got := (&Car{Recorded: c.car}).StripBegun(); got != c.begun {
			t.Errorf("%s: begun %v", c.name, got)
		}
	}
}

// TestKeepOldMetal: the wish is read and written with the options of the body, counts
// before the survey and after it, and is an option of every body.
func TestKeepOldMetal(t *testing.T) {
	for _, body := range []string{"two_door_unitary", "pickup"} {
		text := strings.Replace(strings.Replace(goodCar, "two_door_unitary", body, 1), `"standard":"show"`, `"standard":"show","options":["keep_old_metal"]`, 1)
		c, err := Decode([]byte(text))
		if err != nil {
			t.Fatal(err)
		}
		b, err := c.OneBody()
		if err != nil {
			t.Fatal(err)
		}
		for _, stage := range []string{Told, Survey} {
			if !c.Decided(b, stage, true).KeepOldMetal {
				t.Errorf("%s, %s: the wish is lost", body, stage)
			}
		}
		if !strings.Contains(string(c.Text()), `"options":["keep_old_metal"]`) {
			t.Errorf("%s: written as %s", body, c.Text())
		}
		plain, err := Decode([]byte(strings.Replace(goodCar, "two_door_unitary", body, 1)))
		if err != nil || plain.Decided(b, Told, true).KeepOldMetal {
			t.Errorf("%s: a wish that nobody had (%v)", body, err)
		}
	}
}
