package message

import (
	"underpaint/engine/carfile"
	"underpaint/engine/estimate"
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
	f.Keys("id", "ask", "old", "new", "cars")
	oldText, newText := "", f.Get("new").Document(strict.MaxBytes)
	if old := f.Get("old"); !old.IsNull() {
		oldText = old.Document(strict.MaxBytes)
	}
	cars := readEffectCars(f)
	if f.Err() != nil {
		return refused(id, "request", f.Err())
	}
	if err := e.openEffect(oldText, newText, cars); err != nil {
		e.effect = nil
		return refused(id, "rates", err)
	}
	return e.effect.reply(id, e.effect.step())
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
		j, now, err := s.openNow(c)
		if err != nil {
			return nil, err
		}
		priced, err := j.plain.With(c.Decided(j.body, c.LastStage(), true))
		if err != nil {
			return nil, err
		}
		side.cars = append(side.cars, effectCar{cars.names[k], j.plain, estimate.NewRun(now.model, []*work.Table{priced}, Seed)})
	}
	return side, nil
}

// effectAccuracy is that of the ranges beside the form: an end is shown rounded to
// a step several times as long (assumption).
var effectAccuracy = estimate.Accuracy{ShareOfWidth: 0.012, Budget: 1 << 12}

// step makes sure of one block in every run at first, which is a rough answer, and
// then adds one to the run that is furthest behind, both sides alike.
func (j *effectJob) step() State {
	rough := false
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
			done := r.Settled(effectAccuracy) || r.Cars() >= effectAccuracy.Budget
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
