//go:build !js

// Left out of the wasm run for its length alone: the arithmetic is the same
// there, which the pinned replies of package message hold to the bit.

package damage_test

import (
	"flag"
	"math"
	"slices"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/damage"
	"underpaint/engine/evidence"
	"underpaint/engine/exposure"
)

// slow runs every body, place and survey; make test sets it.
var slow = flag.Bool("slow", false, "hold the grids to account on every body, place and survey")

// notRun says what a run without -slow leaves out.
func notRun(t *testing.T, what string) {
	t.Helper()
	if !*slow {
		t.Log("not run without -slow: " + what)
	}
}

// TestGridsHaveConverged: against much finer grids no chance of a condition moves
// by more than .0002, before any survey and after surveys that found every sill,
// floor and corner item rusted through, or sound and lightly pitted by turns.
func TestGridsHaveConverged(t *testing.T) {
	if !*slow {
		t.Skip("not run without -slow")
	}
	converged(t, []string{"two_door_unitary", "hardtop_on_frame"}, []string{"salt", "dry", "mild", "sea"}, surveys, damage.StandardGrids, 0.0002)
}

// TestGridsHaveConvergedOnContradictions is the same after surveys in which some parts
// say the opposite of all the others. With 25 points for the luck of the car chances
// move by up to .002: the test can go red.
func TestGridsHaveConvergedOnContradictions(t *testing.T) {
	bodies, places := []string{"two_door_unitary"}, []string{"dry"}
	if *slow {
		bodies, places = car.BodyIDs[:], append(places, "salt")
	}
	notRun(t, "five bodies, and salt")
	converged(t, bodies, places, contradictions, damage.StandardGrids, 0.0002)
	few := damage.StandardGrids
	few.Car.Points = 25
	b, err := car.Load("two_door_unitary")
	if err != nil {
		t.Fatal(err)
	}
	if d := gap(t, b, "dry", contradictions(t, b)["rusted through but for sound parts"], few); d < 0.0002 {
		t.Errorf("25 points move a chance by %.6f only", d)
	}
}

// converged holds every survey of each body and place.
func converged(t *testing.T, bodies, places []string, surveys func(*testing.T, *car.Body) map[string][]*damage.Likelihood, grids damage.Grids, within float64) {
	t.Helper()
	worst := 0.0
	for _, id := range bodies {
		body, err := car.Load(id)
		if err != nil {
			t.Fatal(err)
		}
		for _, place := range places {
			for name, seen := range surveys(t, body) {
				d := gap(t, body, place, seen, grids)
				if d > within {
					t.Errorf("%s, %s, %s: a chance moves by %.6f", id, place, name, d)
				}
				if worst = math.Max(worst, d); *slow {
					t.Logf("%s, %s, %s: %.6f", id, place, name, d)
				}
			}
		}
	}
	t.Logf("largest move %.6f", worst)
}

// TestGridsHaveConvergedWithSides is the same with door gaps that disagree between
// the sides and a customer's hole in either sill.
func TestGridsHaveConvergedWithSides(t *testing.T) {
	if !*slow {
		t.Skip("not run without -slow")
	}
	b, err := car.Load("two_door_unitary")
	if err != nil {
		t.Fatal(err)
	}
	seen, err := evidence.FromLooks(b, []evidence.Look{{Look: "gaps", On: "left", Result: evidence.Yes, By: evidence.ByShop},
		{Look: "gaps", On: "right", Result: evidence.No, By: evidence.ByShop}, {Look: "jack", On: "left", Result: evidence.Yes, By: evidence.ByShop},
		{Look: "open_hole", On: "outer_sill.either", Result: evidence.Yes, By: evidence.ByCustomer}})
	if err != nil {
		t.Fatal(err)
	}
	coarse := damage.Grids{Car: damage.Grid{Points: 7, Low: -4, High: 4}, Group: damage.Grid{Points: 5, Low: -3, High: 3}, Pocket: damage.Grid{Points: 5, Low: -3, High: 3}}
	fine := chancesOn(t, b, "mild", seen.Items, damage.FineGrids, seen.Worst...)
	d := apart(chancesOn(t, b, "mild", seen.Items, damage.StandardGrids, seen.Worst...), fine)
	if d > 0.0002 {
		t.Errorf("a chance moves by %.6f", d)
	}
	t.Logf("largest move %.6f", d)
	if d := apart(chancesOn(t, b, "mild", seen.Items, coarse, seen.Worst...), fine); d < 0.0002 {
		t.Errorf("coarse grids moved a chance by %.6f only: the gate cannot go red", d)
	}
}

// TestCoarseGridsAreCaught proves that the gate can go red.
func TestCoarseGridsAreCaught(t *testing.T) {
	body, err := car.Load("two_door_unitary")
	if err != nil {
		t.Fatal(err)
	}
	coarse := damage.Grids{Car: damage.Grid{Points: 7, Low: -4, High: 4}, Group: damage.Grid{Points: 5, Low: -3, High: 3}, Pocket: damage.Grid{Points: 5, Low: -3, High: 3}}
	if d := gap(t, body, "salt", surveys(t, body)["sound and light"], coarse); d < 0.0002 {
		t.Errorf("coarse grids moved a chance by %.6f only", d)
	}
}

