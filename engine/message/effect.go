package message

import (
	"cmp"
	"math"
	"slices"

	"underpaint/engine/carfile"
	"underpaint/engine/estimate"
	"underpaint/engine/money"
	"underpaint/engine/strict"
	"underpaint/engine/work"
)

// effectJob shows what a change of the rates does to a few cars. The runs at the
// old rates are kept while the shop goes on changing the new ones.
type effectJob struct {
	oldKey, newKey, carsKey string
	old, new                *effectSide // old is nil where nothing is to be compared
}

// effectSide is all cars at one set of rates. Both sides imagine the same cars.
type effectSide struct {
	s    *Session
	cars []effectCar
}

type effectCar struct {
	name  string
	stage *work.Table
	run   *estimate.Run
}

// effectCars are the cars of a request, named by the page.
type effectCars struct {
	names []string
	cars  []*carfile.Car
	key   string
}

// mostEffectCars is as many cars as fit beside a form.
const mostEffectCars = 6

func (e *Engine) effectReply(id int64, f strict.Field) []byte {
	f.Keys("id", "ask", "old", "new", "cars", "effort")
	oldText, newText := "", f.Get("new").Document(strict.MaxBytes)
	if old := f.Get("old"); !old.IsNull() {
		oldText = old.Document(strict.MaxBytes)
	}
	rough := f.Has("effort") && f.Get("effort").OneOf("rough", "settle") == "rough"
	cars := readEffectCars(f)
	if f.Err() != nil {
		return refused(id, "request", f.Err())
	}
	if err := e.openEffect(oldText, newText, cars); err != nil {
		e.effect = nil
		return refused(id, "rates", err)
	}
	state := e.effect.step(rough)
	return e.effect.reply(id, state)
}

func readEffectCars(f strict.Field) (out effectCars) {
	items := f.Get("cars").Items()
	if n := len(items); f.Err() == nil && (n == 0 || n > mostEffectCars) {
		f.Get("cars").Complain("1 to 6 cars")
	}
	for _, item := range items {
		item.Keys("name", "car")
		out.names = append(out.names, item.Get("name").Text(80))
		c := carfile.Read(item.Get("car"))
		out.cars = append(out.cars, c)
		if f.Err() == nil {
			out.key += string(c.Text())
		}
	}
	return out
}

// openEffect keeps what has not changed since the request before.
func (e *Engine) openEffect(oldText, newText string, cars effectCars) error {
	j := e.effect
	if j == nil || j.carsKey != cars.key {
		j = &effectJob{carsKey: cars.key}
	}
	if j.old == nil || j.oldKey != oldText {
		j.old, j.oldKey = nil, oldText
		if oldText != "" {
			side, err := newEffectSide(oldText, cars)
			if err != nil {
				return err
			}
			j.old = side
		}
	}
	if j.new == nil || j.newKey != newText {
		side, err := newEffectSide(newText, cars)
		if err != nil {
			return err
		}
		j.new, j.newKey = side, newText
	}
	e.effect = j
	return nil
}

func newEffectSide(ratesText string, cars effectCars) (*effectSide, error) {
	s, err := NewSession([]byte(ratesText))
	if err != nil {
		return nil, err
	}
	side := &effectSide{s: s}
	for k, c := range cars.cars {
		b, t, err := s.oneBody(c)
		if err != nil {
			return nil, err
		}
		if wrong := c.Faults(b, t); len(wrong) > 0 {
			return nil, wrong[0].Err
		}
		levels, err := c.Levels()
		if err != nil {
			return nil, err
		}
		model, err := c.ModelAt(b, levels, c.LastStage(), s.Rates.Own)
		if err != nil {
			return nil, err
		}
		priced, err := t.With(c.Decided(b, c.LastStage(), true))
		if err != nil {
			return nil, err
		}
		side.cars = append(side.cars, effectCar{cars.names[k], t, estimate.NewRun(model, []*work.Table{priced}, Seed)})
	}
	return side, nil
}

// step makes sure of one block in every run at first, which is a rough answer, and
// then adds one to the run that is furthest behind, both sides alike.
func (j *effectJob) step(rough bool) State {
	sides := []*effectSide{j.new}
	if j.old != nil {
		sides = append(sides, j.old)
	}
	behind := (*estimate.Run)(nil)
	for _, side := range sides {
		for k := range side.cars {
			r := side.cars[k].run
			if r.Cars() == 0 {
				r.Add()
				rough = true
			}
			done := r.Settled(stageAccuracy) || r.Cars() >= stageAccuracy.Budget
			if !done && (behind == nil || r.Cars() < behind.Cars()) {
				behind = r
			}
		}
	}
	switch {
	case rough:
		return Rough
	case behind == nil:
		return Settled
	}
	behind.Add()
	return Refining
}

