package pricing

import (
	"math"
	"slices"
	"strings"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/damage"
	"underpaint/engine/olddamage"
	"underpaint/engine/rates"
)

// crookedFront is a car whose front is crooked and whose rear was mended roughly.
func crookedFront() *olddamage.Known {
	return &olddamage.Known{RoadYears: 20, Zones: [olddamage.Zones]string{"crooked", "roughly", "none", "well", "none"}, Square: olddamage.OutOfSquare}
}

// stating is the table of a shop that states its own hidden_history.
func stating(t *testing.T, b *car.Body, member string) *Table {
	t.Helper()
	r, err := rates.Decode([]byte(strings.Replace(string(rates.Sample()), `"own_figures":`, `"hidden_history": `+member+`, "own_figures":`, 1)))
	if err != nil {
		t.Fatal(err)
	}
	common, err := car.LoadCommon()
	if err != nil {
		t.Fatal(err)
	}
	table, err := NewTable(b, common, r, "show", "whole_body")
	if err != nil {
		t.Fatal(err)
	}
	return table
}

// linesOf lists hours by id and trade.
func linesOf(lines []Line) map[string]float64 {
	out := map[string]float64{}
	for _, l := range lines {
		out[l.ID+" "+car.TradeIDs[l.Trade]] += float64(l.Thousandths) / 1000
	}
	return out
}

// TestHitByHand: the likely hours of a crooked front and a rear mended roughly, at show
// standard and at driver's, worked out by hand from the published hours of each line and
// the factors of the standard. Setting up takes no factor, and the shell is braced once.
func TestHitByHand(t *testing.T) {
	for standard, factor := range map[string][car.Trades]float64{"show": {1, 1, 1, 1, 1}, "driver": {.75, .8, .55, .6, .65}} {
		model, table := testTable(t, "two_door_unitary", standard)
		d := only(t, table, nil)
		d.Old = crookedFront()
		_, lines := bill(t, table, model.NewCar(), d, .5)
		got := linesOf(lines)
		for id, want := range map[string]float64{
			"mended_roughly_front metal": 14 * factor[car.Metal], "mended_roughly_front prep": 1 * factor[car.Prep], "mended_roughly_front body": 5 * factor[car.BodyWork], "mended_roughly_front paint": 1 * factor[car.Paint],
			"crooked_front metal": 20 * factor[car.Metal], "crooked_front fit": 6 * factor[car.Fit],
			"mended_roughly_rear metal": 14 * factor[car.Metal], "crooked_rear metal": 0, "mended_roughly_right metal": 0, "sagged metal": 0,
			"set_up metal": 10,
		} {
			if math.Abs(got[id]-want) > 0.001 {
				t.Errorf("%s, %s: %.3f h, by hand %.3f", standard, id, got[id], want)
			}
		}
		if got["brace_datum metal"] == 0 {
			t.Errorf("%s: nobody braces the crooked end", standard)
		}
	}
}

// TestHitHalved: where the panel of a zone is replaced whole, half the hours of mending
// that zone are left, and no others.
func TestHitHalved(t *testing.T) {
	model, table := testTable(t, "two_door_unitary", "show")
	d := only(t, table, map[string]car.Way{"fender_upper.left": car.Full})
	d.Old = crookedFront()
	_, lines := bill(t, table, model.NewCar(), d, .5)
	got := linesOf(lines)
	for id, want := range map[string]float64{"mended_roughly_front metal": 7, "mended_roughly_front body": 2.5, "crooked_front metal": 20, "mended_roughly_rear metal": 14} {
		if math.Abs(got[id]-want) > 0.001 {
			t.Errorf("%s: %.3f h, by hand %.3f", id, got[id], want)
		}
	}
}

// TestSetUpSentOut: a shop that has the setting up done elsewhere charges its price with
// its handling, and no hours.
func TestSetUpSentOut(t *testing.T) {
	model, plain := testTable(t, "two_door_unitary", "show")
	table := stating(t, plain.Body, `{"sent_out": [600, 1200, 2500]}`)
	table.overTime = nil // at the prices of the day of the rates
	d := only(t, table, nil)
	d.Old = crookedFront()
	with, lines := bill(t, table, model.NewCar(), d, .5)
	if h := linesOf(lines)["set_up metal"]; h != 0 {
		t.Errorf("%g h of setting up beside the price", h)
	}
	d.Old = &olddamage.Known{Zones: [olddamage.Zones]string{"none", "none", "none", "none", "none"}, Square: olddamage.Square}
	without, _ := bill(t, table, model.NewCar(), d, .5)
	if got := with.SentOut - without.SentOut; got != 132000 {
		t.Errorf("sent out for %d, by hand 1200.00 and 10 %%", got)
	}
}

