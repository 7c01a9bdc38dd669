package evidence

import (
	"encoding/json"
	"math"
	"os"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/damage"
)

// worked is a case of an independent calculation of the whole model, in another language
// and without any shared code. It prints six digits. These tests compare only
// likelihoods with it: they use results that follow from a likelihood by a few
// multiplications, whatever the rest of the model is.
type worked struct {
	Body      string `json:"body_pattern"`
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
		Covered   float64
	}
}

// workedTest is a check in the case. Its result is bad, good or could not check.
type workedTest struct{ Item, Side, Test, Result, Who string }

func (w workedTest) look() Look {
	return Look{w.Test, w.Item + w.Side, map[string]string{"bad": Yes, "good": No, "could not check": CouldNot}[w.Result], w.Who}
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
	if len(w.Expect.Condition) < 10 || len(w.Expect.State) != 4 || len(w.Tests) == 0 {
		t.Fatal("part of the case is missing")
	}
	return w
}

// entry is what the survey of the case recorded about an item. An empty list means the
// answer none, a missing one a blank.
func (w worked) entry(t *testing.T, id string) SurveyEntry {
	t.Helper()
	s, ok := w.Survey[id]
	if !ok {
		t.Fatalf("%s was not recorded", id)
	}
	e := SurveyEntry{Condition: s.Condition}
	if s.Findings != nil {
		e.Finding = "none"
	}
	if len(s.Findings) > 0 {
		e.Finding = s.Findings[0]
	}
	return e
}

// seen is the evidence of the case's checks. In the case a customer lifts the car, which
// is not valid input, so checks of a whole side are left out if sides is false.
func (w worked) seen(t *testing.T, sides bool) Seen {
	t.Helper()
	var list []Look
	for _, l := range w.Tests {
		list = append(list, l.look())
	}
	for _, l := range w.SideTests {
		if sides && l.Who == ByShop {
			list = append(list, l.look())
		}
	}
	seen, err := FromLooks(load(t, w.Body), list)
	if err != nil {
		t.Fatal(err)
	}
	return seen
}

// dentPrior is the chance of filler over a dent on a sill by the state of the car's
// repairs (assumption), a quarter of that on big skins.
var dentPrior = [4]float64{.08 / 4, .20 / 4, .20 / 4, .05 / 4}

// Filler over a dent is independent of everything else given the state of the car's
// repairs, whose posterior chances the case prints. So its chance follows from them and
// from the ratio of two entries of the likelihood.
func TestWorkedDents(t *testing.T) {
	for name, seenOf := range map[string]func(w worked, b *car.Body, id string) *damage.Likelihood{
		"worked_05.json": func(w worked, b *car.Body, id string) *damage.Likelihood {
			if l := w.seen(t, false).Items[item(t, b, id)]; l != nil {
				return l
			}
			return damage.NoEvidence()
		},
		"worked_06.json": func(w worked, b *car.Body, id string) *damage.Likelihood {
			return read(t, b.PartOf(item(t, b, id)), w.entry(t, id))
		},
	} {
		w := readWorked(t, name)
		b := load(t, w.Body)
		for _, id := range []string{"outer_sill.left", "outer_sill.right"} {
			l, want := seenOf(w, b, id), 0.0
			for r, p := range w.Expect.State {
				with, without := dentPrior[r]*l[4][0][1], (1-dentPrior[r])*l[4][0][0]
				want += p * with / (with + without)
			}
			near(t, name+": "+id, want, w.Expect.Dent[id], 2e-6)
		}
	}
}

// A floor recorded as sound and as replaced is replaced, except for a chance of .006. Its
// condition then follows, to within the same chance, from the conditions of replaced
// metal and how they are recorded.
func TestWorkedNewMetal(t *testing.T) {
	const id = "front_floor.right"
	w := readWorked(t, "worked_06.json")
	b := load(t, w.Body)
	l := read(t, b.PartOf(item(t, b, id)), w.entry(t, id))
	p, sum := [car.Conditions]float64{.55, .28, .12, .03, .02, 0}, 0.0 // of replaced metal (assumption)
	for k := range p {
		p[k] *= l[k][damage.Replaced][0]
		sum += p[k]
	}
	replaced := w.Expect.Repair[id][damage.Replaced]
	for k, want := range w.Expect.Condition[id] {
		sure := replaced * p[k] / sum
		if want < sure-2e-6 || want > sure+1-replaced+2e-6 {
			t.Errorf("%s: %g, want %g to %g", car.ConditionIDs[k], want, sure, sure+1-replaced)
		}
	}
}

// Only checks for fresh undercoat are evidence on cover. The case has good results that
// cover can hide, and its chance of cover is still the one for 60 years (assumption): the
// sum over states of the car's repairs of their chance times that of cover.
func TestWorkedCover(t *testing.T) {
	w := readWorked(t, "worked_05.json")
	seen := w.seen(t, true)
	b := load(t, w.Body)
	prior := .36*.04 + .45*.12 + .12*.25 + .07*.12
	covered, shows := prior*seen.Cover[freshlyCovered], (1-prior)*seen.Cover[asItShows]
	near(t, "covered", covered/(covered+shows), w.Expect.Covered, 1e-6)
	i := item(t, b, "chassis_rail.right")
	if seen.CoveredItems == nil || seen.CoveredItems[i] == seen.Items[i] || len(seen.CoveredWorst) != len(seen.Worst) {
		t.Fatal("cover cannot hide the result of the good prod")
	}
	near(t, "prod", seen.Items[i][5][0][0]/seen.Items[i][0][0][0], .03/.98, 1e-12)
	near(t, "prod, covered", seen.CoveredItems[i][5][0][0]/seen.CoveredItems[i][0][0][0], math.Pow(.03/.98, .03), 1e-12)
	// Two bad checks of the left side. On the step to rusted through of the worst part
	// there, the gaps go from .22 to .40 and the jack from .08 to .25.
	near(t, "left side", seen.Worst[0].Likely[4]/seen.Worst[0].Likely[3], .25/.08*math.Pow(.40/.22, .4), 1e-12)
}
