package session

import (
	"errors"

	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/damage"
	"underpaint/engine/strict"
)

// Odds compares one recorded item with what we believed before the stage at which it was
// recorded.
type Odds struct {
	Recorded      bool    // its condition is recorded
	Better, Worse float64 // the earlier chances of a better and of a worse condition
	Before, Now   float64 // the chances that it is rusted through
}

// Odds returns the odds of the item named on, for a car with one body.
func (s *Session) Odds(c *carfile.Car, on string) (Odds, error) {
	j, err := s.openStages(c)
	if err != nil {
		return Odds{}, err
	}
	i, err := itemNamed(j.body, on)
	if err != nil {
		return Odds{}, err
	}
	before, now := j.lastTwo()
	if err := errors.Join(j.need(before), j.need(now)); err != nil {
		return Odds{}, err
	}
	was, is := before.model.ChancesOf(i), now.model.ChancesOf(i)
	out := Odds{Before: was.Holed(), Now: is.Holed()}
	if k := c.RecordedCondition(on); k >= 0 {
		out.Recorded, out.Better, out.Worse = true, below(was, k), above(was, k)
	}
	return out, nil
}

func itemNamed(b *car.Body, on string) (int, error) {
	i, ok := b.ItemNamed(on)
	if !ok {
		return 0, &strict.Error{Path: "on", Found: on, Expected: "a part of this body, such as " + b.Items[0].ID}
	}
	return i, nil
}

// below returns the chance of a better condition than k, and above that of a worse one.
func below(c damage.Chances, k int) (p float64) {
	for n := range k {
		p += c.Condition[n]
	}
	return p
}

func above(c damage.Chances, k int) (p float64) {
	for n := k + 1; n < len(c.Condition); n++ {
		p += c.Condition[n]
	}
	return p
}

// LookAgain returns the items whose records are very unlike the rest of a car with one
// body, and none before the survey. It works out the odds of the last stage first.
func (s *Session) LookAgain(c *carfile.Car) (b *car.Body, items []int, err error) {
	j, err := s.openStages(c)
	if err != nil {
		return nil, nil, err
	}
	if len(c.Survey) == 0 {
		return j.body, nil, nil
	}
	_, now := j.lastTwo()
	if err := j.need(now); err != nil {
		return nil, nil, err
	}
	list, err := j.car.LookAgain(j.body, now.model)
	for _, n := range list {
		i, _ := j.body.ItemNamed(j.car.Survey[n].On)
		items = append(items, i)
	}
	return j.body, items, err
}
