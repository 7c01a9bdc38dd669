package carfile

import (
	"slices"
	"strings"

	"underpaint/engine/car"
	"underpaint/engine/evidence"
	"underpaint/engine/exposure"
	"underpaint/engine/pricing"
	"underpaint/engine/rates"
	"underpaint/engine/strict"
)

// Text writes the car file with its members in their usual order. Reading it
// back gives the same car.
func (c *Car) Text() []byte {
	w := strict.NewWriter()
	w.Object(func() {
		w.Member("format", Format)
		w.Key("asked_in")
		w.Whole(int64(c.AskedIn))
		w.Texts("bodies", c.Bodies)
		w.Key("made")
		w.Object(func() { c.writeMade(w) })
		w.Key("life")
		w.Array(func() {
			for i := range c.Life {
				w.Object(func() { c.Life[i].write(w) })
			}
		})
		if c.EarlierWork != "" {
			w.Member("earlier_work", c.EarlierWork)
		}
		if c.WorkYear != 0 {
			w.Key("earlier_work_year")
			w.Whole(int64(c.WorkYear))
		}
		w.MemberIf("covered", c.Covered)
		c.Hit.write(w)
		w.MemberIf("all_there", c.AllThere)
		w.Member("standard", c.Standard)
		w.Member("scope", c.Scope)
		w.MemberIf("another_body", c.AnotherBody)
		if len(c.Options) > 0 {
			w.Texts("options", c.Options)
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
	w.Member("place", l.Place)
	if l.Shore != "" {
		w.Member("shore", l.Shore)
	}
	w.Member("kept", l.Kept)
	w.Member("road_years", l.RoadYears)
	if l.Years > 0 {
		w.Key("years")
		w.Whole(int64(l.Years))
	}
}

func (c *Car) writeLooks(w *strict.Writer) {
	for _, l := range c.Looks {
		w.Object(func() {
			w.Member("look", l.Look)
			w.Member("on", l.On)
			w.Member("result", l.Result)
			w.Member("by", l.By)
		})
	}
}

// Histories turns what the customer said about the car's age and life into the
// alternatives of its history, earliest period first.
func (c *Car) Histories() ([]exposure.History, error) {
	ages, err := c.ages()
	if err != nil {
		return nil, err
	}
	told, err := c.told()
	if err != nil {
		return nil, err
	}
	return exposure.Histories(ages, told, exposure.Asked{Year: c.AskedIn, WorkedIn: c.WorkYear})
}

// told lists the parts of the car's life, the earlier places first, then the main one.
func (c *Car) told() (told []exposure.ToldPeriod, err error) {
	for i := 1; i <= len(c.Life); i++ {
		l := c.Life[i%len(c.Life)]
		climates, err := exposure.ClimatesAt(l.Place, l.Shore)
		if err != nil {
			return nil, err
		}
		told = append(told, exposure.ToldPeriod{Climates: climates, Years: float64(l.Years), Kept: l.Kept, RoadYears: l.RoadYears})
	}
	return told, nil
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

// Check returns every fault in the file: years that do not fit together, and checks and
// records that a body does not allow. It uses the sample's rates for what depends on a
// shop's rates.
func (c *Car) Check() (wrong []error) {
	if _, err := c.Histories(); err != nil {
		return []error{err}
	}
	for _, id := range c.Bodies {
		b, t, err := c.atSample(id)
		if err != nil {
			return []error{err}
		}
		for _, f := range c.Faults(b, t) {
			wrong = append(wrong, f.Err)
		}
	}
	return wrong
}

// atSample loads one body of the car and makes its table at the sample's rates.
func (c *Car) atSample(id string) (*car.Body, *pricing.Table, error) {
	r, err := rates.Decode(rates.Sample())
	if err != nil {
		panic("engine: internal error: sample rates: " + err.Error())
	}
	common, err := car.LoadCommon()
	if err != nil {
		return nil, nil, err
	}
	b, err := c.Body(id)
	if err != nil {
		return nil, nil, err
	}
	t, err := pricing.NewTable(b, common, r, c.OneStandard(), c.Scope)
	return b, t, err
}

// Body loads one body of the car with those of the car's options that it has.
func (c *Car) Body(id string) (*car.Body, error) {
	var own []string
	if len(c.Options) > 0 {
		for _, o := range optionIDs(id) {
			if slices.Contains(c.Options, o) {
				own = append(own, o)
			}
		}
	}
	return car.Load(id, own...)
}

// OneBody loads the only body of the car. Records are of one body, so several are an
// error.
func (c *Car) OneBody() (*car.Body, error) {
	if len(c.Bodies) != 1 {
		return nil, &strict.Error{Path: "bodies", Found: strings.Join(c.Bodies, ", "), Expected: "one body: what is seen is recorded on one"}
	}
	return c.Body(c.Bodies[0])
}

// OneStandard is the standard of the car, or show while that is not settled. It is for
// results that hardly depend on the standard.
func (c *Car) OneStandard() string {
	if c.Standard == NotSure {
		return "show"
	}
	return c.Standard
}

// looksAt returns the checks of rust that count for a body: all of them, or, while the body is
// not known, those of parts that it has.
func (c *Car) looksAt(b *car.Body) []evidence.Look {
	var own []evidence.Look
	for _, l := range c.Looks {
		if !ofOldDamage(l) && (len(c.Bodies) == 1 || evidence.Has(b, l.On)) {
			own = append(own, l)
		}
	}
	return own
}
