package session

import (
	"math"
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/estimate"
)

// PocketMoved is a pocket with its rank among the simulated cars of the stage before: the
// share of them in which the pocket is in better condition than recorded.
type PocketMoved struct {
	Pocket int
	Share  float64
}

// ItemMoved is one item with the chance that it is rusted through, before this stage and
// now.
type ItemMoved struct {
	Item        int
	Before, Now float64
}

// movedPockets compares each pocket with the simulated cars of the stage before, by the
// sum of the condition indexes of its recorded items.
func (j *stageRanges) movedPockets() (all []PocketMoved) {
	before, now := j.lastTwo()
	if before == now || before.run == nil {
		return nil
	}
	for k := range j.body.Pockets {
		items, sum := j.recordedOf(k, now.id)
		if len(items) == 0 {
			continue
		}
		share := before.run.IfKnown(0, func(c estimate.Seen) float64 {
			n := 0
			for _, i := range items {
				n += c.Condition(i)
			}
			switch {
			case n < sum:
				return 1
			case n == sum:
				return 0.5
			}
			return 0
		}).Yes
		all = append(all, PocketMoved{k, share})
	}
	sortByFloat(all, func(m PocketMoved) float64 { return -math.Abs(m.Share - 0.5) })
	return all
}

// recordedOf returns the items of a pocket that were recorded at a stage, and the sum of
// their condition indexes.
func (j *stageRanges) recordedOf(pocket int, stage string) (items []int, sum int) {
	for n := range j.car.Survey {
		r := &j.car.Survey[n]
		i, ok := j.body.ItemNamed(r.On)
		if !ok || r.Stage != stage || r.Condition == "" || j.body.Items[i].Pocket != pocket {
			continue
		}
		items, sum = append(items, i), sum+slices.Index(car.ConditionIDs[:], r.Condition)
	}
	return items, sum
}

// mostMoved is how many items are listed.
const mostMoved = 16

// movedItems returns the items whose chance of being rusted through changed most.
func (j *stageRanges) movedItems() (out []ItemMoved, err error) {
	before, now := j.lastTwo()
	if before == now {
		return nil, nil
	}
	was, err := j.chance(before)
	if err != nil {
		return nil, err
	}
	is, err := j.chance(now)
	if err != nil {
		return nil, err
	}
	for i := range j.body.Items {
		out = append(out, ItemMoved{i, was[i].Holed(), is[i].Holed()})
	}
	sortByFloat(out, func(m ItemMoved) float64 { return -math.Abs(m.Now - m.Before) })
	return out[:min(len(out), mostMoved)], nil
}
