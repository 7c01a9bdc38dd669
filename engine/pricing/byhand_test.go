package pricing

import (
	"math"
	"strings"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/damage"
)

// The tests below work out single figures of a bill by hand, from the published files
// and the sample shop's rates.

// only decides these ways and nothing else.
func only(t *testing.T, table *Table, ways map[string]car.Way) Decided {
	t.Helper()
	d := Undecided()
	d.Way = make([]int8, len(table.items))
	for id, w := range ways {
		d.Way[itemNamed(t, table, id)] = int8(w)
	}
	return d
}

// bill prices a car from a dry place with these decisions and all uniforms at p.
func bill(t *testing.T, table *Table, c *damage.Car, d Decided, p float64) (*Bill, []Line) {
	t.Helper()
	return billAt(t, "dry", table, c, d, p)
}

func billAt(t *testing.T, place string, table *Table, c *damage.Car, d Decided, p float64) (*Bill, []Line) {
	t.Helper()
	u, b := table.NewUniforms(), table.NewBill()
	setAll(u, p)
	lines := with(t, table, d).Explain(c, place, u, b)
	return b, lines
}

// TestFindingsWithinTheOdds: an earlier repair adds its published hours times the
// driver's factor of metalwork (.75), once for each leaded joint, and nothing where the
// part is replaced.
func TestFindingsWithinTheOdds(t *testing.T) {
	model, table := testTable(t, "two_door_unitary", "driver")
	figures := publishedHours(t)
	quarter := itemNamed(t, table, "quarter_skin.left")
	for id, found := range map[string]func(*damage.Car){
		"patch_over_rust":  func(c *damage.Car) { c.Finding[quarter] = damage.PatchOverRust },
		"filler_over_hole": func(c *damage.Car) { c.Finding[quarter] = damage.FillerOverHole },
		"filler_over_dent": func(c *damage.Car) { c.Dent[quarter] = true },
		"cracked_lead":     func(c *damage.Car) { c.LeadFailed[quarter] = 2 },
	} {
		c := model.NewCar()
		found(c)
		for level, p := range []float64{.1, .5, .9} {
			hours := []float64{}
			_, lines := bill(t, table, c, only(t, table, nil), p)
			for _, l := range lines {
				if l.ID == id && l.Item == quarter && l.Trade == car.Metal {
					hours = append(hours, float64(l.Thousandths)/1000)
				}
			}
			want := 1
			if id == "cracked_lead" {
				want = 2
			}
			if len(hours) != want || math.Abs(hours[0]-figures[id][level]*.75) > .001 {
				t.Errorf("%s at %g: %v hours, by hand %d times %g", id, p, hours, want, figures[id][level]*.75)
			}
		}
		_, lines := bill(t, table, c, only(t, table, map[string]car.Way{"quarter_skin.left": car.Full}), .5)
		for _, l := range lines {
			if l.ID == id {
				t.Errorf("%s still charged where the part is replaced", id)
			}
		}
	}
}

// TestGettingInByHand: doors are hung once for each side on which something is
// sectioned, the shell is braced once per car, the axle is moved once for each end.
func TestGettingInByHand(t *testing.T) {
	model, table := testTable(t, "two_door_unitary", "show")
	for _, c := range []struct {
		ways map[string]car.Way
		want string
	}{
		{nil, ""},
		{map[string]car.Way{"outer_sill.left": car.Patch, "outer_sill.right": car.Patch}, ""},
		{map[string]car.Way{"outer_sill.left": car.Section}, "brace_datum hang_gap"},
		{map[string]car.Way{"outer_sill.left": car.Section, "fender_lower.left": car.Section}, "brace_datum hang_gap"},
		{map[string]car.Way{"outer_sill.left": car.Section, "outer_sill.right": car.Full}, "brace_datum hang_gap hang_gap"},
		{map[string]car.Way{"fender_lower.right": car.Section}, "hang_gap"},
		{map[string]car.Way{"cowl_lower.whole": car.Patch}, "open_plenum"},
		{map[string]car.Way{"cowl_lower.whole": car.Patch, "cowl_top.whole": car.Full}, ""},
	} {
		var ids []string
		_, lines := bill(t, table, model.NewCar(), only(t, table, c.ways), .5)
		for _, l := range lines {
			if g := table.gettingInOf(l.ID); g != nil {
				ids = append(ids, l.ID)
			}
		}
		if got := strings.Join(ids, " "); got != c.want {
			t.Errorf("%v: %q, by hand %q", c.ways, got, c.want)
		}
	}
}

