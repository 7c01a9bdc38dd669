package message

import (
	"cmp"
	"math"
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/estimate"
	"underpaint/engine/money"
	"underpaint/engine/strict"
)

// movedPockets says which pockets turned out worse or better than in most such
// cars as they were believed before this stage: the sum of the steps of the
// recorded items, against the same sum in the imagined cars.
func (s *Session) movedPockets(j *stageJob) (worse, better []string) {
	before, now := j.lastTwo()
	if before == now || before.run == nil {
		return nil, nil
	}
	type moved struct {
		name  string
		share float64
	}
	var all []moved
	for k := range j.body.Pockets {
		items, sum := s.recordedOf(j, k, now.id)
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
		all = append(all, moved{s.pocketName(j.body, k), share})
	}
	slices.SortStableFunc(all, func(x, y moved) int { return cmp.Compare(math.Abs(y.share-0.5), math.Abs(x.share-0.5)) })
	for _, m := range all {
		if m.share >= 0.65 && len(worse) < 4 {
			worse = append(worse, m.name+": worse than "+inTen(m.share)+" such cars.")
		}
		if m.share <= 0.35 && len(better) < 4 {
			better = append(better, m.name+": better than "+inTen(1-m.share)+" such cars.")
		}
	}
	return worse, better
}

// recordedOf are the items of a pocket recorded at a stage, and the sum of their
// steps on the scale.
func (s *Session) recordedOf(j *stageJob, pocket int, stage string) (items []int, sum int) {
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

// movedItem is one item with its chance of a hole before this stage and now.
type movedItem struct {
	on, name    string
	before, now float64
}

func (m movedItem) write(w *strict.Writer) {
	w.Member("on", m.on)
	w.Member("name", m.name)
	w.Member("before_text", inTen(m.before))
	w.Member("after_text", inTen(m.now))
	w.Member("text", "rusted through or gone: "+carsInTen(m.before)+" before, "+carsInTen(m.now)+" now")
}

// movedItems are the items whose chance of a hole moved most.
func (s *Session) movedItems(j *stageJob) (out []movedItem, err error) {
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
		out = append(out, movedItem{j.body.Items[i].ID, j.body.ItemName(i, s.Rates.Words), was[i].Holed(), is[i].Holed()})
	}
	slices.SortStableFunc(out, func(x, y movedItem) int {
		return cmp.Compare(math.Abs(y.now-y.before), math.Abs(x.now-x.before))
	})
	return out[:min(len(out), 16)], nil
}

// moneyWidth writes a width, or another amount that is only likely, to about a
// twentieth of itself.
func (s *Session) moneyWidth(width float64) string {
	step := money.OutwardStep(money.Minor(width))
	return s.Rates.Currency.TextWhole(money.RoundNearest(money.Minor(width), step))
}
