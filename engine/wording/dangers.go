package wording

import (
	"slices"
	"strings"

	"underpaint/engine/car"
	"underpaint/engine/pricing"
	"underpaint/engine/session"
)

// CustomersCautions lists the cautions for the customer, in the order of the data: about
// what the customer may do or has to decide. work is what the car's price has in it;
// without any, all are listed.
func (t *Text) CustomersCautions(work *session.Work) (out []Caution) {
	for _, c := range t.lists.cautions {
		if c.ForCustomer && (work == nil || c.concerns(work.Made) && c.inWork(work)) {
			out = append(out, c)
		}
	}
	return out
}

// inWork says whether any work on the car causes the caution. One without a cause holds
// for every car.
func (c *Caution) inWork(work *session.Work) bool {
	return c.because == nil || slices.ContainsFunc(slices.Concat(work.Strip, work.Likely, work.WholeCar), c.causedBy)
}

// CustomerDoes says whether the customer of a car is known to do work that needs the
// caution. A car's file shows only the checks that a customer makes.
func CustomerDoes(c *Caution, work *session.Work) bool {
	return work != nil && work.CustomerChecks && slices.Contains(c.does, "check")
}

// Danger is a line of work with the cautions that it is the first to cause.
type Danger struct {
	On       string // the id of the item; empty for the car as a whole
	Line     string
	Cautions []Caution
}

// StripDangers lists the lines of the strip and survey that need cautions, each caution
// once.
func (t *Text) StripDangers(work *session.Work) []Danger {
	d := dangers{text: t, made: work.Made}
	d.add("", work.Strip)
	return d.list
}

// ToDoDangers does the same for the work after the survey: by damaged part first, then
// what is found elsewhere, what is likely on parts without a record, and the whole car.
func (t *Text) ToDoDangers(b *car.Body, work *session.Work) []Danger {
	d := dangers{text: t, made: work.Made}
	for k := range work.Cards {
		d.add(b.Items[work.Cards[k].Item].ID, work.Cards[k].Lines)
	}
	d.add("", slices.Concat(work.Found, work.Likely, work.WholeCar))
	return d.list
}

// dangers hands out each caution once.
type dangers struct {
	text  *Text
	made  int
	given []string
	list  []Danger
}

// add appends the lines of work that need a caution not given yet. All lines of one item
// become one.
func (d *dangers) add(on string, lines []pricing.WorkLine) {
	for k, l := range lines {
		var cautions []Caution
		for _, c := range d.text.lists.cautions {
			if c.causedBy(l) && c.concerns(d.made) && !slices.Contains(d.given, c.ID) {
				cautions, d.given = append(cautions, c), append(d.given, c.ID)
			}
		}
		if len(cautions) == 0 {
			continue
		}
		name := d.text.lineName(l)
		if last := len(d.list) - 1; on != "" && k > 0 && last >= 0 && d.list[last].On == on {
			d.list[last].Line += ", " + lowerFirst(name)
			d.list[last].Cautions = append(d.list[last].Cautions, cautions...)
			continue
		}
		d.list = append(d.list, Danger{on, name, cautions})
	}
}

// lineName names a line of work.
func (t *Text) lineName(l pricing.WorkLine) string {
	if l.Kind == pricing.WayOfRepair {
		return t.Way(car.Way(slices.Index(car.WayIDs[:], l.ID)))
	}
	return strings.TrimSuffix(t.In(l.Name), ".")
}
