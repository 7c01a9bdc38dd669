package session

import (
	"underpaint/engine/car"
	"underpaint/engine/pricing"
)

// Outline lists what a form for rates can choose from.
type Outline struct {
	Parts  []*OutlinePart
	Bodies []car.Words // in the order of car.BodyIDs
	Steps  []pricing.Step
	Common *car.Common
	Ways   [3][4][car.Conditions][car.Ways]float64 // by standard, kind of part, condition: the chance of each way
}

// OutlinePart is a part that a shop can price, over all bodies that have it.
type OutlinePart struct {
	ID     string
	Name   car.Words
	Bodies []string
	Start  [car.Ways]car.Hours // starting prices of the first body that has the part
	Done   [car.Ways]bool
}

// WayIDs are the ways to repair the part that need a bought part.
func (p *OutlinePart) WayIDs() (ids []string) {
	for k, done := range p.Done {
		if done {
			ids = append(ids, car.WayIDs[k])
		}
	}
	return ids
}

// NewOutline reads the outline from the data files.
func NewOutline() (o Outline, err error) {
	if o.Common, err = car.LoadCommon(); err != nil {
		return o, err
	}
	if o.Steps, err = pricing.Steps(); err != nil {
		return o, err
	}
	if o.Ways, err = pricing.StartingWays(); err != nil {
		return o, err
	}
	o.Bodies, o.Parts = outlineParts()
	return o, nil
}

func outlineParts() (bodies []car.Words, parts []*OutlinePart) {
	byID := map[string]*OutlinePart{}
	for _, id := range car.BodyIDs {
		b, err := car.Load(id)
		if err != nil {
			panic("engine: internal error: " + err.Error())
		}
		bodies = append(bodies, b.Name)
		for k := range b.Parts {
			p := &b.Parts[k]
			one := byID[p.ID]
			if one == nil {
				one = &OutlinePart{ID: p.ID, Name: p.Name}
				byID[p.ID] = one
				parts = append(parts, one)
			}
			one.Bodies = append(one.Bodies, id)
			for w := car.Patch; w < car.Ways; w++ {
				one.Done[w] = one.Done[w] || p.Ways[w].Done
				if one.Start[w] == (car.Hours{}) {
					one.Start[w] = p.Ways[w].Price
				}
			}
		}
	}
	return bodies, parts
}
