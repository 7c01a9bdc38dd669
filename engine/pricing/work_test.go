package pricing

import (
	"slices"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/rates"
)

// TestBillsKeepToTheWorkInRange: every line of the bills of simulated cars is among the
// work that the table lists, and so is the way of every item. The bills themselves are
// the check, because they are made without the lists.
func TestBillsKeepToTheWorkInRange(t *testing.T) {
	for _, body := range car.BodyIDs {
		for _, scope := range rates.ScopeIDs {
			model, table := scoped(t, body, "show", scope, asPublished)
			ways := table.WaysInRange(slices.Repeat([]int{-1}, len(table.items)))
			listed := map[string]bool{"part": true}
			for _, l := range slices.Concat(table.StripWork(), table.CarWork(ways)) {
				listed[l.ID] = true
			}
			for _, f := range Findings() {
				listed[f.ID] = true
			}
			for _, a := range table.fig.above {
				listed[a.id] = true // drilling, part of the way of the brace
			}
			c, u, b := model.NewCar(), table.NewUniforms(), table.NewBill()
			for k := range uint64(150) {
				damaged, priced := chance.NewStream(seed, 2*k), chance.NewStream(seed, 2*k+1)
				model.Draw(&damaged, c)
				u.Fill(&priced)
				for _, l := range table.Explain(c, "salt", u, b) {
					if l.ID != "" && !listed[l.ID] {
						t.Fatalf("%s %s: %q is in a bill and not in the list", body, scope, l.ID)
					}
				}
				for i, w := range b.Way {
					if whole := w == car.Full && b.RaisedBy[i] < 0 && b.Drawn[i] != w; w != car.Leave && !whole && !slices.Contains(ways[i], w) {
						t.Fatalf("%s %s: %s gets %s, listed %v", body, scope, table.Body.Items[i].ID, car.WayIDs[w], ways[i])
					}
				}
			}
		}
	}
}

// TestWorkInRange: what is chosen replaces what is usual, metal recorded sound gets the
// ways of sound metal only, and what the customer does is no work of the shop's.
// Worked by hand from work.json and the body file.
func TestWorkInRange(t *testing.T) {
	_, table := testTable(t, "two_door_unitary", "show")
	sill := itemNamed(t, table, "outer_sill.left")
	condition := slices.Repeat([]int{0}, len(table.items))
	if got := table.WaysInRange(condition); slices.ContainsFunc(got, func(w []car.Way) bool { return len(w) > 0 }) {
		t.Errorf("sound all over: %v", got)
	}
	condition[sill] = -1
	if got := table.WaysInRange(condition)[sill]; !slices.Contains(got, car.Treat) || !slices.Contains(got, car.Section) {
		t.Errorf("not recorded: %v", got)
	}
	chosen := with(t, table, choose(table, sill, car.Section))
	ways := chosen.WaysInRange(condition)
	if !slices.Equal(ways[sill], []car.Way{car.Section}) {
		t.Errorf("chosen: %v", ways[sill])
	}
	// Work on the inner sill opens the outer one, whatever its own condition.
	condition[sill] = 0
	if got := with(t, table, choose(table, itemNamed(t, table, "inner_sill.left"), car.Section)).WaysInRange(condition)[sill]; len(got) != 1 {
		t.Errorf("opened for other work: %v", got)
	}
	has := func(lines []WorkLine, id string) bool {
		return slices.ContainsFunc(lines, func(l WorkLine) bool { return l.ID == id })
	}
	if !has(chosen.CarWork(ways), "brace_datum") || has(table.CarWork(make([][]car.Way, len(table.items))), "brace_datum") {
		t.Error("a sill in section, and nothing else, calls for bracing")
	}
	own := wished(t, table, Wish{Standard: "show", Unseen: "show", Scope: "whole_body", OwnDisassembly: true})
	if !has(table.StripWork(), disassemble) || has(own.StripWork(), disassemble) || !has(own.StripWork(), "undercoat") {
		t.Error("the customer's own step")
	}
}
