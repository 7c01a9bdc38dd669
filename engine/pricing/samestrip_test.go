package pricing

import (
	"math"
	"testing"

	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"underpaint/engine/car"
	"underpaint/engine/rates"
)

// wished is a table of the same body with another wish.
func wished(t *testing.T, table *Table, w Wish) *Table {
	t.Helper()
	common, err := car.LoadCommon()
	if err != nil {
		t.Fatal(err)
	}
	out, err := NewTableFor(table.Body, common, table.Rates, w)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// TestSameStrip: the standard of finish and paint left out do not change the strip;
// less to strip, or the customer doing some of it, does.
func TestSameStrip(t *testing.T) {
	for _, body := range car.BodyIDs {
		_, table := testTable(t, body, "show")
		for _, c := range []struct {
			name string
			wish Wish
			same bool
		}{
			{"as it is", Wish{"show", "show", "whole_body", false}, true},
			{"another standard", Wish{"concours", "concours", "whole_body", false}, true},
			{"a lower standard of what is unseen", Wish{"show", "driver", "whole_body", false}, true},
			{"ending in primer", Wish{"show", "show", "metalwork_only", false}, true},
			{"outside only", Wish{"show", "show", "outside_only", false}, false},
			{"taken apart by the customer", Wish{"show", "show", "whole_body", true}, false},
		} {
			other := wished(t, table, c.wish)
			if table.SameStrip(other) != c.same || other.SameStrip(table) != c.same {
				t.Errorf("%s, %s: the same strip: %v, by hand %v", body, c.name, !c.same, c.same)
			}
		}
	}
}

// TestHoursUnderAnotherWish: on a two-door, the strip takes 73 likely hours of fitting,
// 42 of them to take it apart. 80 hours worked say little about the car. The same 80,
// read on a strip of 31 hours, would say that everything goes far slower, and a job
// with less work in it would cost more. That is why such a table is not the same strip.
func TestHoursUnderAnotherWish(t *testing.T) {
	model, table := testTable(t, "two_door_unitary", "show")
	own := wished(t, table, Wish{"show", "show", "whole_body", true})
	d := Undecided()
	d.StripHours[car.Fit] = 80
	fitted := func(table *Table) (likely float64) {
		for k := range table.strip {
			if l := &table.strip[k]; l.trade == car.Fit && !l.byCustomer {
				likely += l.likely
			}
		}
		return likely
	}
	if plain, alone := fitted(table), fitted(own); math.Abs(plain-73) > 1e-9 || math.Abs(alone-31) > 1e-9 {
		t.Fatalf("%g likely hours of fitting, %g without taking it apart, by hand 73 and 31", plain, alone)
	}
	total := func(table *Table, d Decided) int64 {
		b, _ := bill(t, table, model.NewCar(), d, .5)
		return int64(b.Total)
	}
	if before, after := total(table, Undecided()), total(own, Undecided()); after >= before {
		t.Errorf("before the strip: %d, taken apart by the customer %d", before, after)
	}
	if before, wrong := total(table, d), total(own, d); wrong <= before {
		t.Errorf("80 hours on a strip of 31: %d, as they were worked %d: nothing to guard against", wrong, before)
	}
	// By hand, as for any normal observation: the log of the factor of fitting,
	// standard deviation .12, moves by .12² ÷ (.12² + the variance of the log of the
	// hours) of the distance between the hours and their median, which
	// [Table.StripOutlook] publishes with their spread.
	for _, table := range []*Table{table, own} {
		o := table.StripOutlook()[car.Fit]
		sd := math.Log(o[2]/o[1]) / 1.2815515655446004
		want := math.Exp(.12 * .12 / (sd * sd) * math.Log(80/o[1]))
		u := table.NewUniforms()
		setAll(u, .5)
		if got := with(t, table, d).factors(u)[car.Fit]; math.Abs(got/want-1) > 1e-9 {
			t.Errorf("80 hours of fitting against %.1f: everything goes %.4f times as long, by hand %.4f", o[1], got, want)
		}
	}
}

// TestHoursOnSameStrip: hours worked say the same about the car on every table of the
// same strip, and the charge of the stage is the same.
func TestHoursOnSameStrip(t *testing.T) {
	_, table := testTable(t, "pickup", "show")
	var others []*Table
	for _, standard := range car.Standards {
		for _, unseen := range car.Standards {
			for _, scope := range rates.ScopeIDs {
				for _, own := range []bool{false, true} {
					others = append(others, wished(t, table, Wish{standard, unseen, scope, own}))
				}
			}
		}
	}
	alike := func(other *Table, d Decided) bool {
		a, b := with(t, table, d).decided, with(t, other, d).decided
		if a.factors != b.factors {
			return false
		}
		for k := range a.charged {
			if a.charged[k] != b.charged[k] {
				return false
			}
		}
		return true
	}
	same, differ := 0, 0
	properties := gopter.NewProperties(parameters())
	properties.Property("hours say the same on the same strip", prop.ForAll(func(pick int, prep, fit float64) bool {
		other, d := others[pick], Undecided()
		d.StripHours[car.Prep], d.StripHours[car.Fit] = prep, fit
		if !table.SameStrip(other) {
			if !alike(other, d) {
				differ++
			}
			return true
		}
		same++
		return alike(other, d)
	}, gen.IntRange(0, len(others)-1), gen.Float64Range(20, 300), gen.Float64Range(20, 200)))
	properties.TestingRun(t)
	if same < 50 || differ < 50 {
		t.Errorf("%d of the same strip, %d of another that read the hours otherwise", same, differ)
	}
}