// TestImaginedGrids: coarse grids move no chance by more than .01, and fewer points of
// the tables none by more than .00001 besides, with sides looked at too; far fewer are
// caught.
func TestImaginedGrids(t *testing.T) {
	b, err := car.Load("two_door_unitary")
	if err != nil {
		t.Fatal(err)
	}
	looks, err := evidence.FromLooks(b, []evidence.Look{{Look: "gaps", On: "left", Result: evidence.Yes, By: evidence.ByShop}, {Look: "gaps", On: "right", Result: evidence.No, By: evidence.ByShop}})
	if err != nil {
		t.Fatal(err)
	}
	few := damage.ImaginedGrids
	few.PerUnit = 4
	caught := false
	hold := func(name string, seen []*damage.Likelihood, worst []damage.MaxEvidence) {
		fine, coarse := chancesOn(t, b, "mild", seen, damage.FineGrids, worst...), chancesOn(t, b, "mild", seen, damage.CoarseGrids, worst...)
		imagined := chancesOn(t, b, "mild", seen, damage.ImaginedGrids, worst...)
		if d := apart(coarse, fine); d > 0.01 {
			t.Errorf("%s, %d sides: coarse grids move a chance by %.6f", name, len(worst), d)
		}
		if d := apart(imagined, coarse); d > 0.00001 || d == 0 {
			t.Errorf("%s, %d sides: fewer points move a chance by %.9f", name, len(worst), d)
		}
		caught = caught || apart(chancesOn(t, b, "mild", seen, few, worst...), coarse) > 0.00001
	}
	notRun(t, "sides on top of the surveys")
	for name, seen := range surveys(t, b) {
		hold(name, seen, nil)
		if *slow {
			hold(name, seen, looks.Worst)
		}
	}
	if !caught {
		t.Error("four points to a unit move no chance: the gate cannot go red")
	}
}

// surveys are what may have been found: nothing, everything bad, everything good.
func surveys(t *testing.T, b *car.Body) map[string][]*damage.Likelihood {
	bad, good := make([]*damage.Likelihood, len(b.Items)), make([]*damage.Likelihood, len(b.Items))
	turn := 0
	for i := range b.Items {
		switch b.Groups[b.PartOf(i).Group].ID {
		case "sill", "floor", "corner":
		default:
			continue
		}
		read := func(condition string) *damage.Likelihood {
			l, err := evidence.Reading(b.PartOf(i), evidence.SurveyEntry{Condition: condition, Opened: !b.PartOf(i).SeenWhenStripped})
			if err != nil {
				t.Fatal(err)
			}
			return l
		}
		bad[i], good[i] = read("rusted_through"), read([]string{"sound", "light_pitting"}[turn%2])
		turn++
	}
	if turn < 20 {
		t.Fatalf("only %d items in sills, floors and corners", turn)
	}
	return map[string][]*damage.Likelihood{"nothing seen": nil, "all rusted through": bad, "sound and light": good}
}

// contradictions are surveys of every item, boxes opened: all sound but for four holes
// of the sort that causes of their own leave, and most rusted through with sound parts
// among them.
func contradictions(t *testing.T, b *car.Body) map[string][]*damage.Likelihood {
	holed, sound := make([]*damage.Likelihood, len(b.Items)), make([]*damage.Likelihood, len(b.Items))
	left := 4
	for i := range b.Items {
		read := func(condition string) *damage.Likelihood {
			l, err := evidence.Reading(b.PartOf(i), evidence.SurveyEntry{Condition: condition, Opened: !b.PartOf(i).SeenWhenStripped})
			if err != nil {
				t.Fatal(err)
			}
			return l
		}
		holed[i], sound[i] = read("sound"), read("rusted_through")
		if left > 0 && b.Items[i].Side != car.Right && slices.Contains([]string{"battery_tray", "cowl_lower", "ws_channel", "front_floor", "trunk_floor", "bed_floor"}, b.PartOf(i).ID) {
			holed[i] = read("rusted_through")
			left--
		}
		if i%7 == 3 {
			sound[i] = read("sound")
		}
	}
	if left > 0 {
		t.Fatalf("%s: %d holes too few", b.ID, left)
	}
	return map[string][]*damage.Likelihood{"sound but for four holes": holed, "rusted through but for sound parts": sound}
}

// gap is the largest difference of any chance between grids and the fine ones.
func gap(t *testing.T, b *car.Body, place string, seen []*damage.Likelihood, grids damage.Grids) float64 {
	t.Helper()
	return apart(chancesOn(t, b, place, seen, grids), chancesOn(t, b, place, seen, damage.FineGrids))
}

func chancesOn(t *testing.T, b *car.Body, place string, seen []*damage.Likelihood, grids damage.Grids, worst ...damage.MaxEvidence) []damage.Chances {
	t.Helper()
	histories, err := exposure.Exact([]exposure.Alternative{{Chance: 1, Periods: []exposure.Period{
		{Climate: place, Years: 15, Kept: "driven_all_year"}, {Climate: place, Years: 40, Kept: "garage"}}}}, exposure.Asked{Year: 2026})
	if err != nil {
		t.Fatal(err)
	}
	m, err := damage.New(damage.Known{Body: b, Histories: histories, Seen: seen, Worst: worst}, grids)
	if err != nil {
		t.Fatal(err)
	}
	return m.Chances()
}

func apart(a, b []damage.Chances) (worst float64) {
	for i := range a {
		for k := range a[i].Condition {
			worst = math.Max(worst, math.Abs(a[i].Condition[k]-b[i].Condition[k]))
		}
	}
	return worst
}
