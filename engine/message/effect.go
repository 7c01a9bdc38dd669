package message

import (
	"underpaint/engine/carfile"
	"underpaint/engine/session"
	"underpaint/engine/strict"
	"underpaint/engine/wording"
)

// mostEffectCars is how many cars fit beside a form.
const mostEffectCars = 6

func askEffect(e *Engine, f strict.Field) (Reply, error) {
	f.Keys("id", "ask", "old", "new", "cars")
	oldText, newText := "", f.Get("new").Document(strict.MaxBytes)
	if old := f.Get("old"); !old.IsNull() {
		oldText = old.Document(strict.MaxBytes)
	}
	names, cars := readEffectCars(f)
	if f.Err() != nil {
		return nil, f.Err()
	}
	if err := e.comparison.Open(oldText, newText, cars); err != nil {
		return nil, refuse("rates", err)
	}
	return newEffect(&e.comparison, names, e.comparison.Step())
}

func readEffectCars(f strict.Field) (names []string, cars []*carfile.Car) {
	items := f.Get("cars").Items()
	if n := len(items); f.Err() == nil && (n == 0 || n > mostEffectCars) {
		f.Get("cars").Complain("1 to 6 cars")
	}
	for _, item := range items {
		item.Keys("name", "car")
		names, cars = append(names, item.Get("name").Text(80)), append(cars, carfile.Read(item.Get("car")))
	}
	return names, cars
}

func newEffect(j *session.RatesComparison, names []string, state session.State) (Reply, error) {
	t, err := wording.For(j.New())
	if err != nil {
		return nil, refuse("rates", err)
	}
	a := session.NewAxis(j.New().Rates.Currency, j.MostDot(), 0)
	out := &EffectReply{State: string(state), WhyNot: wording.WhyNotComparable(j), Warning: wording.HeldLong(j.HeldLong()), Axis: newAxis(a)}
	for k, name := range names {
		old, now := j.Car(k)
		car := EffectCar{Name: name, New: effectRange(t, &now, a), Sentence: t.AtBothRates(old, now, state)}
		strip := EffectStrip{Name: name, NewText: t.ToTheUnit(now.Strip.Likely)}
		if old != nil {
			before := effectRange(t, old, a)
			car.Old, strip.OldText = &before, t.ToTheUnit(old.Strip.Likely)
		}
		out.Cars, out.Strip = append(out.Cars, car), append(out.Strip, strip)
	}
	for _, m := range j.Changed() {
		out.Changed = append(out.Changed, EffectLine{t.KindMoved(m)})
	}
	return out, nil
}

func effectRange(t *wording.Text, c *session.PricedCar, a session.Axis) EffectRange {
	return EffectRange{t.Amount(c.Shown.Low), t.Amount(c.Shown.Half), t.Amount(c.Shown.High), newDots(c.Exact.Dots, a), wording.Dots}
}
