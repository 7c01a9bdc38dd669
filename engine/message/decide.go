package message

import (
	"math"
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/estimate"
	"underpaint/engine/money"
	"underpaint/engine/strict"
	"underpaint/engine/work"
)

// decideBlocks is how many blocks of imagined cars the decisions are compared on.
const decideBlocks = 2

// option is one way to have the job done other than as wished.
type option struct {
	id, name, note string
	wish           work.Wish
}

// options are the decisions that a customer has before the strip begins.
func (s *Session) options(now work.Wish) (out []option) {
	add := func(id, name, note string, change func(w *work.Wish)) {
		w := now
		if change(&w); w != now {
			out = append(out, option{id, name, note, w})
		}
	}
	for _, standard := range car.Standards {
		add("standard."+standard, standardNames[standard]+" throughout", "", func(w *work.Wish) { w.Standard, w.Unseen = standard, standard })
	}
	if k := slices.Index(car.Standards, now.Standard); k > 0 {
		add("unseen", "What is never seen to driver standard, what is seen as wished",
			"Hidden metal is mended as soundly; it is not dressed, and inside and underneath is painted plainly.",
			func(w *work.Wish) { w.Unseen = car.Standards[0] })
	}
	add("scope.outside_only", "Outside only", "Rust behind the outer skins stays, unless a panel forces it open.", func(w *work.Wish) { w.Scope = "outside_only" })
	add("scope.metalwork_only", "Metalwork only, ending in primer", s.say("Body and block, paint and assembly are another job then.", "Filling, flatting, paint and assembly are another job then."),
		func(w *work.Wish) { w.Scope = "metalwork_only" })
	add("own_disassembly", "You take the car apart yourself", "Bag and label everything. Glass, springs and fuel are dangerous; what breaks or goes missing is found later, and the shop cannot see how it came apart.",
		func(w *work.Wish) { w.OwnDisassembly = true })
	return out
}

// offer makes a table for the job as it is wished now, and one for each option that can
// still be had: once the strip has begun, none that changes it. What was worked in it is
// read with the wish under which it was worked on every table that is left.
func (s *Session) offer(c *carfile.Car, b *car.Body) (options []option, tables []*work.Table, leftOut bool, err error) {
	wish := work.Wish{Standard: c.OneStandard(), Unseen: c.OneStandard(), Scope: c.Scope}
	now, err := work.NewTableFor(b, s.common, s.Rates, wish)
	if err != nil {
		return nil, nil, false, err
	}
	tables = append(tables, now)
	for _, o := range s.options(wish) {
		t, err := work.NewTableFor(b, s.common, s.Rates, o.wish)
		if err != nil {
			return nil, nil, false, err
		}
		if c.StripBegun() && !t.SameStrip(now) {
			leftOut = true
			continue
		}
		options, tables = append(options, o), append(tables, t)
	}
	decided := c.Decided(b, c.LastStage(), false)
	for k := range tables {
		if tables[k], err = tables[k].With(decided); err != nil {
			return nil, nil, false, err
		}
	}
	return options, tables, leftOut, nil
}

// decide says what each decision would change, on the same imagined cars, and how
// often it is a saving at all.
func (s *Session) decide(id int64, c *carfile.Car) ([]byte, error) {
	j, now, err := s.openNow(c)
	if err != nil {
		return nil, err
	}
	options, tables, leftOut, err := s.offer(c, j.body)
	if err != nil {
		return nil, err
	}
	run := estimate.NewRun(now.model, tables, Seed)
	for range decideBlocks {
		run.Add()
	}
	w := strict.NewWriter()
	w.Object(func() {
		head(w, id, "decide")
		w.Objects("options", len(options), func(k int) {
			d, o := run.Difference(0, k+1), &options[k]
			w.Member("id", o.id)
			w.Member("name", o.name)
			w.Member("difference_text", s.differenceText(d))
			w.Member("saving_text", savingText(1-d.Dearer-d.Same, d.Same))
			w.Member("note", o.note)
		})
		note := "Each is held against the job as it is wished now, car by car on the same imagined cars. Several together do not simply add."
		if leftOut {
			note += " The strip and survey has begun, so choices that would change it are not offered."
		}
		w.Member("note", note)
	})
	return w.Bytes(), nil
}

// differenceText says a difference in words: what it saves or costs in the middle,
// and in 8 of 10 cars.
func (s *Session) differenceText(d estimate.Difference) string {
	c := s.Rates.Currency
	amount := func(v float64) string {
		m := money.Minor(math.Abs(v) + 0.5)
		return c.TextWhole(money.RoundNearest(m, max(1, money.OutwardStep(m))))
	}
	signed := func(v float64) string {
		if v < 0 {
			return amount(v) + " less"
		}
		return amount(v) + " more"
	}
	if d.Low == 0 && d.High == 0 {
		return "no difference"
	}
	return "in the middle " + signed(d.Half) + "; 8 in 10: " + signed(d.Low) + " to " + signed(d.High)
}

func savingText(saving, same float64) string {
	switch {
	case same > 0.95:
		return "it makes no difference in more than 19 cars of 20"
	case saving < 0.05:
		return "a saving in fewer than 1 car of 20"
	case saving > 0.95:
		return "a saving in more than 19 cars of 20"
	}
	return "a saving in about " + carsInTen(saving)
}
