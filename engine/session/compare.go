package session

import (
	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/estimate"
	"underpaint/engine/pricing"
	"underpaint/engine/strict"
)

// Compared is the number of simulated cars on which we compare two ways. The differences
// are taken car by car, so that needs far fewer cars than a range (assumption).
const Compared = 2 * estimate.Block

// Comparison compares every way that one item's condition allows with what is decided
// now.
type Comparison struct {
	Against int // the chosen way; −1 is what is usually done
	Ways    []WayDifference
}

// WayDifference is one way with how much more or less it costs.
type WayDifference struct {
	Way car.Way
	estimate.Difference
}

// CompareWays compares the ways of the item named on, on the same simulated cars. It
// must be recorded in a condition other than sound.
func (s *Session) CompareWays(c *carfile.Car, on string) (Comparison, error) {
	j, err := s.openStages(c)
	if err != nil {
		return Comparison{}, err
	}
	i, ok := j.body.ItemNamed(on)
	missing := ok && c.RecordedMissing(on)
	if !ok || c.RecordedCondition(on) <= 0 && !missing {
		return Comparison{}, &strict.Error{Path: "on", Found: on, Expected: "a part recorded as missing or in a condition other than sound"}
	}
	_, now := j.lastTwo()
	if err := j.need(now); err != nil {
		return Comparison{}, err
	}
	base, out := c.Decided(j.body, c.LastStage(), true), Comparison{Against: -1}
	if base.Way != nil && base.Way[i] >= 0 {
		out.Against = int(base.Way[i])
	}
	var ways []car.Way
	if missing {
		ways = j.plain.AllowedMissing(i)
	} else {
		ways = j.plain.Allowed(i, c.RecordedCondition(on))
	}
	tables := make([]*pricing.Table, 0, len(ways)+1)
	for k := -1; k < len(ways); k++ {
		d := base
		if k >= 0 {
			d.Way = fixed(base.Way, len(j.body.Items), i, ways[k])
		}
		t, err := j.plain.With(d)
		if err != nil {
			return Comparison{}, err
		}
		tables = append(tables, doubted(s.Rates, t, c, j.body, c.LastStage(), true))
	}
	run := estimate.NewRun(now.model, tables, Seed)
	for run.Cars() < Compared {
		run.Add()
	}
	for k, way := range ways {
		out.Ways = append(out.Ways, WayDifference{way, run.Difference(0, k+1)})
	}
	return out, nil
}

// fixed returns a copy of the chosen ways with one item set.
func fixed(ways []int8, items, i int, way car.Way) []int8 {
	out := make([]int8, items)
	for n := range out {
		out[n] = -1
	}
	copy(out, ways)
	out[i] = int8(way)
	return out
}
