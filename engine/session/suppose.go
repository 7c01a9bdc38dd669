package session

import (
	"math"
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/damage"
	"underpaint/engine/strict"
)

// mostNeighbours is how many of the items whose odds change most we list.
const mostNeighbours = 8

// Supposed shows how the odds of other items and the range would change if we knew the
// condition of one item.
type Supposed struct {
	Body       *car.Body
	Item       int
	Condition  string
	Now, IfSo  Prices
	Neighbours []Neighbour
}

// Neighbour is another item with the chance that it is rusted through, as known now and
// if the supposition is true.
type Neighbour struct {
	ItemMoved
	SameWater bool // both items are in the same pocket
}

// Suppose works out what would follow if the item named on were known to be in a
// condition (rusted through when that is empty), on a car with one body. It records
// nothing.
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
	known, err := c.Known(j.body, j.histories, c.LastStage(), s.Rates.Own, s.Rates.Reckoned())
	if err != nil {
		return out, err
	}
	carfile.AddRead(&known, i, certainly(slices.Index(car.ConditionIDs[:], condition)))
	then, err := damage.NewAfter(known, damage.StandardGrids, now.model)
	if err != nil {
		return out, &strict.Error{Path: "on", Found: on, Expected: "a part that can still be in this condition (its record says otherwise)"}
	}
	table := j.priced()
	out = Supposed{Body: j.body, Item: i, Condition: condition, Now: pricesOf(now.model, table), IfSo: pricesOf(then, table)}
	was, is := now.model.Chances(), then.Chances()
	for _, n := range movedMost(was, is, i) {
		out.Neighbours = append(out.Neighbours, Neighbour{ItemMoved{n, was[n].Holed(), is[n].Holed()}, j.body.Items[n].Pocket == j.body.Items[i].Pocket})
	}
	return out, nil
}

// certainly returns the likelihood of an item whose condition is certain. A sound item
// counts as original, because a new panel would tell of a repair and little of the water.
func certainly(condition int) *damage.Likelihood {
	l := &damage.Likelihood{}
	for f := range l[condition] {
		if condition > 0 || damage.Finding(f) == damage.NoFinding {
			l[condition][f] = [2]float64{1, 1}
		}
	}
	return l
}

// movedMost returns the other items whose chance of being rusted through changes most.
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
