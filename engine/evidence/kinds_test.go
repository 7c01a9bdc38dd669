package evidence

import (
	"errors"
	"reflect"
	"slices"
	"strings"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/damage"
	"underpaint/engine/strict"
)

// laterParts are parts that no body has yet.
var laterParts = []string{"front_panel", "front_arch", "front_wheelhouse", "cab_step", "side_post", "side_inner", "cant_rail", "side_glass_rail",
	"rear_post", "rear_corner", "tailgate_opening", "tailgate_frame", "tailgate_bottom", "side_door_skin", "side_door_lower", "side_door_bottom",
	"side_door_shell", "side_door_track"}

// The data are consistent: every part exists, chances never fall as the condition gets
// worse, and everything has words and a source.
func TestKinds(t *testing.T) {
	parts := map[string]bool{}
	for _, id := range car.BodyIDs {
		plain := load(t, id)
		var options []string
		for _, o := range plain.Options {
			options = append(options, o.ID)
		}
		b, err := car.Load(id, options...)
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range b.Parts {
			parts[p.ID] = true
		}
		if n := len(Items(b, sellersWord)); n != len(b.Items) {
			t.Errorf("%s: the seller's word covers %d of %d items", id, n, len(b.Items))
		}
	}
	if Items(load(t, "pickup"), "smell") != nil {
		t.Error("an unknown check has items")
	}
	ids := map[string]bool{}
	for _, k := range Kinds() {
		if again, ok := KindOf(k.ID); !ok || ids[k.ID] || !reflect.DeepEqual(again, k) {
			t.Errorf("%s: KindOf does not find it, or finds another", k.ID)
		}
		ids[k.ID] = true
		for _, w := range []car.Words{k.Name, k.How, k.Needs} {
			if w.US == "" || w.UK == "" {
				t.Errorf("%s: words missing", k.ID)
			}
		}
		if k.Source == "" || len(k.Parts) == 0 {
			t.Errorf("%s: no source or no parts", k.ID)
		}
		for _, p := range k.Parts {
			if !parts[p] && !slices.Contains(laterParts, p) {
				t.Errorf("%s: no body has a part %s", k.ID, p)
			}
		}
		for c := 1; c < car.Conditions; c++ {
			if k.ChanceOfYes(c, damage.NoFinding, false) < k.ChanceOfYes(c-1, damage.NoFinding, false) {
				t.Errorf("%s: yes gets rarer from %s on", k.ID, car.ConditionIDs[c-1])
			}
		}
		if under := strings.Contains(strings.Join(k.Parts, " "), "front_rail"); under && k.AnswersTo == OfCondition && k.CustomerCan &&
			k.ID != sellersWord && !k.BySide && !strings.Contains(k.Caution.UK, "under a car on a jack") {
			t.Errorf("%s: a customer may reach under the car without a warning", k.ID)
		}
		if k.falseYes[customer] < k.falseYes[shop] || k.falseYes[seller] < k.falseYes[shop] {
			t.Errorf("%s: the shop reports holes where there are none more often than others do", k.ID)
		}
		if k.NotAtLead && !strings.Contains(k.Caution.US, "lead") {
			t.Errorf("%s: does not mention lead", k.ID)
		}
	}
	if car.ConditionIDs[firstHole] != "pinholes" {
		t.Errorf("the mildest hole is %s", car.ConditionIDs[firstHole])
	}
	if _, ok := KindOf("smell"); ok || len(ids) != 16 {
		t.Errorf("%d checks, or KindOf finds an unknown one", len(ids))
	}
}

// Damaged data are an error that names the path.
func TestDataRefused(t *testing.T) {
	for name, row := range map[string]struct{ old, new, path string }{
		"chance of one":    {"[0.02, 0.05, 0.35, 0.75, 0.92, 0.97]", "[0.02, 0.05, 0.35, 0.75, 0.92, 1]", "looks[5].yes_by_condition[5]"},
		"chance missing":   {"[0.02, 0.05, 0.35, 0.75, 0.92, 0.97]", "[0.02, 0.05, 0.35, 0.75, 0.92]", "looks[5].yes_by_condition"},
		"unknown member":   {`"not_at_lead": true`, `"at_lead": true`, "looks[2]"},
		"unknown finding":  {`"patch_over_rust": 0.15`, `"patch": 0.15`, "looks[2].yes_by_finding"},
		"weight above one": {`"further": 0.4`, `"further": 1.4`, "weights.further"},
		"cover helps":      {`"good_when_covered_times": 0.1`, `"good_when_covered_times": 1.1`, "looks[6].good_when_covered_times"},
		"cover of nobody":  {`"freshly_covered": 0.7`, `"freshly_covered": 1`, "fresh_undercoat.freshly_covered"},
		"another's alarm":  {`"shop": 0.0005`, `"shop": 0.001`, "looks[1].false_yes_by.shop"},
		"nobody's alarm":   {`"seller": 0.002`, `"owner": 0.002`, "looks[1].false_yes_by"},
		"no source":        {`"source": "assumption: common practice, no published source"`, `"source": 1`, "looks[2].source"},
	} {
		text := strings.Replace(string(looksFile), row.old, row.new, 1)
		_, err := readLooks([]byte(text))
		var refused *strict.Error
		if !errors.As(err, &refused) || refused.Path != row.path {
			t.Errorf("%s: %v, want %s", name, err, row.path)
		}
	}
	for name, row := range map[string]struct{ old, new, path string }{
		"always right":      {"0.97", "1", "finding_right"},
		"more than all":     {"[0.035, 0.93, 0.035, 0, 0, 0]", "[0.035, 0.93, 0.045, 0, 0, 0]", "seen.light_pitting"},
		"less than all":     {"[0.1, 0.21, 0.41, 0.28, 0, 0]", "[0.1, 0.21, 0.41, 0.18, 0, 0]", "closed_box_from_outside.pinholes"},
		"five conditions":   {"[0, 0, 0, 0, 0.07, 0.93]", "[0, 0, 0, 0.07, 0.93]", "seen.gone"},
		"a row for another": {`"heavy_pitting"`, `"pitting"`, "seen"},
		"no slip":           {"0.000001", "0", "slip.chance"},
		"never looked at":   {"0.003", "-0.003", "slip.look_again_below"},
	} {
		_, err := readReading([]byte(strings.Replace(string(readingFile), row.old, row.new, 1)))
		var refused *strict.Error
		if !errors.As(err, &refused) || refused.Path != row.path {
			t.Errorf("reading: %s: %v, want %s", name, err, row.path)
		}
	}
}
