package pricing

import (
	"math"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/rates"
)

// swapped prices a framed body of which one frame rail is replaced, which means another
// frame, with all uniforms at p and rust of its own decided by rust.
func swapped(t *testing.T, body, scope string, p, rust float64) (out map[string][car.Trades]int64, part int64, nuts int) {
	t.Helper()
	model, table := scoped(t, body, "show", scope, asPublished)
	u, b := table.NewUniforms(), table.NewBill()
	setAll(u, p)
	u.Another[chassisRusts], u.Another[chassisHours] = rust, p
	out = map[string][car.Trades]int64{}
	for _, l := range with(t, table, only(t, table, map[string]car.Way{"chassis_rail.left": car.Full})).Explain(model.NewCar(), "sea", u, b) {
		if l.Item >= 0 || l.Strip {
			continue
		}
		switch {
		case l.ID == "part":
			part += int64(l.Price)
		case l.ID == "captive_nut":
			nuts++
		default:
			hours := out[l.ID]
			hours[l.Trade] += l.Thousandths
			out[l.ID] = hours
		}
	}
	return out, part, nuts
}

// TestAnotherFrameByHand: the hours and the price of another frame are those of the body
// file (metal 12/25/50, prep 10/16/28, paint 5/9/15, fitting 30/50/85; 1500/3500/8000), one
// uniform for all trades; 45 of 100 bring rust of their own, 4/12/36 hours.
func TestAnotherFrameByHand(t *testing.T) {
	for k, p := range []float64{.1, .5, .9} {
		out, part, _ := swapped(t, "hardtop_on_frame", "whole_body", p, .44)
		want := [car.Trades]float64{car.Metal: []float64{12, 25, 50}[k], car.Prep: []float64{10, 16, 28}[k], car.Paint: []float64{5, 9, 15}[k], car.Fit: []float64{30, 50, 85}[k]}
		for trade, h := range want {
			if got := float64(out[otherChassis][trade]) / 1000; math.Abs(got-h) > .002 {
				t.Errorf("at %g: %g hours of %s, body file %g", p, got, car.TradeIDs[trade], h)
			}
		}
		if got, h := float64(out["other_chassis_rust"][car.Metal])/1000, []float64{4, 12, 36}[k]; math.Abs(got-h) > .002 {
			t.Errorf("at %g: %g hours on its own rust, body file %g", p, got, h)
		}
		if want := []float64{1500, 3500, 8000}[k]; math.Abs(float64(part)-100*want) > 1 {
			t.Errorf("at %g: price %d, body file %g", p, part, want)
		}
		clean, _, _ := swapped(t, "hardtop_on_frame", "whole_body", p, .46)
		if _, rusts := clean["other_chassis_rust"]; rusts {
			t.Errorf("at %g: rust of its own in more than 45 of 100", p)
		}
	}
}

// TestAnotherFrameLiftsTheBody: where the stage has not lifted the body, another frame
// does, so the lift is not charged beside it; the seized bolts show all the same. A rail
// made by hand needs the lift.
func TestAnotherFrameLiftsTheBody(t *testing.T) {
	for _, body := range []string{"hardtop_on_frame", "open_two_seater", "pickup"} {
		for _, scope := range rates.ScopeIDs {
			out, _, nuts := swapped(t, body, scope, .3, .9)
			if _, lifted := out[bodyOff]; lifted || nuts == 0 || out[otherChassis][car.Fit] == 0 {
				t.Errorf("%s, %s: %v, %d seized bolts", body, scope, out, nuts)
			}
			if paint := out[otherChassis][car.Paint]; (paint == 0) != (scope == "metalwork_only") {
				t.Errorf("%s, %s: %d thousandths of paint", body, scope, paint)
			}
		}
		model, table := scoped(t, body, "show", "outside_only", asPublished)
		_, lines := bill(t, table, model.NewCar(), only(t, table, map[string]car.Way{"chassis_rail.left": car.Fabricate}), .5)
		lifted := 0
		for _, l := range lines {
			if l.ID == bodyOff {
				lifted++
			}
		}
		if lifted != 1 {
			t.Errorf("%s: a rail made by hand lifts the body %d times", body, lifted)
		}
	}
}

// TestDoorsAndLidsAreFittedWhole: a door's skin, its shell and both lids have a whole panel
// that is fitted where the pieces cost more, as another body is taken in large.
func TestDoorsAndLidsAreFittedWhole(t *testing.T) {
	for _, body := range car.BodyIDs {
		_, table := testTable(t, body, "show")
		compared := map[string]bool{}
		for _, p := range table.panels {
			compared[table.Body.PartOf(p.item).ID] = true
		}
		for _, part := range []string{"door_skin", "door_shell", "hood", "trunk_lid"} {
			if _, has := table.Body.PartNamed(part); has && !compared[part] {
				t.Errorf("%s: nothing compares a whole %s with its pieces", body, part)
			}
		}
	}
}
