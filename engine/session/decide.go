package session

import (
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/estimate"
	"underpaint/engine/work"
)

// decideBlocks is how many blocks of simulated cars the decisions are compared on.
const decideBlocks = 2

// Option is one way to have the job done other than as wished, and what it changes,
// car by car on the same simulated cars. Its id is standard.S for another standard
// throughout, unseen for a plainer one where nothing is seen, scope.S for a smaller
// job, own_disassembly for a customer who takes the car apart.
type Option struct {
	ID, Standard string
	Difference   estimate.Difference
	wish         work.Wish
}

// options are the decisions that a customer has before any metal is seen.
func options(now work.Wish) (out []Option) {
	add := func(id, standard string, change func(w *work.Wish)) {
		w := now
		if change(&w); w != now {
			out = append(out, Option{ID: id, Standard: standard, wish: w})
		}
	}
	for _, standard := range car.Standards {
		add("standard."+standard, standard, func(w *work.Wish) { w.Standard, w.Unseen = standard, standard })
	}
	if k := slices.Index(car.Standards, now.Standard); k > 0 {
		add("unseen", "", func(w *work.Wish) { w.Unseen = car.Standards[0] })
	}
	add("scope.outside_only", "", func(w *work.Wish) { w.Scope = "outside_only" })
	add("scope.metalwork_only", "", func(w *work.Wish) { w.Scope = "metalwork_only" })
	add("own_disassembly", "", func(w *work.Wish) { w.OwnDisassembly = true })
	return out
}

// Decide says what each decision would change on a car with one body, and how often
// it is a saving at all.
func (s *Session) Decide(c *carfile.Car) ([]Option, error) {
	j, now, err := s.openNow(c)
	if err != nil {
		return nil, err
	}
	wish := work.Wish{Standard: c.OneStandard(), Unseen: c.OneStandard(), Scope: c.Scope}
	list := options(wish)
	tables := []*work.Table{}
	for _, w := range append([]Option{{wish: wish}}, list...) {
		t, err := work.NewTableFor(j.body, s.Common, s.Rates, w.wish)
		if err != nil {
			return nil, err
		}
		if t, err = t.With(c.Decided(j.body, c.LastStage(), false)); err != nil {
			return nil, err
		}
		tables = append(tables, t)
	}
	run := estimate.NewRun(now.model, tables, Seed)
	for range decideBlocks {
		run.Add()
	}
	for k := range list {
		list[k].Difference = run.Difference(0, k+1)
	}
	return list, nil
}