// TestHandByHand: a poor hand's part that was replaced is lapped at the uniform .3 (right
// ends at .20, a bad panel at .58), a good hand's is right; ten hours. Not on bare metal
// that was recorded without it, and not where the part is replaced again.
func TestHandByHand(t *testing.T) {
	model, table := testTable(t, "two_door_unitary", "show")
	i := itemNamed(t, table, "door_skin.left")
	c := model.NewCar()
	c.Finding[i] = damage.Replaced
	for _, one := range []struct {
		name   string
		hand   float64 // its uniform
		bare   bool
		way    car.Way
		hours  float64
		finder string
	}{{"poor", .999, false, car.Leave, 10, "bad_panel"}, {"good", .001, false, car.Leave, 0, "bad_panel"}, {"bare", .999, true, car.Leave, 0, "bad_panel"}, {"replaced again", .999, false, car.Full, 0, "bad_panel"}} {
		d := only(t, table, map[string]car.Way{"door_skin.left": one.way})
		d.Old, d.Bare = &olddamage.Known{}, make([]bool, len(table.items))
		d.Bare[i] = one.bare
		u, b := table.NewUniforms(), table.NewBill()
		setAll(u, .5)
		u.Old[2], u.Old[oldItems+i] = one.hand, .3
		if got := linesOf(with(t, table, d).Explain(c, "dry", u, b))[one.finder+" metal"]; math.Abs(got-one.hours) > 0.001 {
			t.Errorf("%s: %.3f h, by hand %g", one.name, got, one.hours)
		}
	}
}

// TestRecordedOnce: what a survey recorded is priced once, with the filling that a warped
// skin takes, and the finding of the whole car becomes a body out of square.
func TestRecordedOnce(t *testing.T) {
	model, table := testTable(t, "two_door_unitary", "show")
	i := itemNamed(t, table, "hood.whole")
	d := only(t, table, nil)
	d.Also = make([][]string, len(table.items))
	d.Also[i], d.WholeCar, d.Old = []string{"blast_warp"}, []string{"twist"}, &olddamage.Known{}
	u, b := table.NewUniforms(), table.NewBill()
	setAll(u, .5)
	u.Old[oldItems+len(table.items)+i] = 1e-6 // it would be drawn as well
	got := linesOf(with(t, table, d).Explain(model.NewCar(), "dry", u, b))
	for id, want := range map[string]float64{"blast_warp metal": 8, "blast_warp body": 3, "twist metal": 0, "sagged metal": 16, "set_up metal": 10} {
		if math.Abs(got[id]-want) > 0.001 {
			t.Errorf("%s: %.3f h, by hand %g", id, got[id], want)
		}
	}
}

// TestMeasuring: every strip has the measuring, in its hours and its fixed price, but a
// strip that is over without it has no hours for it.
func TestMeasuring(t *testing.T) {
	model, table := testTable(t, "two_door_unitary", "show")
	d := only(t, table, nil)
	d.Old = &olddamage.Known{}
	measured, _ := bill(t, table, model.NewCar(), d, .5)
	d.Unmeasured = true
	not, _ := bill(t, table, model.NewCar(), d, .5)
	if got := measured.StripHours[car.Metal] - not.StripHours[car.Metal]; got != 3000 {
		t.Errorf("%d thousandths of measuring, published 3 h", got)
	}
	before := stating(t, table.Body, `{"in_range": false}`)
	if got, want := table.StagePrice().Fixed-before.StagePrice().Fixed, table.Rates.Labour.Trades[car.Metal].Rate.Of(3000); got != want {
		t.Errorf("the fixed price has %d of measuring, by hand %d", got, want)
	}
}

// TestOneKind: no part has more than one of the kinds that do not depend on an earlier
// repair, so one uniform settles them.
func TestOneKind(t *testing.T) {
	for _, id := range car.BodyIDs {
		b, err := car.Load(id)
		if err != nil {
			t.Fatal(err)
		}
		for p := range b.Parts {
			can := 0
			for _, f := range Findings() {
				if slices.Contains([]string{"stress_crack", "packed"}, f.ID) && f.On(&b.Parts[p]) {
					can++
				}
			}
			if olddamage.Starting().BigSkin(&b.Parts[p]) {
				can++
			}
			if can > 1 {
				t.Errorf("%s: %s has %d kinds", id, b.Parts[p].ID, can)
			}
		}
	}
}
