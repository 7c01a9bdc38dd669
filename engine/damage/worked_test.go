package damage

import (
	"encoding/json"
	"math"
	"os"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/exposure"
)

// worked is a case of an independent calculation of the same model by another
// hand, in another language, without any code in common.
type worked struct {
	Answer   string `json:"earlier_work_answer"`
	Body     string `json:"body_pattern"`
	Standard string
	Lived    []struct {
		Chance  float64
		Periods []struct {
			Place string
			Years float64
			Kept  string
		}
	} `json:"where_it_lived"`
	Expect struct {
		Condition map[string][]float64
		Repair    map[string][]float64 `json:"earlier_repair_of_item"`
		Dent      map[string]float64   `json:"filler_over_dent"`
		State     []float64            `json:"car_repair_state"`
		Level     []float64            `json:"history_level"`
	}
}

func readWorked(t *testing.T, name string) (w worked) {
	t.Helper()
	text, err := os.ReadFile("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(text, &w); err != nil {
		t.Fatal(err)
	}
	return w
}

func (w worked) model(t *testing.T, grids Grids) *Model {
	t.Helper()
	var lived []exposure.Alternative
	for _, l := range w.Lived {
		a := exposure.Alternative{Chance: l.Chance}
		for _, p := range l.Periods {
			a.Periods = append(a.Periods, exposure.Period{Climate: p.Place, Years: p.Years, Kept: p.Kept})
		}
		lived = append(lived, a)
	}
	levels, err := exposure.Exact(lived)
	if err != nil {
		t.Fatal(err)
	}
	body, err := car.Load(w.Body)
	if err != nil {
		t.Fatal(err)
	}
	m, err := New(Known{Body: body, Levels: levels, EarlierWork: w.Answer}, grids)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if math.IsNaN(got) || math.Abs(got-want) > tolerance {
		t.Errorf("%s: got %.7f, want %.7f", what, got, want)
	}
}

// TestWorkedCase compares every chance with the independent calculation, which
// prints six digits.
func TestWorkedCase(t *testing.T) {
	w := readWorked(t, "worked_01.json")
	m := w.model(t, StandardGrids)
	chances := m.Chances()
	if len(w.Expect.Condition) < 10 {
		t.Fatal("the case is not whole")
	}
	for id, want := range w.Expect.Condition {
		i, ok := m.Body.ItemNamed(id)
		if !ok {
			t.Fatalf("no item %s", id)
		}
		for k := range want {
			near(t, id+" "+car.ConditionIDs[k], chances[i].Condition[k], want[k], 2e-6)
		}
		for f, v := range w.Expect.Repair[id] {
			near(t, id+" "+FindingIDs[f], chances[i].Finding[f], v, 2e-6)
		}
		near(t, id+" dent", chances[i].Dent, w.Expect.Dent[id], 2e-6)
	}
	for r, v := range m.RepairState() {
		near(t, RepairStateIDs[r], v, w.Expect.State[r], 2e-6)
	}
}
