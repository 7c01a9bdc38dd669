package pricing

import (
	"encoding/json"
	"math"
	"slices"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/damage"
	"underpaint/engine/rates"
)

// scoped makes the table of a body at a standard and scope, after changing the sample
// shop's rates.
func scoped(t testing.TB, body, standard, scope string, change func(*rates.Rates)) (*damage.Model, *Table) {
	t.Helper()
	model, table := testTable(t, body, standard)
	common, err := car.LoadCommon()
	if err != nil {
		t.Fatal(err)
	}
	change(table.Rates)
	if table, err = NewTable(table.Body, common, table.Rates, standard, scope); err != nil {
		t.Fatal(err)
	}
	return model, table
}

func asPublished(*rates.Rates) {}

// TestCeilingsOfTheStage: steps charged by the hour are charged as worked, up to the
// ceiling that the sample shop publishes. On a two-door with a unitary body their hours
// are those of work.json.
func TestCeilingsOfTheStage(t *testing.T) {
	model, table := testTable(t, "two_door_unitary", "show")
	for p, want := range map[float64]map[string]int64{
		.1:  {"undercoat": 6000, "sealer": 4000, "pits": 2000},
		.5:  {"undercoat": 12000, "sealer": 8000, "pits": 4000},
		.9:  {"undercoat": 28000, "sealer": 16000, "pits": 8000},
		.99: {"undercoat": 28000, "sealer": 16000, "pits": 8000},
	} {
		b, lines := bill(t, table, model.NewCar(), only(t, table, nil), p)
		got, worked := map[string]int64{}, int64(0)
		for _, l := range lines {
			if l.Strip {
				got[l.ID] = l.Thousandths
			}
		}
		for id, h := range want {
			if d := got[id] - h; d < -1 || d > 1 || len(got) != len(want) {
				t.Errorf("at %g: %v charged, by hand %v (%s)", p, got, want, id)
			}
			worked += h
		}
		if charged := b.billed[car.Metal] + b.billed[car.Prep]; p < .95 && b.StripHours[car.Metal]+b.StripHours[car.Prep] < worked || charged < worked-3 || charged > worked+3 {
			t.Errorf("at %g: %d charged as worked, by hand %d", p, charged, worked)
		}
	}
}

// TestPaceByHand: a shop whose metalwork takes a quarter longer than the starting hours
// takes longer on every line of metalwork and on no other.
func TestPaceByHand(t *testing.T) {
	ways := map[string]car.Way{"inner_sill.left": car.Section, "floor_brace.front_left": car.Full, "cowl_lower.whole": car.Patch, "quarter_lower_front.left": car.Patch}
	linesAt := func(pace float64) []Line {
		model, table := scoped(t, "two_door_unitary", "show", "whole_body", func(r *rates.Rates) { r.Labour.Trades[car.Metal].Pace = pace })
		c := model.NewCar()
		for i := range c.Finding {
			c.Finding[i], c.Dent[i], c.LeadFailed[i] = damage.PatchOverRust+damage.Finding(i%2), i%3 == 0, 1
		}
		d := only(t, table, ways)
		d.Also = make([][]string, len(table.items))
		d.Also[itemNamed(t, table, "outer_sill.right")] = []string{"brazed"}
		_, lines := bill(t, table, c, d, .5)
		return lines
	}
	usual, slow := linesAt(1), linesAt(1.25)
	metal := map[string]bool{}
	if len(usual) != len(slow) {
		t.Fatalf("%d lines, at the slower pace %d", len(usual), len(slow))
	}
	for k, l := range usual {
		want := float64(l.Thousandths)
		if l.Trade == car.Metal && l.Price == 0 {
			want *= 1.25
			metal[l.ID] = true
		}
		if s := slow[k]; s.ID != l.ID || s.Price != l.Price || math.Abs(float64(s.Thousandths)-want) > 1.2 {
			t.Errorf("%s of item %d: %d thousandths, slower %d, by hand %g", l.ID, l.Item, l.Thousandths, s.Thousandths, want)
		}
	}
	for _, id := range []string{"", "brazed", "patch_over_rust", "filler_over_hole", "filler_over_dent", "cracked_lead", "open_plenum", "brace_datum", "brace_from_above_front"} {
		if !metal[id] {
			t.Errorf("no metalwork of %q among the lines", id)
		}
	}
}

// TestBodyOffByHand: where the stage has lifted the body, work on the frame does not
// lift it again, and its bolts have seized as often as work.json says for the last
// place (.15 dry, .6 by the sea). Where only the outside is taken down, the lift is
// charged with the work that needs it.
func TestBodyOffByHand(t *testing.T) {
	count := func(scope string, w car.Way, place string, p float64) (off, nuts int) {
		model, table := scoped(t, "hardtop_on_frame", "show", scope, asPublished)
		d := Undecided()
		d.Way = make([]int8, len(table.items))
		for i := range table.items {
			if table.Body.PartOf(i).ID == "outrigger" {
				d.Way[i] = int8(w)
			}
		}
		_, lines := billAt(t, place, table, model.NewCar(), d, p)
		for _, l := range lines {
			switch l.ID {
			case "body_off":
				off++
			case "captive_nut":
				nuts++
			}
		}
		return off, nuts
	}
	_, all := count("whole_body", car.Patch, "dry", .01)
	for _, c := range []struct {
		scope     string
		w         car.Way
		place     string
		p         float64
		off, nuts int
	}{
		{"whole_body", car.Patch, "dry", .14, 0, all}, {"whole_body", car.Patch, "dry", .16, 0, 0},
		{"whole_body", car.Leave, "sea", .59, 0, all}, {"whole_body", car.Leave, "sea", .61, 0, 0},
		{"outside_only", car.Patch, "dry", .14, 1, all}, {"outside_only", car.Patch, "dry", .16, 1, 0},
		{"outside_only", car.Treat, "dry", .14, 0, 0}, {"outside_only", car.Leave, "sea", .14, 0, 0},
	} {
		if off, nuts := count(c.scope, c.w, c.place, c.p); off != c.off || nuts != c.nuts {
			t.Errorf("%+v: lifted %d times with %d seized bolts", c, off, nuts)
		}
	}
	if all < 4 {
		t.Errorf("only %d body mounts", all)
	}
}

// TestAfterSurveyByScope: every job has the work that work.json names for the scope, at
// its likely hours at show standard times the factor of the body.
func TestAfterSurveyByScope(t *testing.T) {
	var file struct {
		AfterSurvey struct {
			Work []struct {
				ID     string
				Scopes []string
				Show   []float64
			}
		} `json:"after_survey"`
	}
	if err := json.Unmarshal(figuresFile, &file); err != nil || len(file.AfterSurvey.Work) < 8 {
		t.Fatal(err, len(file.AfterSurvey.Work))
	}
	for _, scope := range rates.ScopeIDs {
		model, table := scoped(t, "pickup", "show", scope, asPublished)
		_, lines := bill(t, table, model.NewCar(), only(t, table, nil), .5)
		for _, w := range file.AfterSurvey.Work {
			want, got := 0.0, 0.0
			if slices.Contains(w.Scopes, scope) {
				want = w.Show[1] * table.Body.AfterSurveyFactor[w.ID]
			}
			for _, l := range lines {
				if l.ID == w.ID {
					got += float64(l.Thousandths) / 1000
				}
			}
			if math.Abs(got-want) > .001 {
				t.Errorf("%s, %s: %g h, by hand %g", scope, w.ID, got, want)
			}
		}
	}
}
