package session

import (
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/evidence"
)

// Questions is how many questions the customer is asked, apart from checks.
const Questions = 10

// Tally counts what is recorded on one car, and names every entry that cannot stand.
type Tally struct {
	Body           *car.Body
	Faults         []carfile.Fault
	Answers        int  // of Questions
	Walked, Walk   int  // checks of the walk-round made, and that there are
	Recorded       int  // items recorded or that could not be seen, of all
	Opened, Closed int  // closed items recorded when opened, of all closed ones
	Shut           int  // boxes not opened
	Undecided      int  // damaged items without a chosen way
	SurveyBegun    bool // something of the bare metal has been seen
	Zones          []ZoneTally
	Canonical      string // the text of the car, empty with faults
}

// ZoneTally counts one zone: items recorded, of all, and the ids of those that bare
// metal shows and that have no record.
type ZoneTally struct {
	Recorded, Of int
	Rest         []string
}

// Tally counts what is recorded on a car with one body. It works out no odds, so it
// can be asked after every press.
func (s *Shop) Tally(c *carfile.Car) (Tally, error) {
	b, t, err := s.oneBody(c)
	if err != nil {
		return Tally{}, err
	}
	n := countUp(c, b)
	n.Faults = c.Faults(b, t)
	if len(n.Faults) == 0 {
		n.Canonical = string(c.Text())
	}
	return n, nil
}

func countUp(c *carfile.Car, b *car.Body) Tally {
	n := Tally{Body: b, Answers: answered(c), SurveyBegun: c.Begun(carfile.Survey), Zones: make([]ZoneTally, len(b.Zones))}
	for _, g := range walkSections(b) {
		n.Walk += len(g.Lines)
		for _, l := range g.Lines {
			if slices.ContainsFunc(c.Looks, func(k evidence.Look) bool { return k.Look == l.Kind.ID && k.On == l.On }) {
				n.Walked++
			}
		}
	}
	recorded, open := make([]bool, len(b.Items)), make([]bool, len(b.Items))
	for k := range c.Survey {
		r := &c.Survey[k]
		i, ok := b.ItemNamed(r.On)
		if !ok || r.Condition == "" && !r.CouldNotSee {
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

// answered counts the questions answered; "not sure" is an answer.
func answered(c *carfile.Car) int {
	n := 6 // body, year, place, kept, standard, years on the road: a car file has them all
	if c.EarlierWork != "" {
		n++
	}
	if c.Covered != "" {
		n++
	}
	if len(c.Life) > 1 {
		n++
	}
	if c.Scope != "" {
		n++
	}
	return min(n, Questions)
}

// damagedItems are the items recorded in a condition that needs a decision: any
// but sound.
func damagedItems(c *carfile.Car, b *car.Body) (out []int) {
	for i := range b.Items {
		if c.RecordedCondition(b.Items[i].ID) > 0 {
			out = append(out, i)
		}
	}
	return out
}

// chosenWay is the way chosen for an item, nil where none is.
func chosenWay(c *carfile.Car, on string) *carfile.Choice {
	if n := slices.IndexFunc(c.Ways, func(w carfile.Choice) bool { return w.On == on }); n >= 0 {
		return &c.Ways[n]
	}
	return nil
}

func undecided(c *carfile.Car, b *car.Body) (n int) {
	for _, i := range damagedItems(c, b) {
		if chosenWay(c, b.Items[i].ID) == nil {
			n++
		}
	}
	return n
}
