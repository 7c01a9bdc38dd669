package pricing

import (
	"encoding/json"
	"slices"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/money"
	"underpaint/engine/rates"
)

// TestSentOutByHand: the sample shop has waste (220) taken away on every job, the body
// (240) moved unless only the outside is done, and small parts (350) powder coated at
// the two higher standards on a whole body. Ten per cent goes on top of each stage's
// amount.
func TestSentOutByHand(t *testing.T) {
	for _, standard := range car.Standards {
		for _, scope := range rates.ScopeIDs {
			model, table := scoped(t, "two_door_unitary", standard, scope, asPublished)
			strip, after := money.Minor(22000), money.Minor(0)
			if scope != "outside_only" {
				strip += 24000
			}
			if scope == "whole_body" && standard != "driver" {
				after = 35000
			}
			b, _ := bill(t, table, model.NewCar(), only(t, table, nil), .5)
			if b.sentIn != strip*11/10 || b.SentOut != after*11/10 {
				t.Errorf("%s, %s: %d and %d sent out, by hand %d and %d", standard, scope, b.sentIn, b.SentOut, strip*11/10, after*11/10)
			}
		}
	}
}

// openingRow is one row of "opened_because" in the file of the work.
type openingRow struct {
	ID            string
	If            []string
	AtLeast       string `json:"at_least"`
	SameSide      bool   `json:"same_side"`
	Unless        string
	UnlessAtLeast string `json:"unless_at_least"`
	Raise         []struct{ Part, To, End string }
}

// TestOpeningsByHand goes through every row of the file on every body. Done in the
// row's way, or in the next that is done there, the item opens what the row names, on
// its own side if the row says so. A lesser way opens nothing, and nothing is opened
// where the row's exception applies.
func TestOpeningsByHand(t *testing.T) {
	var file struct {
		OpenedBecause []openingRow `json:"opened_because"`
	}
	if err := json.Unmarshal(figuresFile, &file); err != nil || len(file.OpenedBecause) == 0 {
		t.Fatal(err)
	}
	tried := map[string]int{}
	for _, body := range car.BodyIDs {
		_, table := testTable(t, body, "show")
		for _, row := range file.OpenedBecause {
			for i := range table.items {
				if slices.Contains(row.If, table.Body.PartOf(i).ID) {
					tried[row.ID] += tryOpening(t, table, row, i)
				}
			}
		}
	}
	for _, row := range file.OpenedBecause {
		if tried[row.ID] == 0 {
			t.Errorf("%s was tried on no item", row.ID)
		}
	}
}

func tryOpening(t *testing.T, table *Table, row openingRow, i int) (tried int) {
	t.Helper()
	least := car.Way(slices.Index(car.WayIDs[:], row.AtLeast))
	raisedBy := func(w car.Way, unless bool) []bool {
		way, by, raised := make([]car.Way, len(table.items)), make([]int16, len(table.items)), make([]bool, len(table.items))
		for k := range by {
			by[k] = -1
			if unless && table.Body.PartOf(k).ID == row.Unless {
				way[k] = car.Way(slices.Index(car.WayIDs[:], row.UnlessAtLeast))
			}
		}
		way[i] = w
		table.raiseWays(way, by)
		for k := range by {
			raised[k] = by[k] >= 0 && table.fig.openings[by[k]].id == row.ID
		}
		return raised
	}
	none := func(raised []bool, why string) {
		if slices.Contains(raised, true) {
			t.Errorf("%s, %s on %s: opened %s", table.Body.ID, row.ID, table.Body.Items[i].ID, why)
		}
	}
	none(raisedBy(least-1, false), "by a way short of it")
	if row.Unless != "" {
		none(raisedBy(least, true), "although "+row.Unless+" is off")
	}
	raised := raisedBy(least, false)
	for k := range table.items {
		want := false
		for _, r := range row.Raise {
			to := car.Way(slices.Index(car.WayIDs[:], r.To))
			end := r.End == "" || string(table.Body.Items[k].End) == r.End
			side := !row.SameSide || table.Body.Items[k].Side == table.Body.Items[i].Side
			want = want || table.Body.PartOf(k).ID == r.Part && end && side && table.items[k].instead[to] > car.Leave
		}
		if raised[k] != want {
			t.Errorf("%s, %s on %s: %s opened: %v, by hand %v", table.Body.ID, row.ID, table.Body.Items[i].ID, table.Body.Items[k].ID, raised[k], want)
		}
		if want {
			tried++
		}
	}
	return tried
}

// TestNoWholePanel: where the shop can buy only a section of a part, or makes it by
// hand, a whole panel is made by hand.
func TestNoWholePanel(t *testing.T) {
	for had, want := range map[string]car.Way{"": car.Full, "made_today": car.Full, "section_only": car.Fabricate, "by_hand": car.Fabricate} {
		_, table := scoped(t, "two_door_unitary", "show", "whole_body", func(r *rates.Rates) {
			r.Parts.Prices = nil
			if had != "" {
				r.Parts.Prices = []rates.PartPrice{{Part: "quarter_skin", Way: car.Full, Had: had}}
			}
		})
		if got := table.items[itemNamed(t, table, "quarter_skin.left")].instead[car.Full]; got != want {
			t.Errorf("had %q: a whole panel is %s, by hand %s", had, car.WayIDs[got], car.WayIDs[want])
		}
	}
}

// TestAnotherChassisCovers: another chassis brings its own rails, kick-ups and
// outriggers, so none of them is worked on or charged.
func TestAnotherChassisCovers(t *testing.T) {
	model, table := testTable(t, "hardtop_on_frame", "show")
	ways := map[string]car.Way{}
	covered := 0
	for i := range table.items {
		switch table.Body.PartOf(i).ID {
		case "chassis_rail":
			ways[table.Body.Items[i].ID] = car.Full
		case "chassis_kickup", "chassis_front", "outrigger":
			ways[table.Body.Items[i].ID] = car.Patch
		}
	}
	b, lines := bill(t, table, model.NewCar(), only(t, table, ways), .5)
	for i := range table.items {
		switch table.Body.PartOf(i).ID {
		case "chassis_kickup", "chassis_front", "outrigger":
			covered++
			if !b.Covered[i] || b.Way[i] != car.Leave {
				t.Errorf("%s: covered %v, %s", table.Body.Items[i].ID, b.Covered[i], car.WayIDs[b.Way[i]])
			}
		}
	}
	other := 0
	for _, l := range lines {
		if l.ID == "other_chassis" && l.Trade == car.Metal {
			other++
		}
		if l.Item >= 0 && slices.Contains([]string{"chassis_rail", "chassis_kickup", "chassis_front", "outrigger"}, table.Body.PartOf(l.Item).ID) && l.ID == "" {
			t.Errorf("%s is charged beside another chassis", table.Body.Items[l.Item].ID)
		}
	}
	if covered == 0 || other != 1 {
		t.Errorf("%d parts covered, another chassis charged %d times", covered, other)
	}
}