// comparable says whether both sides reckon in the same money.
func (j *effectJob) comparable() bool {
	return j.old != nil && j.old.s.Rates.Currency.Code == j.new.s.Rates.Currency.Code
}

func (j *effectJob) reply(id int64, state State) []byte {
	same := j.comparable()
	a := j.axis(same)
	w := strict.NewWriter()
	w.Object(func() {
		head(w, id, "effect")
		w.Member("state", string(state))
		w.Key("comparable")
		w.Bool(same)
		why := ""
		if j.old != nil && !same {
			why = "The rates on the site are in " + j.old.s.Rates.Currency.Code + " and these in " + j.new.s.Rates.Currency.Code + ", so the two cannot stand on one axis."
		}
		w.Member("why_not", why)
		w.Key("axis")
		w.Object(func() { a.write(w) })
		w.Objects("cars", len(j.new.cars), func(k int) { j.writeCar(w, k, a, same) })
		changed := []string{}
		if same {
			changed = j.changed()
		}
		w.Objects("changed", len(changed), func(k int) { w.Member("text", changed[k]) })
		w.Objects("strip", len(j.new.cars), func(k int) {
			w.Member("name", j.new.cars[k].name)
			old := ""
			if same {
				old = j.old.s.stage(j.old.cars[k].stage).PriceText
			}
			w.Member("old_text", old)
			w.Member("new_text", j.new.s.stage(j.new.cars[k].stage).PriceText)
		})
	})
	return w.Bytes()
}

func (j *effectJob) axis(same bool) axis {
	dearest := 1.0
	for k := range j.new.cars {
		dearest = math.Max(dearest, j.new.cars[k].dearest())
		if same {
			dearest = math.Max(dearest, j.old.cars[k].dearest())
		}
	}
	return newAxis(j.new.s.Rates.Currency, dearest, 0)
}

func (c *effectCar) dearest() float64 {
	if c.run.Cars() == 0 {
		return 0
	}
	return c.run.Range(0).Dots[19]
}

func (j *effectJob) writeCar(w *strict.Writer, k int, a axis, same bool) {
	w.Member("name", j.new.cars[k].name)
	w.Key("old")
	before := ""
	if same && j.old.cars[k].run.Cars() > 0 {
		w.Object(func() { before = j.old.writeRange(w, k, a) })
	} else {
		w.Null()
	}
	w.Key("new")
	now := ""
	if j.new.cars[k].run.Cars() > 0 {
		w.Object(func() { now = j.new.writeRange(w, k, a) })
	} else {
		w.Null()
	}
	sentence := "8 in 10 such cars: " + now + "."
	switch {
	case before == now:
		sentence = "8 in 10 such cars: " + now + ", as on the site."
	case before != "":
		sentence = "8 in 10 such cars: " + before + " on the site, " + now + " here."
	}
	w.Member("sentence", sentence)
}

// writeRange writes the range of one car and returns its ends in words.
func (e *effectSide) writeRange(w *strict.Writer, k int, a axis) string {
	x := e.cars[k].run.Range(0)
	ends, c := roundEnds(x.Low, x.Half, x.SetAside, x.High), e.s.Rates.Currency
	w.Member("low_text", c.TextWhole(ends.low))
	w.Member("half_text", c.TextWhole(ends.half))
	w.Member("high_text", c.TextWhole(ends.high))
	w.Key("dots")
	writeDots(w, packDots(x.Dots, a))
	w.Member("dots_text", "Each dot is one car in twenty: 2 below, 16 between, 2 above.")
	return c.TextWhole(ends.low) + " to " + c.TextWhole(ends.high)
}

// changed says which kinds of line moved most, on the average of all imagined
// cars; at most five.
func (j *effectJob) changed() (out []string) {
	type moved struct {
		kind estimate.Kind
		by   float64
	}
	var all []moved
	for kind := range estimate.Kinds {
		by := 0.0
		for k := range j.new.cars {
			if j.new.cars[k].run.Cars() == 0 || j.old.cars[k].run.Cars() == 0 {
				return nil
			}
			by += j.new.cars[k].run.Mean(0, kind) - j.old.cars[k].run.Mean(0, kind)
		}
		all = append(all, moved{kind, by / float64(len(j.new.cars))})
	}
	slices.SortStableFunc(all, func(x, y moved) int { return cmp.Compare(math.Abs(y.by), math.Abs(x.by)) })
	c := j.new.s.Rates.Currency
	for _, m := range all {
		amount := money.Minor(math.Floor(math.Abs(m.by) + 0.5))
		text := c.TextWhole(money.RoundNearest(amount, money.OutwardStep(amount)))
		if amount < money.Minor(math.Pow10(c.Digits)) || len(out) == 5 {
			break
		}
		more := " more"
		if m.by < 0 {
			more = " less"
		}
		out = append(out, j.new.s.kindName(m.kind)+": "+text+more+" a car, on the average of these cars")
	}
	return out
}
