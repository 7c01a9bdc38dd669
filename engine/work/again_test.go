package work

import (
	"testing"

	"underpaint/engine/chance"
	"underpaint/engine/damage"
)

// TestAgain: the same car with other whole-car factors costs to the minor unit what
// working it all out anew says. That it depends on the factors is held too.
func TestAgain(t *testing.T) {
	for _, body := range []string{"two_door_unitary", "pickup"} {
		model, table := testTable(t, body, "show")
		table = with(t, table, also(table, itemNamed(t, table, "outer_sill.right"), "brazed"))
		c, u := model.NewCar(), table.NewUniforms()
		quick, anew := table.NewBill(), table.NewBill()
		moved := 0
		for n := range uint64(200) {
			s := chance.NewStream(seed, n)
			model.Draw(&s, c)
			at := int(n) % len(c.Finding) // what is rarely drawn is there on some item of each
			c.Finding[at], c.Dent[(at+1)%len(c.Dent)], c.LeadFailed[(at+2)%len(c.LeadFailed)] = damage.PatchOverRust+damage.Finding(n%2), true, 1
			u.Fill(&s)
			table.Do(c, "salt", u, quick)
			for range 3 {
				before := quick.Total
				u.Car = [2]float64{s.Uniform(), s.Uniform()}
				table.Again(u, quick)
				table.Do(c, "salt", u, anew)
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

// sums are what is kept of a bill.
func sums(b *Bill) [3]any {
	return [3]any{b.StripHours, b.AfterHours, [...]any{b.Strip, b.Labour, b.Least, b.Materials, b.Consumables, b.Parts, b.SentOut, b.Supplies, b.Total, b.Tax, b.Weeks}}
}

// TestFillApart: over the turns every uniform falls once into each quarter, and a
// turn by itself is as uniform as Fill.
func TestFillApart(t *testing.T) {
	_, table := testTable(t, "two_door_unitary", "show")
	first, u := table.NewUniforms(), table.NewUniforms()
	var halves [4]int
	cars, all := 300, 0
	for n := range cars {
		s := chance.NewStream(seed, uint64(n))
		first.Fill(&s)
		met := make([][4]bool, len(flatUniforms(first)))
		for turn := range 4 {
			u.Copy(first)
			if turn > 0 {
				u.FillApart(first, turn, 4, &s)
			}
			for k, v := range flatUniforms(u) {
				if met[k][int(v*4)] {
					t.Fatalf("car %d, uniform %d: twice in one quarter", n, k)
				}
				met[k][int(v*4)] = true
				if v < .5 {
					halves[turn]++
				}
				if turn == 0 {
					all++
				}
			}
		}
	}
	for turn, below := range halves {
		// Five standard deviations of a fair coin.
		if d := float64(below) - float64(all)/2; d*d > 25*float64(all)/4 {
			t.Errorf("turn %d: %d of %d below a half", turn, below, all)
		}
	}
}

func flatUniforms(u *Uniforms) (out []float64) {
	out = append(out, u.Car[0], u.Car[1], u.Wire, u.Week, u.Wait)
	for _, list := range u.lists() {
		out = append(out, list...)
	}
	return out
}
