package session

import (
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/estimate"
	"underpaint/engine/pricing"
)

// decideBlocks is how many blocks of simulated cars we compare decisions on.
const decideBlocks = 2

// Option is another way to do the job than the customer wishes now, and what it changes
// on the same simulated cars. Its id is standard.S for another standard throughout,
// unseen for a plainer standard where it never shows, scope.S for a smaller job, or
// own_disassembly where the customer takes the car apart.
type Option struct {
	ID, Standard string
	Difference   estimate.Difference
	wish         pricing.Wish
}

// options lists the decisions that a customer has before the strip begins.
func options(now pricing.Wish) (out []Option) {
	add := func(id, standard string, change func(w *pricing.Wish)) {
		w := now
		if change(&w); w != now {
			out = append(out, Option{ID: id, Standard: standard, wish: w})
		}
	}
	for _, standard := range car.Standards {
		add("standard."+standard, standard, func(w *pricing.Wish) { w.Standard, w.Unseen = standard, standard })
	}
	if k := slices.Index(car.Standards, now.Standard); k > 0 {
		add("unseen", "", func(w *pricing.Wish) { w.Unseen = car.Standards[0] })
	}
	add("scope.outside_only", "", func(w *pricing.Wish) { w.Scope = "outside_only" })
	add("scope.metalwork_only", "", func(w *pricing.Wish) { w.Scope = "metalwork_only" })
	add("own_disassembly", "", func(w *pricing.Wish) { w.OwnDisassembly = true })
	return out
}

// offer makes a price table for the job as the customer wishes it now, and one for each
// option that is still open. Once the strip has begun, it leaves out options that would
// change the strip, so that every table reads the hours of the strip in the same way.
func (s *Session) offer(c *carfile.Car, b *car.Body) (list []Option, tables []*pricing.Table, leftOut bool, err error) {
	wish := pricing.Wish{Standard: c.OneStandard(), Unseen: c.OneStandard(), Scope: c.Scope}
	now, err := pricing.NewTableFor(b, s.Common, s.Rates, wish)
	if err != nil {
		return nil, nil, false, err
	}
	tables = append(tables, now)
	for _, o := range options(wish) {
		t, err := pricing.NewTableFor(b, s.Common, s.Rates, o.wish)
		if err != nil {
			return nil, nil, false, err
		}
		if c.StripBegun() && !t.SameStrip(now) {
			leftOut = true
			continue
		}
		list, tables = append(list, o), append(tables, t)
	}
	decided := c.Decided(b, c.LastStage(), false)
	for k := range tables {
		if tables[k], err = tables[k].With(decided); err != nil {
			return nil, nil, false, err
		}
		tables[k] = doubted(s.Rates, tables[k], c, b, c.LastStage(), false)
	}
	return list, tables, leftOut, nil
}

// Decide returns what each decision would change on a car with one body. leftOut says
// that the strip has begun and options that would change it are left out.
func (s *Session) Decide(c *carfile.Car) (list []Option, leftOut bool, err error) {
	j, now, err := s.openNow(c)
	if err != nil {
		return nil, false, err
	}
	list, tables, leftOut, err := s.offer(c, j.body)
	if err != nil {
		return nil, false, err
	}
	run := estimate.NewRun(now.model, tables, Seed)
	for range decideBlocks {
		run.Add()
	}
	for k := range list {
		list[k].Difference = run.Difference(0, k+1)
	}
	return list, leftOut, nil
}
