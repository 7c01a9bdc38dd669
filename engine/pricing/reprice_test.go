package pricing

import (
	"testing"

	"underpaint/engine/chance"
	"underpaint/engine/damage"
)

// TestAgain: the same car with other whole-car factors, another doubt and another rise of
// prices costs the same to the minor unit as when everything is worked out anew. It also checks that the price
// depends on them.
func TestAgain(t *testing.T) {
	for body, d := range map[string]Doubt{"two_door_unitary": {}, "pickup": {SD: 0.15, Growth: 0.07}} {
		model, table := testTable(t, body, "show")
		if d.SD > 0 {
			table = risingTable(t, table, nil)
		}
		table = table.Doubting(d)
		table = with(t, table, also(table, itemNamed(t, table, "outer_sill.right"), "brazed"))
		c, u := model.NewCar(), table.NewUniforms()
		quick, anew := table.NewBill(), table.NewBill()
		moved := 0
		for n := range uint64(200) {
			s := chance.NewStream(seed, n)
			model.Draw(&s, c)
			at := int(n) % len(c.Finding) // so that rare draws occur on some item of each car
			c.Finding[at], c.Dent[(at+1)%len(c.Dent)], c.LeadFailed[(at+2)%len(c.LeadFailed)] = damage.PatchOverRust+damage.Finding(n%2), true, 1
			u.Fill(&s)
			table.Price(c, "salt", u, quick)
			for range 3 {
				before := quick.Total
				u.Car, u.Doubt, u.Rise = [2]float64{s.Uniform(), s.Uniform()}, s.Uniform(), s.Uniform()
				table.Reprice(u, quick)
				table.Price(c, "salt", u, anew)
				if sums(quick) != sums(anew) {
					t.Fatalf("%s, car %d: %+v, anew %+v", body, n, sums(quick), sums(anew))
				}
				if quick.Total != before {
					moved++
				}
			}
		}
		if moved < 500 {
			t.Errorf("%s: other factors moved the price %d times of 600", body, moved)
		}
	}
}

// sums holds the amounts of a bill that are compared.
func sums(b *Bill) [3]any {
	return [3]any{b.StripHours, b.AfterHours, [...]any{b.Strip, b.Labour, b.Least, b.Materials, b.Consumables, b.Parts, b.SentOut, b.Supplies, b.Total, b.Tax, b.Weeks, b.Rise, b.Left}}
}
