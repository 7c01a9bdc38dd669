package olddamage

import (
	"math"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/damage"
)

// TestDraw: drawn cars have the exact chances, to four standard errors of a share.
func TestDraw(t *testing.T) {
	const n = 1 << 18
	b, err := car.Load("two_door_unitary")
	if err != nil {
		t.Fatal(err)
	}
	for name, k := range cases() {
		o, s := Starting().Condition(b, k), chance.NewStream(4, 7)
		if name == "three zones recorded" {
			continue // a record counts as so, see TestRecorded
		}
		exact := o.Chances([damage.RepairStates]float64{0, 1, 0, 0})
		var got Chances
		var u [Nodes]float64
		for range n {
			for k := range u {
				u[k] = s.Uniform()
			}
			c := o.Draw(1, &u)
			for z, m := range c.Manner {
				got.Manner[z][m] += 1.0 / n
			}
			got.Hand[c.Hand] += 1.0 / n
			if c.Crooked() || c.Sagged {
				got.OutOfSquare += 1.0 / n
			}
			if c.Blasted {
				got.Blasted += 1.0 / n
			}
		}
		near := func(what string, a, b float64) {
			if math.Abs(a-b) > 4*math.Sqrt(b*(1-b)/n)+1e-5 {
				t.Errorf("%s, %s: drawn %.5f, exact %.5f", name, what, a, b)
			}
		}
		for z := range Zones {
			for m := range Manners {
				if k.Zones[z] != "" {
					continue // a record counts as so, see TestRecorded
				}
				near(ZoneIDs[z]+" "+MannerIDs[m], got.Manner[z][m], exact.Manner[z][m])
			}
		}
		for h := range hands {
			near("hand", got.Hand[h], exact.Hand[h])
		}
		near("out of square", got.OutOfSquare, exact.OutOfSquare)
		near("blasted", got.Blasted, exact.Blasted)
	}
}

// TestRecorded: what a survey recorded is so on every drawn car, even what the odds hold
// for a slip.
func TestRecorded(t *testing.T) {
	b, err := car.Load("two_door_unitary")
	if err != nil {
		t.Fatal(err)
	}
	o := Starting().Condition(b, Known{RoadYears: 15, Zones: [Zones]string{"roughly", "well", "well", "none", "none"}, Square: OutOfSquare})
	s := chance.NewStream(1, 1)
	for range 1000 {
		var u [Nodes]float64
		s.Fill(u[:])
		if c := o.Draw(1, &u); c.Manner != [Zones]Manner{Roughly, Well, Well} || !c.Sagged {
			t.Fatalf("%+v", c)
		}
	}
}
