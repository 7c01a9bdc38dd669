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
	items := seen.Items
	for id, s := range w.Survey {
		e := SurveyEntry{Condition: s.Condition}
		if len(s.Findings) > 0 {
			e.Finding = s.Findings[0]
		}
		i := item(t, b, id)
		items[i] = Joined(items[i], read(t, b.PartOf(i), e))
	}
	return items
}

func (w worked) model(t *testing.T, worst ...damage.Worst) *damage.Model {
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
	m, err := damage.New(damage.Known{Body: b, Levels: levels, Seen: w.seen(t, b), Worst: worst}, damage.StandardGrids)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// TestWorkedSurvey compares every chance after a look and a survey, some of it
// of closed boxes from outside.
func TestWorkedSurvey(t *testing.T) {
	w := readWorked(t, "worked_06.json")
	w.compare(t, w.model(t))
}

// TestWorkedSidesExact compares every chance after looks at items and at both
// whole sides. The case lets a customer lift the car, which is refused at the
// entry, so its looks at sides are joined below that.
func TestWorkedSidesExact(t *testing.T) {
	w := readWorked(t, "worked_05.json")
	w.compare(t, w.model(t, w.sides(t)...))
}

// sides is what was seen of the worst item of each side.
func (w worked) sides(t *testing.T) (out []damage.Worst) {
	b := load(t, w.Body)
	for _, side := range []string{"left", "right"} {
		out = append(out, damage.Worst{Items: OnSide(b, "gaps", side), Likely: w.sideLikelihood(t, side)})
	}
	return out
}

// compare holds the chances of a model to the printed ones, six digits of them.
func (w worked) compare(t *testing.T, m *damage.Model) {
	t.Helper()
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

// TestWorkedSidesDrawn compares cars drawn with looks at whole sides taken in with
// the same printed chances, to five standard errors of a share.
func TestWorkedSidesDrawn(t *testing.T) {
	const cars, streamSeed = 40000, 5
	w := readWorked(t, "worked_05.json")
	m := w.model(t, w.sides(t)...)
	kept := make([]damage.Car, cars)
	stream := chance.NewStream(streamSeed, 0)
	for n := range kept {
		c := m.NewCar()
		m.Draw(&stream, c)
		kept[n] = *c
	}
	share := func(what string, want float64, is func(c *damage.Car) bool) {
		t.Helper()
		yes := 0.0
		for n := range kept {
			if is(&kept[n]) {
				yes++
			}
		}
		near(t, what, yes/cars, want, 5*math.Sqrt(want*(1-want)/cars)+1e-4)
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
