package damage_test

import (
	"encoding/json"
	"math"
	"os"
	"slices"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/damage"
	"underpaint/engine/evidence"
	"underpaint/engine/exposure"
)

// worked is a case of an independent calculation of the same model by another
// hand, in another language, without any code in common.
type worked struct {
	Answer string `json:"earlier_work_answer"`
	Body   string `json:"body_pattern"`
	Lived  []struct {
		Chance  float64
		Periods []struct {
			Place     string
			Years     float64
			Kept      string
			RoadYears float64 `json:"road_years"`
		}
	} `json:"where_it_lived"`
	Tests     []workedLook `json:"tests"`
	SideTests []workedLook `json:"side_tests"`
	Survey    map[string]struct {
		Condition string
		Findings  []string
		Lead      *int `json:"failed_lead_joints"`
	}
	ThisYear int `json:"this_year"`
	Expect   struct {
		Condition map[string][]float64
		Repair    map[string][]float64 `json:"earlier_repair_of_item"`
		Dent      map[string]float64   `json:"filler_over_dent"`
		State     []float64            `json:"car_repair_state"`
		Level     []float64            `json:"history_level"`
		Covered   float64
		MeanK     float64 `json:"mean_K"`
	}
}

type workedLook struct{ Item, Side, Test, Result, Who string }

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

func (w worked) levels(t *testing.T) []exposure.Level {
	t.Helper()
	var lived []exposure.Alternative
	for _, l := range w.Lived {
		a := exposure.Alternative{Chance: l.Chance}
		for _, p := range l.Periods {
			one := exposure.Period{Climate: p.Place, Years: p.Years, Kept: p.Kept}
			if p.RoadYears > 0 {
				one.Years, one.Use = p.RoadYears, exposure.OnRoad
				a.Periods = append(a.Periods, one)
				one.Years, one.Use = p.Years-p.RoadYears, exposure.OffRoad
			}
			a.Periods = append(a.Periods, one)
		}
		lived = append(lived, a)
	}
	levels, err := exposure.Exact(lived, exposure.Asked{Year: w.ThisYear})
	if err != nil {
		t.Fatal(err)
	}
	return levels
}

var workedResults = map[string]string{"bad": evidence.Yes, "good": evidence.No, "could not check": evidence.CouldNot}

func (w worked) known(t *testing.T) damage.Known {
	t.Helper()
	body, err := car.Load(w.Body)
	if err != nil {
		t.Fatal(err)
	}
	var looks []evidence.Look
	var byCustomers []damage.Worst
	for _, l := range slices.Concat(w.Tests, w.SideTests) {
		if kind, _ := evidence.KindOf(l.Test); l.Who == evidence.ByCustomer && !kind.CustomerCan {
			byCustomers = append(byCustomers, workedSide(t, body, kind, l))
			continue
		}
		looks = append(looks, evidence.Look{Look: l.Test, On: l.Item + l.Side, Result: workedResults[l.Result], By: l.Who})
	}
	seen, err := evidence.FromLooks(body, looks)
	if err != nil {
		t.Fatal(err)
	}
	k := damage.Known{Body: body, Levels: w.levels(t), EarlierWork: w.Answer, Seen: seen.Items, Worst: append(seen.Worst, byCustomers...),
		Cover: damage.Cover{Fresh: seen.Cover, Seen: seen.CoveredItems, Worst: seen.CoveredWorst}, LeadFailed: make([]int, len(body.Items))}
	if k.Cover.Worst != nil {
		k.Cover.Worst = append(k.Cover.Worst, byCustomers...)
	}
	for i := range k.LeadFailed {
		k.LeadFailed[i] = -1
	}
	for id, r := range w.Survey {
		i, ok := body.ItemNamed(id)
		if !ok {
			t.Fatalf("no item %s", id)
		}
		e := evidence.SurveyEntry{Condition: r.Condition}
		if len(r.Findings) == 1 {
			e.Finding = r.Findings[0]
		} else if r.Findings != nil {
			e.Finding = "none"
		}
		read, err := evidence.Reading(body.PartOf(i), e)
		if err != nil {
			t.Fatal(err)
		}
		k.Seen[i] = evidence.Joined(k.Seen[i], read)
		if k.Cover.Seen != nil {
			k.Cover.Seen[i] = evidence.Joined(k.Cover.Seen[i], read)
		}
		if r.Lead != nil {
			k.LeadFailed[i] = *r.Lead
		}
	}
	return k
}

// workedSide is a good result at a whole side that the case has a customer make, which
// the program leaves to the shop: its log likelihood counts .6.
func workedSide(t *testing.T, b *car.Body, kind evidence.Kind, l workedLook) damage.Worst {
	t.Helper()
	if l.Result != "good" {
		t.Fatalf("%s by a customer: %s", l.Test, l.Result)
	}
	w := damage.Worst{Items: evidence.OnSide(b, kind.ID, l.Side)}
	for k := range w.Likely {
		w.Likely[k] = math.Pow(1-kind.ChanceOfYes(k, damage.NoFinding, false), 0.6)
	}
	return w
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
			w := readWorked(t, name)
			known := w.known(t)
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
