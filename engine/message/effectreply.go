package message

import (
	"cmp"
	"math"
	"slices"

	"underpaint/engine/estimate"
	"underpaint/engine/money"
	"underpaint/engine/strict"
)

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
		w.Objects("cars", len(j.new.cars), func(k int) { j.writeCar(w, k, a, same, state) })
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
	return c.run.Price(0).Dots[19]
}

// writeCar writes one car at both rates. Until the sums settle the two may stand on
// unlike numbers of cars, and then nothing is said of the one beside the other.
func (j *effectJob) writeCar(w *strict.Writer, k int, a axis, same bool, state State) {
	w.Member("name", j.new.cars[k].name)
	w.Key("old")
	before := ""
	if same {
		w.Object(func() { before = j.old.writeRange(w, k, a) })
	} else {
		w.Null()
	}
	w.Key("new")
	now := ""
	w.Object(func() { now = j.new.writeRange(w, k, a) })
	sentence := "8 in 10 such cars: " + now + "."
	switch {
	case same && state != Settled && j.new.cars[k].run.Cars() != j.old.cars[k].run.Cars():
		sentence = "8 in 10 such cars: about " + now + "."
	case before == now:
		sentence = "8 in 10 such cars: " + now + ", as on the site."
	case before != "":
		sentence = "8 in 10 such cars: " + before + " on the site, " + now + " here."
	}
	w.Member("sentence", sentence)
}

// writeRange writes the range of one car and returns its ends in words.
func (e *effectSide) writeRange(w *strict.Writer, k int, a axis) string {
	x := e.cars[k].run.Price(0)
	ends, c := roundEnds(x.Low, x.Half, x.SetAside, x.High), e.s.Rates.Currency
	w.Member("low_text", c.TextWhole(ends.low))
	w.Member("half_text", c.TextWhole(ends.half))
	w.Member("high_text", c.TextWhole(ends.high))
	w.Key("dots")
	writeDots(w, packDots(x.Dots, a))
	w.Member("dots_text", dotsText)
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
			now, before := j.new.cars[k].run, j.old.cars[k].run
			both := min(now.Cars(), before.Cars())
			by += now.Mean(0, kind, both) - before.Mean(0, kind, both)
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
