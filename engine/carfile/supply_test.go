package carfile

import (
	"slices"
	"strings"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/damage"
	"underpaint/engine/pricing"
	"underpaint/engine/rates"
)

// partsCar is an invented car with these records.
func partsCar(t *testing.T, records string) *Car {
	t.Helper()
	c, err := Decode([]byte(`{"format":"underpaint car 1","asked_in":2026,"bodies":["two_door_unitary"],"made":{"year":1967},"life":[{"place":"mild","kept":"garage"}],"all_there":"in_pieces","standard":"show",
"stages":[{"stage":"survey","on":"2026-06-20"},{"stage":"opening_up","on":"2026-07-01"}],"opened":[{"box":"sill.left"}],"survey":[` + records + `]}`))
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// TestMissingAlone: a record that a part is missing says nothing else about it.
func TestMissingAlone(t *testing.T) {
	for says, expected := range map[string]string{
		``:                             "",
		`,"panel_fit":"wrong"`:         "",
		`,"condition":"gone"`:          "either missing or a condition",
		`,"finding":"replaced"`:        "either missing or a finding",
		`,"dent":false`:                "either missing or a finding",
		`,"could_not_see":true`:        "either missing or could_not_see",
		`,"note":"in the third crate"`: "",
	} {
		c := partsCar(t, `{"on":"hood.whole","stage":"survey","also":["missing"]`+says+`}`)
		wrong := c.Check()
		if expected == "" && len(wrong) == 0 {
			continue
		}
		if expected == "" || len(wrong) != 1 || !strings.Contains(wrong[0].Error(), expected) || !strings.Contains(wrong[0].Error(), "survey[0].also[0]") {
			t.Errorf("%s: %v, expected %q", says, wrong, expected)
		}
		if again, err := Decode(c.Text()); err != nil || string(again.Text()) != string(c.Text()) || !strings.Contains(string(c.Text()), `"all_there":"in_pieces"`) {
			t.Errorf("%s: written and read again, it differs (%v)", says, err)
		}
	}
}

// TestFactsOfParts: what was recorded by a stage is a fact there and not before it; the
// record made with the box open counts; and a missing part says nothing about rust.
func TestFactsOfParts(t *testing.T) {
	c := partsCar(t, `{"on":"hood.whole","stage":"survey","also":["missing"]},{"on":"outer_sill.left","stage":"survey","condition":"gone","panel_fit":"needs_work"},
{"on":"inner_sill.left","stage":"survey","condition":"sound"},{"on":"inner_sill.left","stage":"opening_up","also":["missing"]},{"on":"firewall.whole","stage":"survey","could_not_see":true}`)
	b, err := c.OneBody()
	if err != nil {
		t.Fatal(err)
	}
	item := func(id string) int { i, _ := b.ItemNamed(id); return i }
	hood, sill, inner, wall := item("hood.whole"), item("outer_sill.left"), item("inner_sill.left"), item("firewall.whole")
	if told := c.Supply(b, Told); told.OnCar != nil || told.AllThere != "in_pieces" {
		t.Errorf("told: %+v", told)
	}
	seen := c.Supply(b, Survey).OnCar
	if !seen[hood] || !seen[sill] || seen[wall] || seen[item("roof_skin.whole")] {
		t.Errorf("seen after the survey: %v", seen)
	}
	is := func(stage string, i int) bool {
		return slices.Contains(c.Decided(b, stage, false).Also[i], pricing.Missing)
	}
	if !is(Survey, hood) || is(Survey, inner) || !is(OpeningUp, inner) {
		t.Error("missing at the wrong stage")
	}
	if c.RecordedCondition("inner_sill.left") != -1 || !c.RecordedMissing("inner_sill.left") || c.RecordedCondition("outer_sill.left") != car.Conditions-1 {
		t.Error("a missing part has a condition, or one that is there has none")
	}
	if fit := c.Decided(b, Survey, false).PanelFit; fit[sill] != "needs_work" || fit[hood] != "" {
		t.Errorf("fits: %v", fit)
	}
	if told := c.Decided(b, Told, false); told.PanelFit != nil || told.Also != nil {
		t.Error("facts before the survey")
	}
	histories, err := c.Histories()
	if err != nil {
		t.Fatal(err)
	}
	bare := partsCar(t, `{"on":"outer_sill.left","stage":"survey","condition":"gone"}`)
	chance := func(c *Car) []damage.Chances {
		k, err := c.Known(b, histories, OpeningUp, rates.NothingLearnt(), nil)
		if err != nil {
			t.Fatal(err)
		}
		m, err := damage.New(k, damage.CoarseGrids)
		if err != nil {
			t.Fatal(err)
		}
		return m.Chances()
	}
	with, without := chance(c), chance(bare)
	for i := range with {
		if with[i].Holed() != without[i].Holed() {
			t.Fatalf("%s: a missing part changed the odds from %g to %g", b.Items[i].ID, without[i].Holed(), with[i].Holed())
		}
	}
}
