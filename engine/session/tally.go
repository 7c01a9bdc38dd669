package session

import (
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/evidence"
	"underpaint/engine/olddamage"
)

// Questions is the number of questions to the customer, without the checks.
const Questions = 11

// Tally counts what is recorded on one car and lists its faults.
type Tally struct {
	Body           *car.Body
	Faults         []carfile.Fault
	Answers        int    // of Questions
	Walked, Walk   int    // checks of the walk-around: done, and in all
	Measured       string // whether the body is square, an id of olddamage.SquareIDs; "" before the survey
	Recorded       int    // items with a record, including those that nobody could see
	Opened, Closed int    // closed items: recorded after opening, and in all
	Shut           int    // boxes that nobody has opened
	Undecided      int    // damaged items without a chosen way
	SurveyBegun    bool   // the shop has seen some of the bare metal
	Zones          []ZoneTally
	Canonical      string // the text of the car, empty with faults
}

// ZoneTally counts the items of one zone: how many are recorded, how many there are, and
// the ids of those that bare metal shows but that have no record.
type ZoneTally struct {
	Recorded, Of int
	Rest         []string
}

// Tally counts what is recorded on a car with one body. It works out no odds, so a page
// can ask for it after every press.
func (s *Shop) Tally(c *carfile.Car) (Tally, error) {
	b, t, err := s.oneBody(c)
	if err != nil {
		return Tally{}, err
	}
	n := countUp(c, b, s.Rates.Reckoned() != nil)
	n.Faults = c.Faults(b, t)
	if len(n.Faults) == 0 {
		n.Canonical = string(c.Text())
	}
	return n, nil
}

func countUp(c *carfile.Car, b *car.Body, hits bool) Tally {
	n := Tally{Body: b, Answers: answered(c), SurveyBegun: c.Begun(carfile.Survey), Zones: make([]ZoneTally, len(b.Zones))}
	for _, g := range walkOf(b, hits) {
		n.Walk += len(g.Lines)
		for _, l := range g.Lines {
			if slices.ContainsFunc(c.Looks, func(k evidence.Look) bool { return k.Look == l.Kind.ID && k.On == l.On }) {
				n.Walked++
			}
		}
	}
	if hits && n.SurveyBegun {
		if n.Measured = c.Measured(); n.Measured == "" {
			n.Measured = olddamage.NotMeasured
		}
	}
	recorded, open := make([]bool, len(b.Items)), make([]bool, len(b.Items))
	for k := range c.Survey {
		r := &c.Survey[k]
		i, ok := b.ItemNamed(r.On)
		if !ok || r.Condition == "" && !r.CouldNotSee && !r.Missing() {
			continue
		}
		recorded[i] = true
		open[i] = open[i] || r.Stage == carfile.OpeningUp
	}
	for i := range b.Items {
		p := b.PartOf(i)
		z := &n.Zones[p.Zone]
		z.Of++
		if recorded[i] {
			n.Recorded++
			z.Recorded++
		} else if p.SeenWhenStripped {
			z.Rest = append(z.Rest, b.Items[i].ID)
		}
		if !p.SeenWhenStripped {
			n.Closed++
			if open[i] {
				n.Opened++
			}
		}
	}
	for k := range b.Pockets {
		if len(carfile.ClosedItems(b, k)) > 0 && !c.IsOpen(b.Pockets[k].ID) {
			n.Shut++
		}
	}
	n.Undecided = undecided(c, b)
	return n
}

// answered counts the answered questions. "Not sure" is an answer.
func answered(c *carfile.Car) int {
	n := 6 // body, year, place, kept, standard, years on the road: a car file has them all
	if c.EarlierWork != "" {
		n++
	}
	if c.Covered != "" {
		n++
	}
	if c.AllThere != "" {
		n++
	}
	if len(c.Life) > 1 {
		n++
	}
	if c.Hit.Answer != "" {
		n++
	}
	if c.Scope != "" {
		n++
	}
	return min(n, Questions)
}
