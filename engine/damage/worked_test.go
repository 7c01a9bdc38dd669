package damage_test

import (
	"math"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/damage"
	"underpaint/tests/worked"
)

// readWorked reads a case of the independent calculation, and what it says of its car.
func readWorked(t *testing.T, name string) (worked.Case, damage.Known) {
	t.Helper()
	w, err := worked.Read("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	body, err := car.Load(w.Body)
	if err != nil {
		t.Fatal(err)
	}
	known, err := w.Known(body)
	if err != nil {
		t.Fatal(err)
	}
	return w, known
}

func within(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if math.IsNaN(got) || math.Abs(got-want) > tolerance {
		t.Errorf("%s: got %.7f, want %.7f", what, got, want)
	}
}

// TestWorkedCases compares every chance with the independent calculation, which
// prints six digits. That it can go red: a leak of .06 in place of .07 moves chances
// in the third digit.
func TestWorkedCases(t *testing.T) {
	const digits = 1.5e-6
	for _, name := range []string{"worked_told.json", "worked_sides.json", "worked_survey.json"} {
		t.Run(name, func(t *testing.T) {
			w, known := readWorked(t, name)
			m, err := damage.New(known, damage.StandardGrids)
			if err != nil {
				t.Fatal(err)
			}
			chances := m.Chances()
			if len(w.Expect.Condition) < 10 {
				t.Fatal("the case is not complete")
			}
			for id, want := range w.Expect.Condition {
				i, ok := m.Body.ItemNamed(id)
				if !ok {
					t.Fatalf("no item %s", id)
				}
				for k := range want {
					within(t, id+" "+car.ConditionIDs[k], chances[i].Condition[k], want[k], digits)
				}
				for f, v := range w.Expect.Repair[id] {
					within(t, id+" "+damage.FindingIDs[f], chances[i].Finding[f], v, digits)
				}
				within(t, id+" dent", chances[i].Dent, w.Expect.Dent[id], digits)
			}
			for r, v := range m.RepairState() {
				within(t, damage.RepairStateIDs[r], v, w.Expect.State[r], digits)
			}
			for n, v := range m.HistoryLevel() {
				within(t, "history", v, w.Expect.Level[n], digits)
			}
			within(t, "covered", m.Covered(), w.Expect.Covered, digits)
			within(t, "mean of the car's factor", m.CarFactor(), w.Expect.MeanK, digits)
		})
	}
}
