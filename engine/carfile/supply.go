package carfile

import (
	"slices"
	"strconv"

	"underpaint/engine/car"
	"underpaint/engine/pricing"
)

// Missing says whether the record says that the part is not on the car. Such a record has
// no condition, because there is no metal to judge.
func (r *Record) Missing() bool { return slices.Contains(r.Also, pricing.Missing) }

// judged returns the record that says in which condition an item is, or that it is missing;
// nil if there is none.
func (c *Car) judged(on string) (out *Record) {
	for n := range c.Survey {
		if r := &c.Survey[n]; r.On == on && (r.Condition != "" || r.Missing()) && (out == nil || r.Stage == OpeningUp) {
			out = r
		}
	}
	return out
}

// RecordedMissing says whether the record that counts for an item says that it is missing.
func (c *Car) RecordedMissing(on string) bool {
	r := c.judged(on)
	return r != nil && r.Missing()
}

// Supply is what is known by a stage of how the parts of the car come: the customer's
// answer, and the parts that somebody has seen on it.
func (c *Car) Supply(b *car.Body, reached string) pricing.Supply {
	s := pricing.Supply{AllThere: c.AllThere}
	for i, n := range c.recordsUpTo(b, reached) {
		if n < 0 {
			continue
		}
		if r := &c.Survey[n]; !r.CouldNotSee && (r.Condition != "" || r.Finding != "" || r.Missing()) {
			if s.OnCar == nil {
				s.OnCar = make([]bool, len(b.Items))
			}
			s.OnCar[i] = true
		}
	}
	return s
}

// decideFit adds how panels fit that somebody has tried by a stage. The later stage counts.
func (c *Car) decideFit(d *pricing.Decided, b *car.Body, reached string) {
	for _, stage := range []string{Survey, OpeningUp} {
		for n := range c.Survey {
			r := &c.Survey[n]
			i, ok := b.ItemNamed(r.On)
			if r.PanelFit == "" || r.Stage != stage || !upTo(reached, stage) || !ok {
				continue
			}
			if d.PanelFit == nil {
				d.PanelFit = make([]string, len(b.Items))
			}
			d.PanelFit[i] = r.PanelFit
		}
	}
}

// missingPart refuses what a record cannot say of a part that is missing, and a part that
// nobody could replace.
func (f *faults) missingPart(path string, r *Record, i int) {
	if !r.Missing() {
		return
	}
	also := path + ".also[" + strconv.Itoa(slices.Index(r.Also, pricing.Missing)) + "]"
	one := func(what string) {
		f.add(also, "a part that is missing, with "+what, "either missing or "+what+" (remove one of them)", r.On)
	}
	switch {
	case r.Condition != "":
		one("a condition")
	case r.Finding != "" || r.Dent != "" || r.LeadFailed >= 0 || len(r.Also) > 1:
		one("a finding")
	case r.CouldNotSee:
		one("could_not_see")
	case !f.t.CanBeHad(i):
		f.add(also, "a part that is missing and has no price", "a price for it in the rates first, because nothing says where the part comes from", r.On)
	}
}

// panelFit refuses a fit of a panel that nobody can buy.
func (f *faults) panelFit(path string, r *Record, i int) {
	if r.PanelFit != "" && !f.t.Bought(i) {
		f.add(path+".panel_fit", r.PanelFit, "nothing here, because no panel or section is bought for this part", r.On)
	}
}
