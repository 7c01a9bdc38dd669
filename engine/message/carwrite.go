package message

import (
	"underpaint/engine/car"
	"underpaint/engine/evidence"
	"underpaint/engine/exposure"
	"underpaint/engine/rates"
	"underpaint/engine/strict"
)

// Text writes the car file with its members in their usual order. Reading it
// back gives the same car.
func (c *Car) Text() []byte {
	w := strict.NewWriter()
	w.Object(func() {
		member(w, "format", CarFormat)
		w.Key("asked_in")
		w.Whole(int64(c.AskedIn))
		list(w, "bodies", c.Bodies)
		w.Key("made")
		w.Object(func() { c.writeMade(w) })
		w.Key("life")
		w.Array(func() {
			for i := range c.Life {
				w.Object(func() { c.Life[i].write(w) })
			}
		})
		if c.EarlierWork != "" {
			member(w, "earlier_work", c.EarlierWork)
		}
		member(w, "standard", c.Standard)
		member(w, "scope", c.Scope)
		if len(c.Options) > 0 {
			list(w, "options", c.Options)
		}
		if len(c.Looks) > 0 {
			w.Key("looks")
			w.Array(func() { c.writeLooks(w) })
		}
		c.writeRecorded(w)
	})
	return w.Bytes()
}

func (c *Car) writeMade(w *strict.Writer) {
	switch {
	case c.Made.Year != 0:
		w.Key("year")
		w.Whole(int64(c.Made.Year))
	case c.Made.Decade != 0:
		w.Key("decade")
		w.Whole(int64(c.Made.Decade))
	default:
		w.Key("not_sure")
		w.Bool(true)
	}
}

func (l Life) write(w *strict.Writer) {
	member(w, "place", l.Place)
	if l.Shore != "" {
		member(w, "shore", l.Shore)
	}
	member(w, "kept", l.Kept)
	member(w, "road_years", l.RoadYears)
	if l.Years > 0 {
		w.Key("years")
		w.Whole(int64(l.Years))
	}
}

func (c *Car) writeLooks(w *strict.Writer) {
	for _, l := range c.Looks {
		w.Object(func() {
			member(w, "look", l.Look)
			member(w, "on", l.On)
			member(w, "result", l.Result)
			member(w, "by", l.By)
		})
	}
}

func member(w *strict.Writer, name, value string) {
	w.Key(name)
	w.String(value)
}

func list(w *strict.Writer, name string, values []string) {
	w.Key(name)
	w.Array(func() {
		for _, v := range values {
			w.String(v)
		}
	})
}

// Levels turns what was told of the car's age and life into the alternatives of
// its history, earliest period first.
func (c *Car) Levels() ([]exposure.Level, error) {
	ages, err := c.ages()
	if err != nil {
		return nil, err
	}
	var told []exposure.ToldPeriod
	for i := 1; i <= len(c.Life); i++ {
		l := c.Life[i%len(c.Life)] // the earlier places first, then the main one
		climates, err := exposure.ClimatesAt(l.Place, l.Shore)
		if err != nil {
			return nil, err
		}
		told = append(told, exposure.ToldPeriod{Climates: climates, Years: float64(l.Years), Kept: l.Kept, RoadYears: l.RoadYears})
	}
	return exposure.Levels(ages, told)
}

func (c *Car) ages() (exposure.Ages, error) {
	switch {
	case c.Made.Year != 0:
		return exposure.MadeIn(c.Made.Year, c.AskedIn)
	case c.Made.Decade != 0:
		return exposure.MadeInDecade(c.Made.Decade, c.AskedIn)
	}
	return exposure.MadeNotSure(c.AskedIn)
}

// Check returns everything in the file that cannot stand: years that do not fit
// together, looks and records that a body does not allow. What hangs on a shop's
// rates is checked at the sample's.
func (c *Car) Check() (wrong []error) {
	if _, err := c.Levels(); err != nil {
		return []error{err}
	}
	s, err := NewSession(rates.Sample())
	if err != nil {
		panic("engine: internal error: sample rates: " + err.Error())
	}
	for _, id := range c.Bodies {
		one := *c
		one.Bodies = []string{id}
		b, t, err := s.oneBody(&one)
		if err != nil {
			return []error{err}
		}
		for _, f := range c.faultsOf(b, t) {
			wrong = append(wrong, f.err)
		}
	}
	return wrong
}

// looksAt are the looks that count for a body: all of them, or, while the body
// is not known, those at parts that it has.
func (c *Car) looksAt(b *car.Body) []evidence.Look {
	if len(c.Bodies) == 1 {
		return c.Looks
	}
	var own []evidence.Look
	for _, l := range c.Looks {
		if evidence.Has(b, l.On) {
			own = append(own, l)
		}
	}
	return own
}
