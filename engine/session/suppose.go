package session

import (
	"math"
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/damage"
	"underpaint/engine/strict"
)

// mostNeighbours is how many items are shown whose odds move most.
const mostNeighbours = 8

// Supposed is what one item, taken as known, does to the odds of the others and to
// the range.
type Supposed struct {
	Body       *car.Body
	Item       int
	Condition  string
	Now, IfSo  Prices
	Neighbours []Neighbour
}

// Neighbour is another item with its chance of being rusted through as known now,
// and if so.
type Neighbour struct {
	ItemMoved
	SameWater bool // it is in the same pocket
}

// Suppose takes the item named on as known to be in a condition, rusted through when
// that is empty, on a car with one body. Nothing of it is recorded.
func (s *Session) Suppose(c *carfile.Car, on, condition string) (out Supposed, err error) {
	j, now, err := s.openNow(c)
	if err != nil {
		return out, err
	}
	i, err := itemNamed(j.body, on)
	if err != nil {
		return out, err
	}
	if condition == "" {
		condition = car.ConditionIDs[holedFrom]
	}
	known, err := c.Known(j.body, j.histories, c.LastStage(), s.Rates.Own)
	if err != nil {
		return out, err
	}
	carfile.AddRead(&known, i, certainly(slices.Index(car.ConditionIDs[:], condition)))
	then, err := damage.NewAfter(known, damage.StandardGrids, now.model)
	if err != nil {
		return out, &strict.Error{Path: "on", Found: on, Expected: "a part that could still be so: what is recorded of it says otherwise"}
	}
	table := j.priced()
	out = Supposed{Body: j.body, Item: i, Condition: condition, Now: pricesOf(now.model, table), IfSo: pricesOf(then, table)}
	was, is := now.model.Chances(), then.Chances()
	for _, n := range movedMost(was, is, i) {
		out.Neighbours = append(out.Neighbours, Neighbour{ItemMoved{n, was[n].Holed(), is[n].Holed()}, j.body.Items[n].Pocket == j.body.Items[i].Pocket})
	}
	return out, nil
}

// certainly is the likelihood of an item seen for certain to be in a condition; a
// sound one as it left the works, because a new panel would tell of a repair and
// little of the water.
func certainly(condition int) *damage.Likelihood {
	l := &damage.Likelihood{}
	for f := range l[condition] {
		if condition > 0 || damage.Finding(f) == damage.NoFinding {
			l[condition][f] = [2]float64{1, 1}
		}
	}
	return l
}

// movedMost are the other items whose chance of a hole moves most.
func movedMost(was, is []damage.Chances, but int) (out []int) {
	by := func(k int) float64 { return math.Abs(is[k].Holed() - was[k].Holed()) }
	order := upTo(len(was))
	sortByFloat(order, func(k int) float64 { return -by(k) })
	for _, k := range order {
		if k != but && by(k) >= 0.02 && len(out) < mostNeighbours {
			out = append(out, k)
		}
	}
	return out
}
