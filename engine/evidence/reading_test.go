package evidence

import (
	"errors"
	"strings"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/damage"
	"underpaint/engine/strict"
)

func part(t testing.TB, b *car.Body, id string) *car.Part {
	t.Helper()
	n, ok := b.PartNamed(id)
	if !ok {
		t.Fatalf("no part %s", id)
	}
	return &b.Parts[n]
}

func read(t testing.TB, p *car.Part, e SurveyEntry) *damage.Likelihood {
	t.Helper()
	l, err := Reading(p, e)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// For every true state, the chances of all records add up to one.
func TestReadingAddsUp(t *testing.T) {
	b := load(t, "two_door_unitary")
	for _, id := range []string{"outer_sill", "floor_brace", "inner_sill"} {
		p := part(t, b, id)
		var sum damage.Likelihood
		for _, condition := range car.ConditionIDs {
			for f, finding := range damage.FindingIDs {
				for _, dent := range []string{Yes, No} {
					if p.Face != car.Outer && (damage.Finding(f) == damage.FillerOverHole || dent == Yes) {
						continue // impossible, or recorded as a patch
					}
					l := read(t, p, SurveyEntry{Condition: condition, Finding: finding, Dent: dent})
					for k := range l {
						for f := range l[k] {
							for d := range l[k][f] {
								sum[k][f][d] += l[k][f][d]
							}
						}
					}
				}
			}
		}
		for k := range sum {
			for f := range sum[k] {
				for d := range sum[k][f] {
					near(t, id, sum[k][f][d], 1, 1e-14)
				}
			}
		}
	}
}

func TestReadingBlanks(t *testing.T) {
	b := load(t, "two_door_unitary")
	outer, seen, closed := part(t, b, "outer_sill"), part(t, b, "floor_brace"), part(t, b, "inner_sill")
	same := func(what string, p *car.Part, a, b SurveyEntry) {
		t.Helper()
		if *read(t, p, a) != *read(t, p, b) {
			t.Errorf("%s: not the same", what)
		}
	}
	same("blank on a seen item is none", outer, SurveyEntry{Condition: "gone"}, SurveyEntry{Condition: "gone", Finding: "none", Dent: No})
	same("blank on an opened box is none", closed, SurveyEntry{Condition: "gone", Opened: true}, SurveyEntry{Condition: "gone", Finding: "none", Opened: true})
	same("opening what is seen anyway", seen, SurveyEntry{Condition: "sound"}, SurveyEntry{Condition: "sound", Opened: true})
	same("filler on an inner item is patch", seen, SurveyEntry{Finding: "filler_over_hole"}, SurveyEntry{Finding: "patch_over_rust"})
	outside := read(t, closed, SurveyEntry{Condition: "gone"})
	for k := range outside {
		for f := range outside[k] {
			if outside[k][f] != outside[k][0] {
				t.Error("a blank on a closed box from outside is evidence about repairs")
			}
		}
	}
	for _, p := range []*car.Part{outer, seen, closed} {
		if read(t, p, SurveyEntry{}) != nil || read(t, p, SurveyEntry{Opened: true}) != nil {
			t.Errorf("%s: a blank entry is evidence", p.ID)
		}
	}
	if read(t, seen, SurveyEntry{Dent: No}) != nil {
		t.Error("the absence of a dent on an inner item is evidence")
	}
	dent := read(t, outer, SurveyEntry{Dent: Yes}) // with condition and repairs left blank
	near(t, "dent", dent[5][3][1]/dent[0][0][0], .97/.03, 1e-12)
	near(t, "dent alone", dent[5][3][0], dent[0][0][0], 0)
	finding := read(t, outer, SurveyEntry{Finding: "replaced"})
	near(t, "finding", finding[5][damage.Replaced][1]/finding[0][damage.NoFinding][0], .97/.01, 1e-12)
	finding = read(t, seen, SurveyEntry{Finding: "replaced"})
	near(t, "finding inside", finding[5][damage.Replaced][1]/finding[0][damage.PatchOverRust][0], .97/.015, 1e-12)
}

func TestReadingRefused(t *testing.T) {
	b := load(t, "two_door_unitary")
	for path, e := range map[string]SurveyEntry{
		"condition": {Condition: "rusty"},
		"finding":   {Condition: "gone", Finding: "patch"},
		"dent":      {Condition: "gone", Dent: CouldNot},
		"dent on":   {Condition: "gone", Dent: Yes},
	} {
		l, err := Reading(part(t, b, "inner_sill"), e)
		var refused *strict.Error
		if l != nil || !errors.As(err, &refused) || refused.Path != strings.Fields(path)[0] || refused.Expected == "" {
			t.Errorf("%s: %v, %v", path, l, err)
		}
	}
}
