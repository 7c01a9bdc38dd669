package pricing

import (
	"testing"

	"underpaint/engine/rates"
)

// TestMaterialsFollowTheirScopes: a material that the shop does not use at a scope is
// not in the total, and removing its scope removes exactly its price. (This body has no frame, and each car
// its own replaced parts.)
func TestMaterialsFollowTheirScopes(t *testing.T) {
	_, table := testTable(t, "two_door_unitary", "show")
	before := table.materialsOf(rates.AfterStage)
	for k := range table.Rates.Materials {
		m := &table.Rates.Materials[k]
		if m.Stage != rates.AfterStage || !m.Scopes[table.Scope] || m.Factor[table.Standard] == 0 || m.Area == rates.Replaced || m.Area == rates.Frame {
			continue
		}
		m.Scopes[table.Scope] = false
		if got, want := table.materialsOf(rates.AfterStage), before-m.Price.Of(table.Quantity(*m)); got != want || got == before {
			t.Errorf("without %s: %d, want %d", m.ID, got, want)
		}
		m.Scopes[table.Scope] = true
	}
	if before == 0 {
		t.Error("no materials at all")
	}
}
