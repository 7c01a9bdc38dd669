package session

import (
	"testing"

	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/rates"
)

// TestNothingOfferedChangesAStripBegun: whatever is known about a car, Decide offers the
// customer to take it apart only until the strip begins. After that every offered table
// reads the hours of the strip as the current job does.
func TestNothingOfferedChangesAStripBegun(t *testing.T) {
	s := opened(t)
	before, after := 0, 0
	parameters := gopter.DefaultTestParametersWithSeed(20260603)
	properties := gopter.NewProperties(parameters)
	properties.Property("nothing offered changes a strip that has begun", prop.ForAll(func(stages int, fit float64, standard, scope int) bool {
		c, err := carfile.Decode([]byte(goodCar))
		if err != nil {
			t.Fatal(err)
		}
		c.Standard, c.Scope = car.Standards[standard], rates.ScopeIDs[scope]
		for k, id := range carfile.StageIDs {
			if stages>>k&1 == 1 {
				c.Stages = append(c.Stages, carfile.Stage{Stage: id})
			}
		}
		begun := stages&^1 != 0
		if begun && fit > 0 {
			c.StripHours[car.Fit] = fit
		}
		b, err := c.OneBody()
		if err != nil {
			t.Fatal(err)
		}
		options, tables, leftOut, err := s.offer(c, b)
		if err != nil || len(tables) != len(options)+1 || leftOut != begun {
			t.Log(err, len(tables), leftOut)
			return false
		}
		own := false
		for k, o := range options {
			own = own || o.wish.OwnDisassembly
			if begun && !tables[0].SameStrip(tables[k+1]) {
				t.Log(o.ID)
				return false
			}
		}
		if begun {
			after++
		} else {
			before++
		}
		return own != begun
	}, gen.IntRange(0, 7), gen.Float64Range(-50, 150).Map(func(v float64) float64 { return max(0, v) }), gen.IntRange(0, 2), gen.IntRange(0, 2)))
	properties.TestingRun(t)
	if before < 10 || after < 10 {
		t.Errorf("%d before the strip, %d after", before, after)
	}
}
