package pricing

import (
	"math"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/money"
	"underpaint/engine/rates"
)

// Rising is a kind of price that rises over time at a pace of its own.
type Rising int

// The kinds of rising prices. Work sent out rises as parts do: both are bought.
const (
	RisingLabour Rising = iota
	RisingParts
	RisingMaterials
	risings
)

// overTime says how the prices of a table rise while a job runs. Times are in weeks from
// the day of the rates.
type overTime struct {
	percent [risings]chance.Curve // a year
	hold    [risings]float64      // up to when a price holds; +Inf = throughout, −1 = not at all
	queue   float64
	strip   bool            // it begins after the rates have run out, so its price has risen too
	phases  [2][]Phase      // by item: of its metal, prep and fitting; then of its body work and paint
	trades  [car.Trades]int // which of the two, by trade
}

// weeksAYear is the mean Gregorian year.
const weeksAYear = 365.2425 / 7

// setOverTime reads the shop's promise. A table of rates that say nothing has none.
func (t *Table) setOverTime() error {
	r := t.Rates.OverTime
	if r == nil {
		return nil
	}
	o := &overTime{queue: t.Rates.Time.WeeksUntilStart}
	for kind, percent := range [risings][3]float64{r.Labour, r.Parts, r.Materials} {
		tp, err := chance.NewThreePoint(percent[0], percent[1], percent[2])
		if err != nil {
			return err
		}
		o.percent[kind], o.hold[kind] = tp.Curve, -1
	}
	if r.Promise.Holds(rates.OnLabour) {
		o.hold[RisingLabour] = t.holdsWeeks(&r.Promise)
	}
	if r.Promise.Holds(rates.OnMaterials) {
		o.hold[RisingMaterials] = t.holdsWeeks(&r.Promise)
	}
	o.strip = float64(o.queue*7) > float64(rates.DaysBetween(t.Rates.RatesOf, t.Rates.ValidUntil))
	for i := range t.items {
		o.phases[0] = append(o.phases[0], phaseOfPart(t.Body.PartOf(i)))
		o.phases[1] = append(o.phases[1], PhasePaint)
	}
	o.trades[car.BodyWork], o.trades[car.Paint] = 1, 1
	t.overTime = o
	return nil
}

// holdsWeeks is how long a promise holds, in weeks from the day of the rates. A strip is
// taken to be authorized on that day and to begin after the shop's queue (assumption).
func (t *Table) holdsWeeks(p *rates.Promise) float64 {
	switch p.How {
	case rates.HeldThroughout:
		return math.Inf(1)
	case rates.HeldUntil:
		return float64(rates.DaysBetween(t.Rates.RatesOf, p.Until)) / 7
	}
	weeks := float64(float64(p.Months) * (weeksAYear / 12))
	if p.From == rates.FromBegun {
		weeks += t.Rates.Time.WeeksUntilStart
	}
	return weeks
}

// Rises says whether any price of the table rises over time.
func (t *Table) Rises() bool { return t.overTime != nil }

// phase is the stage of work on an item, −1 for the car as a whole.
func (o *overTime) phase(item int, trade car.Trade) Phase {
	if item < 0 {
		return phaseOfTrade(trade)
	}
	return o.phases[o.trades[trade]][item]
}

// PriceLevel is what a kind of price after the strip has come to at a stage of the job
// last priced, 1 = as published.
func (b *Bill) PriceLevel(kind Rising, s Phase) float64 { return 1 + b.rise[kind][s] }

// setRise works out when each stage of the job is done and by what share its prices have
// risen by the middle of it. A price that is held stays as published; after that it is
// the price of its day. waits is in weeks, half of it before the structure and half before
// the assembly (assumption).
func (o *overTime) setRise(u *Uniforms, b *Bill, hoursAWeek, waits float64) {
	var worked [Phases]int64
	for trade := range b.StripHours {
		worked[PhaseStrip] += b.StripHours[trade]
	}
	for s := PhaseStructure; s < Phases; s++ {
		for _, h := range b.byPhase[s] {
			worked[s] += h
		}
	}
	pace, ends := o.pace(u), o.ends()
	begun, left := o.queue, 0.0
	for s := range Phases {
		if s == PhaseStructure || s == PhaseAssembly {
			begun += float64(waits / 2)
		}
		takes := float64(worked[s]) / 1000 / hoursAWeek
		if s > PhaseStrip || o.strip {
			o.rise(s, &pace, begun+float64(takes/2), b)
		}
		if begun+takes > ends {
			left += float64(math.Min(takes, begun+takes-ends) * hoursAWeek)
		}
		begun += takes
	}
	b.Left = thousandths(left)
}

// rise sets the rise of the prices of a stage with its middle at a time.
func (o *overTime) rise(s Phase, pace *[risings]float64, middle float64, b *Bill) {
	for kind := range pace {
		b.rise[kind][s] = 0
		if middle > o.hold[kind] {
			b.rise[kind][s] = chance.Exp(float64(pace[kind]*middle)) - 1
		}
	}
}

// ends is when the shop's promise ends, +Inf where there is none or no end to it.
func (o *overTime) ends() float64 {
	ends := math.Max(o.hold[RisingLabour], o.hold[RisingMaterials])
	if ends < 0 {
		return math.Inf(1)
	}
	return ends
}

// pace is by how much the log of each kind of price rises in a week. All three follow
// from one uniform, because prices rise together.
func (o *overTime) pace(u *Uniforms) (pace [risings]float64) {
	s := scaledDeviate(u.Rise)
	for kind := range pace {
		pace[kind] = chance.Log(1+float64(o.percent[kind].At(s)/100)) / weeksAYear
	}
	return pace
}

// atItsDay is an amount of a stage at the price of its time.
func (b *Bill) atItsDay(amount money.Minor, kind Rising, s Phase) money.Minor {
	if b.rise[kind][s] == 0 {
		return amount
	}
	return amount + wholeMinor(float64(float64(amount)*b.rise[kind][s]))
}

// risen does the same and counts what the amount has risen by.
func (b *Bill) risen(amount money.Minor, kind Rising, s Phase) money.Minor {
	now := b.atItsDay(amount, kind, s)
	b.Rise += now - amount
	return now
}

// rose rounds what a kind of line has risen by and counts it.
func (b *Bill) rose(v float64) money.Minor {
	n := wholeMinor(v)
	b.Rise += n
	return n
}

// overPhases adds up a quantity after the strip, each stage times what a kind of price has
// risen by then.
func (b *Bill) overPhases(kind Rising, at func(Phase) float64) (sum float64) {
	if b.over == nil {
		return 0
	}
	for s := PhaseStructure; s < Phases; s++ {
		sum += float64(at(s) * b.rise[kind][s])
	}
	return sum
}

// labourRise is what the labour of a trade after the strip has risen by. perHour is in
// minor units.
func (b *Bill) labourRise(trade car.Trade, perHour float64) money.Minor {
	sum := b.overPhases(RisingLabour, func(s Phase) float64 { return float64(b.byPhase[s][trade]) })
	return b.rose(float64(sum*perHour) / 1000)
}

// partsRise is the same of the parts, before handling.
func (b *Bill) partsRise() money.Minor {
	return b.rose(b.overPhases(RisingParts, func(s Phase) float64 { return float64(b.partsByPhase[s]) }))
}

// consumablesRise is the same of wire, gas and discs at a price for an hour of metalwork.
func (b *Bill) consumablesRise(perHour float64) money.Minor {
	sum := b.overPhases(RisingMaterials, func(s Phase) float64 { return float64(b.byPhase[s][car.Metal]) })
	return b.rose(float64(sum*perHour) / 1000)
}