// TestBraceFromAbove: a whole brace under a floor that stays takes 1.5 hours more at
// any standard. Where the car has no rear floor, the front floor lies above it.
func TestBraceFromAbove(t *testing.T) {
	for _, standard := range car.Standards {
		braceFromAbove(t, standard)
	}
}

func braceFromAbove(t *testing.T, standard string) {
	for body, floors := range map[string][2]string{"two_door_unitary": {"front_floor", "rear_floor"}, "pickup": {"front_floor", "front_floor"}} {
		model, table := testTable(t, body, standard)
		for i := range table.Body.Items {
			id := table.Body.Items[i].ID
			rest, isBrace := strings.CutPrefix(id, "floor_brace.")
			if !isBrace || !table.isDone(i, car.Full) {
				continue
			}
			end := 0
			if strings.Contains(rest, "rear") {
				end = 1
			}
			side := "left"
			if strings.Contains(rest, "right") {
				side = "right"
			}
			for w, want := range map[car.Way]float64{car.Leave: 1.5, car.Patch: 1.5, car.Section: 0, car.Full: 0} {
				got := 0.0
				_, lines := bill(t, table, model.NewCar(), only(t, table, map[string]car.Way{id: car.Full, floors[end] + "." + side: w}), .5)
				for _, l := range lines {
					if l.Item == i && strings.HasPrefix(l.ID, "brace_from_above") {
						got += float64(l.Thousandths) / 1000
					}
				}
				if math.Abs(got-want) > .001 {
					t.Errorf("%s, %s, %s under a floor with %s: %g h more, by hand %g", body, standard, id, car.WayIDs[w], got, want)
				}
			}
		}
	}
}

// TestCoveredIsNotDone: an item that a whole panel covers takes no work of its own and
// is listed as left, even where it was to be made new itself.
func TestCoveredIsNotDone(t *testing.T) {
	model, table := testTable(t, "two_door_unitary", "show")
	const lower = "fender_lower.left"
	i := itemNamed(t, table, lower)
	alone, _ := bill(t, table, model.NewCar(), only(t, table, map[string]car.Way{"fender_upper.left": car.Full}), .5)
	both, _ := bill(t, table, model.NewCar(), only(t, table, map[string]car.Way{"fender_upper.left": car.Full, lower: car.Fabricate}), .5)
	if !both.Covered[i] || both.Way[i] != car.Leave || both.Drawn[i] != car.Fabricate || both.Total != alone.Total {
		t.Errorf("covered %v, %s, %d in all; without it %d", both.Covered[i], car.WayIDs[both.Way[i]], both.Total, alone.Total)
	}
}

// TestUnknownWish: each unknown standard or scope is refused on its own.
func TestUnknownWish(t *testing.T) {
	_, table := testTable(t, "two_door_unitary", "show")
	common, err := car.LoadCommon()
	if err != nil {
		t.Fatal(err)
	}
	for path, w := range map[string][]Wish{
		"standard": {{"best", "show", "whole_body", false}, {"show", "best", "whole_body", false}},
		"scope":    {{"show", "show", "all", false}},
	} {
		for _, wish := range w {
			if _, err := NewTableFor(table.Body, common, table.Rates, wish); err == nil || !strings.HasPrefix(err.Error(), path+": ") {
				t.Errorf("%v: expected a complaint about %s, got %v", wish, path, err)
			}
		}
	}
}
