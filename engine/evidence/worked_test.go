package evidence

import (
	"encoding/json"
	"math"
	"os"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/damage"
	"underpaint/engine/exposure"
)

// worked is a case of an independent calculation of the same model by another
// hand, in another language, without any code in common; it prints six digits.
type worked struct {
	Body  string `json:"body_pattern"`
	Lived []struct {
		Chance  float64
		Periods []struct {
			Place string
			Years float64
			Kept  string
		}
	} `json:"where_it_lived"`
	Tests     []workedTest
	SideTests []workedTest `json:"side_tests"`
	Survey    map[string]struct {
		Condition string
		Findings  []string
	}
	Expect struct {
		Condition map[string][]float64
		Repair    map[string][]float64 `json:"earlier_repair_of_item"`
		Dent      map[string]float64   `json:"filler_over_dent"`
		State     []float64            `json:"car_repair_state"`
	}
}

// workedTest is a look there: result bad, good or could not check.
type workedTest struct{ Item, Side, Test, Result, Who string }

func (w workedTest) result() string {
	return map[string]string{"bad": Yes, "good": No, "could not check": CouldNot}[w.Result]
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
	if len(w.Expect.Condition) < 10 || len(w.Tests) == 0 {
		t.Fatal("the case is not whole")
	}
	return w
}

// seen is what was seen of each item, looks at a whole side left out.
func (w worked) seen(t *testing.T, b *car.Body) []*damage.Likelihood {
	t.Helper()
	var list []Look
	for _, l := range w.Tests {
		list = append(list, Look{l.Test, l.Item, l.result(), l.Who})
	}
	seen, err := FromLooks(b, list)
	if err != nil {
		t.Fatal(err)
	}
	for id, s := range w.Survey {
		e := SurveyEntry{Condition: s.Condition}
		if len(s.Findings) > 0 {
			e.Finding = s.Findings[0]
		}
		i := item(t, b, id)
		seen[i] = Joined(seen[i], read(t, b.PartOf(i), e))
	}
	return seen
}

func (w worked) model(t *testing.T) *damage.Model {
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
	b := load(t, w.Body)
	m, err := damage.New(damage.Known{Body: b, Levels: levels, Seen: w.seen(t, b)}, damage.StandardGrids)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// TestWorkedSurvey compares every chance after a look and a survey, some of it
// of closed boxes from outside.
func TestWorkedSurvey(t *testing.T) {
	w := readWorked(t, "worked_06.json")
	m := w.model(t)
	chances := m.Chances()
	for id, want := range w.Expect.Condition {
		c := chances[item(t, m.Body, id)]
		for k := range want {
			near(t, id+" "+car.ConditionIDs[k], c.Condition[k], want[k], 2e-6)
		}
		for f, v := range w.Expect.Repair[id] {
			near(t, id+" "+damage.FindingIDs[f], c.Finding[f], v, 2e-6)
		}
		near(t, id+" dent", c.Dent, w.Expect.Dent[id], 2e-6)
	}
	for r, v := range m.RepairState() {
		near(t, damage.RepairStateIDs[r], v, w.Expect.State[r], 2e-6)
	}
}

// sideLikelihood is what the looks at one side say at each condition of the worst
// item of that side, joined by the same rule as looks at one item.
func (w worked) sideLikelihood(t *testing.T, side string) [car.Conditions]float64 {
	t.Helper()
	var results []result
	for _, l := range w.SideTests {
		kind, ok := KindOf(l.Test)
		if !ok || !kind.BySide {
			t.Fatalf("%s is no look at a side", l.Test)
		}
		if l.Side == side && l.result() != CouldNot {
			results = append(results, newResult(kind, Look{Result: l.result(), By: l.Who}))
		}
	}
	if len(results) == 0 {
		t.Fatalf("no looks at the %s side", side)
	}
	p := logCondition(results)
	for k := range p {
		p[k] = math.Exp(p[k])
	}
	return p
}

// TestWorkedSides compares chances after looks at items and at whole sides. The
// network takes in the items only; each imagined car then counts by what the
// looks at the sides say of the worst item of each, which is slow but has
// nothing to get wrong. The tolerance is five standard errors of a ratio estimate
// (delta method, e.g. Cochran, Sampling Techniques, 1977, §6.4; from memory).
func TestWorkedSides(t *testing.T) {
	const cars, streamSeed = 40000, 5
	w := readWorked(t, "worked_05.json")
	m := w.model(t)
	sides := map[car.Side][car.Conditions]float64{car.Left: w.sideLikelihood(t, "left"), car.Right: w.sideLikelihood(t, "right")}
	group := Items(m.Body, "gaps")
	counts := make([]float64, cars)
	kept := make([]damage.Car, cars)
	stream := chance.NewStream(streamSeed, 0)
	for n := range kept {
		c := m.NewCar()
		m.Draw(&stream, c)
		worst := [3]int8{}
		for _, i := range group {
			side := m.Body.Items[i].Side
			worst[side] = max(worst[side], c.Condition[i])
		}
		kept[n], counts[n] = *c, sides[car.Left][worst[car.Left]]*sides[car.Right][worst[car.Right]]
	}
	share := func(what string, want float64, is func(c *damage.Car) bool) {
		t.Helper()
		all, yes, square := 0.0, 0.0, 0.0
		for n := range kept {
			all += counts[n]
			if is(&kept[n]) {
				yes += counts[n]
			}
		}
		p := yes / all
		for n := range kept {
			off := -p
			if is(&kept[n]) {
				off = 1 - p
			}
			square += counts[n] * counts[n] * off * off
		}
		near(t, what, p, want, 5*math.Sqrt(square)/all+1e-4)
	}
	for id, want := range w.Expect.Condition {
		i := item(t, m.Body, id)
		for k := range want {
			share(id+" "+car.ConditionIDs[k], want[k], func(c *damage.Car) bool { return int(c.Condition[i]) == k })
		}
		for f, v := range w.Expect.Repair[id] {
			share(id+" "+damage.FindingIDs[f], v, func(c *damage.Car) bool { return int(c.Finding[i]) == f })
		}
		share(id+" dent", w.Expect.Dent[id], func(c *damage.Car) bool { return c.Dent[i] })
	}
}
