package session

import (
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/evidence"
	"underpaint/engine/pricing"
)

// Work is what a car's price has in it, for what has to be said beside it.
type Work struct {
	CustomerChecks bool // the customer has made checks
	Made           int  // the latest year in which the car can have been made, 0 = not known
	Strip          []pricing.WorkLine
	Likely         []pricing.WorkLine // ways that parts without a record may get
	Found          []pricing.WorkLine // findings on items that have no card
	Cards          []CardWork         // damaged items, in the order of ToDo
	WholeCar       []pricing.WorkLine // after the survey, for the car as a whole
}

// CardWork is the work on one damaged item: the chosen way, or every way that its
// condition allows, and what findings add.
type CardWork struct {
	Item  int
	Lines []pricing.WorkLine
}

// Work lists the priced work of a car with one body.
func (s *Shop) Work(c *carfile.Car) (*car.Body, Work, error) {
	todo, err := s.ToDo(c)
	if err != nil {
		return nil, Work{}, err
	}
	b := todo.Body
	t, err := s.table(c, b, c.OneStandard())
	if err != nil {
		return nil, Work{}, err
	}
	out := newWork(c, b, t)
	for k := range todo.Cards {
		out.Cards = append(out.Cards, cardWork(c, b, &todo.Cards[k]))
	}
	for i := range b.Items {
		if c.RecordedCondition(b.Items[i].ID) <= 0 {
			out.Found = addNew(out.Found, foundOn(c, b.Items[i].ID))
		}
	}
	return b, out, nil
}

// OpenWork lists the priced work of the open car, without cards: of all its bodies and
// standards, each line once.
func (s *Session) OpenWork() (out Work) {
	for k := range s.car.runs {
		r := &s.car.runs[k]
		for _, t := range r.tables {
			one := newWork(s.car.car, r.body, t)
			out.Made, out.CustomerChecks = one.Made, one.CustomerChecks
			out.Strip, out.Likely, out.WholeCar = addNew(out.Strip, one.Strip), addNew(out.Likely, one.Likely), addNew(out.WholeCar, one.WholeCar)
		}
	}
	return out
}

func newWork(c *carfile.Car, b *car.Body, t *pricing.Table) Work {
	out := Work{Made: latestYear(c.Made), Strip: t.StripWork(),
		CustomerChecks: slices.ContainsFunc(c.Looks, func(l evidence.Look) bool { return l.By == evidence.ByCustomer })}
	condition := make([]int, len(b.Items))
	for i := range condition {
		condition[i] = c.RecordedCondition(b.Items[i].ID)
	}
	ways := t.WaysInRange(condition)
	for i, k := range condition {
		if k < 0 {
			out.Likely = addNew(out.Likely, wayLines(ways[i]))
		}
	}
	out.WholeCar = t.CarWork(ways)
	return out
}

func wayLines(ways []car.Way) (out []pricing.WorkLine) {
	for _, w := range ways {
		out = append(out, pricing.WorkLine{Kind: pricing.WayOfRepair, ID: car.WayIDs[w]})
	}
	return out
}

func cardWork(c *carfile.Car, b *car.Body, d *Decision) CardWork {
	cards := d.chosenCards()
	if d.Chosen == nil {
		cards = d.Ways
	}
	out := CardWork{Item: d.Item}
	for _, w := range cards {
		if w.Way != car.Leave {
			out.Lines = append(out.Lines, wayLines([]car.Way{w.Way})...)
		}
	}
	out.Lines = append(out.Lines, foundOn(c, b.Items[d.Item].ID)...)
	return out
}

// foundOn lists the findings recorded on an item at any stage.
func foundOn(c *carfile.Car, on string) (out []pricing.WorkLine) {
	for _, f := range pricing.Findings() {
		recorded := func(r carfile.Record) bool {
			return r.On == on && (r.Finding == f.ID || slices.Contains(r.Also, f.ID) || f.ID == "filler_over_dent" && r.Dent == "yes" || f.PerLeadJoint && r.LeadFailed > 0)
		}
		if !f.PerCar && slices.ContainsFunc(c.Survey, recorded) {
			out = append(out, pricing.WorkLine{Kind: pricing.FoundWork, ID: f.ID, Name: f.Name})
		}
	}
	return out
}

// latestYear is the last year in which a car can have been made.
func latestYear(m carfile.Made) int {
	if m.Decade != 0 {
		return m.Decade + 9
	}
	return m.Year
}

// addNew adds the lines that the list does not have yet.
func addNew(list, more []pricing.WorkLine) []pricing.WorkLine {
	for _, l := range more {
		if !slices.Contains(list, l) {
			list = append(list, l)
		}
	}
	return list
}
