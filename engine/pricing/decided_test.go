package pricing

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/strict"
)

// itemNamed returns an item that the body must have.
func itemNamed(t *testing.T, table *Table, id string) int {
	t.Helper()
	i, ok := table.Body.ItemNamed(id)
	if !ok {
		t.Fatalf("%s has no %s", table.Body.ID, id)
	}
	return i
}

// choose decides one way on one item.
func choose(table *Table, item int, w car.Way) Decided {
	d := Undecided()
	d.Way = slices.Repeat([]int8{-1}, len(table.items))
	d.Way[item] = int8(w)
	return d
}

// also decides one further finding on one item.
func also(table *Table, item int, ids ...string) Decided {
	d := Undecided()
	d.Also = make([][]string, len(table.items))
	d.Also[item] = ids
	return d
}

func with(t *testing.T, table *Table, d Decided) *Table {
	t.Helper()
	out, err := table.With(d)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// TestRefusedDecisions: an impossible decision is refused with its path.
func TestRefusedDecisions(t *testing.T) {
	_, table := testTable(t, "two_door_unitary", "show")
	sill, floor := itemNamed(t, table, "outer_sill.left"), itemNamed(t, table, "front_floor.left")
	notDone, notDoneWay := -1, car.Leave
	for i := range table.items {
		for w := car.Leave; w < car.Ways; w++ {
			if !table.isDone(i, w) {
				notDone, notDoneWay = i, w
			}
		}
	}
	if notDone < 0 {
		t.Fatal("every way is done on every item")
	}
	hours := func(trade car.Trade, v float64) Decided {
		d := Undecided()
		d.StripHours[trade] = v
		return d
	}
	whole := func(ids ...string) Decided {
		d := Undecided()
		d.WholeCar = ids
		return d
	}
	for _, c := range []struct {
		name, path, found string
		d                 Decided
	}{
		{"no such way", "ways", "outer_sill.left: 9", choose(table, sill, 9)},
		{"below none", "ways", "outer_sill.left: -2", choose(table, sill, -2)},
		{"a way not done there", "ways", car.WayIDs[notDoneWay], choose(table, notDone, notDoneWay)},
		{"no such finding", "also", "outer_sill.left: gremlins", also(table, sill, "gremlins")},
		{"a finding that the odds carry", "also", "patch_over_rust", also(table, sill, "patch_over_rust")},
		{"a finding of other parts", "also", "front_floor.left: stress_crack", also(table, floor, "stress_crack")},
		{"a skin warped under the car", "also", "front_floor.left: blast_warp", also(table, floor, "blast_warp")},
		{"a finding of the whole car", "also", "twist", also(table, sill, "twist")},
		{"a finding twice", "also", "brazed twice", also(table, sill, "brazed", "brazed")},
		{"an item's finding on the car", "whole_car", "brazed", whole("brazed")},
		{"a car's finding twice", "whole_car", "twist twice", whole("twist", "twist")},
		{"a trade without a step", "strip_hours.body", "3", hours(car.BodyWork, 3)},
		{"no hours", "strip_hours.prep", "0", hours(car.Prep, 0)},
		{"negative hours", "strip_hours.prep", "-3", hours(car.Prep, -3)},
		{"endless hours", "strip_hours.fit", "+Inf", hours(car.Fit, math.Inf(1))},
		{"too many hours", "strip_hours.fit", "10001", hours(car.Fit, 10001)},
		{"forgotten start", "strip_hours.metal", "0", Decided{}},
	} {
		got, err := table.With(c.d)
		var e *strict.Error
		if !errors.As(err, &e) || got != nil {
			t.Errorf("%s: not refused: %v", c.name, err)
			continue
		}
		if e.Path != c.path || !strings.Contains(e.Found, c.found) || e.Expected == "" {
			t.Errorf("%s: %v", c.name, err)
		}
	}
	nan := hours(car.Prep, math.NaN())
	if _, err := table.With(nan); err != nil {
		t.Errorf("hours not entered were refused: %v", err)
	}
}

// TestNothingDecided: with nothing decided every bill stays the same.
func TestNothingDecided(t *testing.T) {
	model, table := testTable(t, "hardtop_on_frame", "concours")
	same := with(t, with(t, table, choose(table, 0, car.Leave)), Undecided())
	c, u := model.NewCar(), table.NewUniforms()
	a, b := table.NewBill(), same.NewBill()
	for n := range uint64(300) {
		s := chance.NewStream(seed, n)
		model.Draw(&s, c)
		u.Fill(&s)
		first, second := table.Explain(c, "salt", u, a), same.Explain(c, "salt", u, b)
		if !slices.Equal(first, second) || a.Total != b.Total || a.Strip != b.Strip || a.Weeks != b.Weeks {
			t.Fatalf("car %d: %d, with nothing decided %d", n, a.Total, b.Total)
		}
	}
}

// unmet returns the first demand of an opening that the ways do not meet. It reads the
// rules on its own, without the package's code.
func unmet(table *Table, way []car.Way) string {
	far := func(items []int, least car.Way) bool {
		return slices.ContainsFunc(items, func(i int) bool { return way[i] >= least })
	}
	for _, r := range table.openings {
		if !far(r.ifItems, r.atLeast) || far(r.unless, r.unlessAtLeast) {
			continue
		}
		for _, x := range r.raise {
			if way[x.item] < x.to && way[x.item] < table.items[x.item].instead[x.to] {
				return table.fig.openings[r.rule].id + " asks more of " + table.Body.Items[x.item].ID
			}
		}
	}
	return ""
}

// TestChosenWayProperties checks chosen ways against the openings, on cars of every
// sort.
func TestChosenWayProperties(t *testing.T) {
	model, table := testTable(t, "two_door_unitary", "show")
	c, u, b := model.NewCar(), table.NewUniforms(), table.NewBill()
	properties := gopter.NewProperties(parameters())
	properties.Property("a chosen way never lowers what forcing demands", prop.ForAll(func(n uint64, pick []int) bool {
		s := chance.NewStream(seed, n)
		model.Draw(&s, c)
		u.Fill(&s)
		d := choose(table, 0, car.Leave)
		d.Way[0] = -1
		for _, p := range pick {
			i := p % len(table.items)
			ways := table.Allowed(i, int(c.Condition[i]))
			d.Way[i] = int8(ways[p/len(table.items)%len(ways)])
		}
		chosen := with(t, table, d)
		chosen.drawWays(c, u, b)
		chosen.raiseWays(b.Way, b.RaisedBy)
		if what := unmet(chosen, b.Way); what != "" {
			t.Log(what)
			return false
		}
		for i, w := range d.Way {
			if w >= 0 && (b.Drawn[i] != car.Way(w) || b.Way[i] < car.Way(w) || b.Way[i] > car.Way(w) && b.RaisedBy[i] < 0) {
				t.Logf("%s: chosen %d, drawn %d, done %d", table.Body.Items[i].ID, w, b.Drawn[i], b.Way[i])
				return false
			}
		}
		return true
	}, gen.UInt64(), gen.SliceOfN(40, gen.IntRange(0, 1<<20))))
	properties.TestingRun(t)

	// Negative control: the check finds a demand that nobody met.
	way := make([]car.Way, len(table.items))
	way[itemNamed(t, table, "inner_sill.left")] = car.Full
	if unmet(table, way) == "" {
		t.Error("the check of openings cannot fail")
	}
}

// TestChosenWayCountsOutsideTheScope: work chosen on a part outside the scope is done
// and charged; a part left there is not.
func TestChosenWayCountsOutsideTheScope(t *testing.T) {
	model, whole := testTable(t, "two_door_unitary", "show")
	common, err := car.LoadCommon()
	if err != nil {
		t.Fatal(err)
	}
	table, err := NewTable(whole.Body, common, whole.Rates, "show", "outside_only")
	if err != nil {
		t.Fatal(err)
	}
	floor := itemNamed(t, table, "front_floor.left")
	hours := func(table *Table) (sum int64) {
		c, u, b := model.NewCar(), table.NewUniforms(), table.NewBill()
		s := chance.NewStream(seed, 4)
		model.Draw(&s, c)
		u.Fill(&s)
		for _, l := range table.Explain(c, "salt", u, b) {
			if l.Item == floor {
				sum += l.Thousandths
			}
		}
		return sum
	}
	if got := hours(table); got != 0 {
		t.Fatalf("the scope does not leave the floor out: %d", got)
	}
	if got := hours(with(t, table, choose(table, floor, car.Section))); got == 0 {
		t.Error("a section chosen outside the scope takes no hours")
	}
	patched := choose(table, floor, car.Patch)
	patch := hours(with(t, table, patched))
	patched.Also = also(table, floor, "brazed").Also
	if got := hours(with(t, table, patched)); got <= patch {
		t.Errorf("brass found where a patch was chosen adds nothing: %d and %d", patch, got)
	}
	if got := hours(with(t, table, also(table, floor, "brazed"))); got != 0 {
		t.Errorf("brass in a floor that the scope leaves out takes %d", got)
	}
	if got := hours(with(t, table, choose(table, floor, car.Leave))); got != 0 {
		t.Errorf("a floor left as it is takes %d", got)
	}
}
