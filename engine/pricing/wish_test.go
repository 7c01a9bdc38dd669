package pricing

import (
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/rates"
)

// TestWish: a step that the customer does is taken off the stage to the cent. A lower
// standard for what nobody sees leaves outer parts as they are and makes no part
// costlier.
func TestWish(t *testing.T) {
	r, err := rates.Decode(rates.Sample())
	if err != nil {
		t.Fatal(err)
	}
	common, err := car.LoadCommon()
	if err != nil {
		t.Fatal(err)
	}
	b, err := car.Load("two_door_unitary")
	if err != nil {
		t.Fatal(err)
	}
	table := func(w Wish) *Table {
		tb, err := NewTableFor(b, common, r, w)
		if err != nil {
			t.Fatal(err)
		}
		return tb
	}
	plain := table(Wish{"concours", "concours", "whole_body", false})
	own := table(Wish{"concours", "concours", "whole_body", true})
	for k := range plain.strip {
		line := &plain.strip[k]
		if line.id != disassemble {
			continue
		}
		if line.chargedAsWorked() {
			t.Fatal("the sample charges disassembly as worked")
		}
		off := plain.StagePrice().Fixed - own.StagePrice().Fixed
		want := r.Labour.Trades[line.trade].Rate.Of(thousandths(line.likely))
		if d := off - want; d < -1 || d > 1 { // one rounding per trade, not per step
			t.Errorf("the stage is %d cheaper, disassembly costs %d", off, want)
		}
	}
	for _, l := range own.StagePrice().Lines {
		if l.ID == disassemble {
			t.Error("the customer's step is still on the list")
		}
	}
	unseen := table(Wish{"concours", "driver", "whole_body", false})
	lower := 0
	for i := range plain.items {
		for w := range plain.items[i].ways {
			a, b := &plain.items[i].ways[w], &unseen.items[i].ways[w]
			for k := 0; k < a.n; k++ {
				before, now := a.hours[k].Likely(), b.hours[k].Likely()
				if now > before || plain.Body.PartOf(i).Face != car.Hidden && now != before {
					t.Fatalf("item %d: %v hours, before %v", i, now, before)
				}
				if now < before {
					lower++
				}
			}
		}
	}
	if lower == 0 {
		t.Error("a lower standard of what nobody sees saves nothing")
	}
}
