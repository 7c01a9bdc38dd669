package evidence

import (
	"slices"
	"testing"

	"underpaint/engine/car"
)

// readRight is what a survey records. Rows are true conditions and columns are records,
// from sound to gone. A keying error of 1e-6 is taken out by hand.
var readRight = map[string][6][6]float64{
	"seen": {
		{.929996, .07, 1e-6, 1e-6, 1e-6, 1e-6},
		{.035, .929997, .035, 1e-6, 1e-6, 1e-6},
		{1e-6, .035, .964497, .0005, 1e-6, 1e-6},
		{1e-6, 1e-6, .035, .929997, .035, 1e-6},
		{1e-6, 1e-6, 1e-6, .035, .929997, .035},
		{1e-6, 1e-6, 1e-6, 1e-6, .07, .929996},
	},
	"outside": {
		{.619997, .28, .10, 1e-6, 1e-6, 1e-6},
		{.30, .449997, .25, 1e-6, 1e-6, 1e-6},
		{.15, .31, .539997, 1e-6, 1e-6, 1e-6},
		{.10, .21, .409998, .28, 1e-6, 1e-6},
		{.06, .13, .26, .18, .369999, 1e-6},
		{.04, .09, .18, .13, .28, .28},
	},
}

func TestReadingCondition(t *testing.T) {
	b := load(t, "two_door_unitary")
	for recorded, id := range car.ConditionIDs {
		for name, row := range map[string]struct {
			part   string
			opened bool
			table  string
		}{
			"seen":    {"floor_brace", false, "seen"},
			"outside": {"inner_sill", false, "outside"},
			"opened":  {"inner_sill", true, "seen"},
		} {
			p := part(t, b, row.part)
			if closedBox := name != "seen"; p.SeenWhenStripped == closedBox || p.Face == car.Outer {
				t.Fatalf("%s is not the part for this case", row.part)
			}
			l := read(t, p, SurveyEntry{Condition: id, Finding: "none", Opened: row.opened})
			for is := range l {
				want := readRight[row.table][is][recorded]
				near(t, name+": "+car.ConditionIDs[is]+" recorded as "+id, l[is][0][0], want*.97, 1e-15)
				near(t, name+": the chance of it", RecordChance(row.table == "outside", is, recorded), want, 1e-15)
			}
		}
	}
}

// The chances of the records of a condition add up to one. Apart from keying errors, a
// hole is recorded where there is none only on one heavily pitted part in two thousand,
// and a closed box judged from outside is never recorded as worse than it is.
func TestRecordsInventNothing(t *testing.T) {
	const slip = 1e-6
	for _, closed := range []bool{false, true} {
		for is := range car.Conditions {
			sum, holes := 0.0, 0.0
			for recorded := range car.Conditions {
				p := RecordChance(closed, is, recorded)
				sum += p
				if recorded >= firstHole {
					holes += p
				}
				if p < slip {
					t.Errorf("%s as %s: %g", car.ConditionIDs[is], car.ConditionIDs[recorded], p)
				}
				if invented := is < firstHole && recorded >= firstHole; invented && p > .0005+slip || closed && recorded > max(is, firstHole-1) && p > slip {
					t.Errorf("closed %v: %s as %s: %g", closed, car.ConditionIDs[is], car.ConditionIDs[recorded], p)
				}
			}
			near(t, car.ConditionIDs[is]+", all records", sum, 1, 1e-15)
			if is < firstHole && holes > .0005+3*slip {
				t.Errorf("closed %v: a hole in %s: %g", closed, car.ConditionIDs[is], holes)
			}
		}
	}
}

// The true conditions behind a record, by hand from the tables: one step to either side
// for a part that was seen, and every row with a figure for a closed box from outside.
func TestReadable(t *testing.T) {
	for recorded, want := range [][]int{{0, 1}, {0, 1, 2}, {1, 2, 3}, {2, 3, 4}, {3, 4, 5}, {4, 5}} {
		if got := Readable(false, recorded); !slices.Equal(got, want) {
			t.Errorf("seen as %s: %v, want %v", car.ConditionIDs[recorded], got, want)
		}
	}
	for recorded, want := range [][]int{{0, 1, 2, 3, 4, 5}, {0, 1, 2, 3, 4, 5}, {0, 1, 2, 3, 4, 5}, {3, 4, 5}, {4, 5}, {5}} {
		if got := Readable(true, recorded); !slices.Equal(got, want) {
			t.Errorf("from outside as %s: %v, want %v", car.ConditionIDs[recorded], got, want)
		}
	}
	near(t, "named below", SlipNamedBelow(), .003, 0)
}
