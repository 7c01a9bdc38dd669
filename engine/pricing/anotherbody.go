package pricing

import (
	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/money"
	"underpaint/engine/rates"
)

// The numbers of [Uniforms.Another].
const (
	anotherHad = iota // whether another body can be found
	anotherPrice
	anotherPapers
	anotherSearch
	anotherMovingFit
	anotherMovingMetal
	anotherMetal
	anotherWeeks
	chassisRusts // whether the other chassis of [chassisRust] has rust of its own
	chassisHours
	// AnotherUniforms is how many numbers one car takes for what comes from another car.
	AnotherUniforms
)

// IDs of the lines of [Table.Explain] that another body brings with it.
const (
	AnotherBodyPrice  = "another_body" // its price, papers, strip and survey, wire and gas
	AnotherBodySearch = "another_body_search"
	AnotherBodyMoving = "another_body_moving"
	AnotherBodyMetal  = "another_body_metal"
)

// anotherBody is what it takes to do the job on another body, in this shop's hours and
// money.
type anotherBody struct {
	had                                     float64            // chance that one can be found
	price, papers                           *chance.ThreePoint // minor units
	search, movingFit, movingMetal, itMetal *chance.ThreePoint // hours
	weeks                                   *chance.ThreePoint
	prep, times                             float64
	taken                                   bool // the customer lets the shop decide

	// Its strip and survey, at the likely price.
	stripLabour, stripMaterials, stripSentOut money.Minor
	stripHours                                [car.Trades]int64
}

// AnotherBody compares mending the body of one car with doing the job on another. Money
// is in minor units.
type AnotherBody struct {
	Keep    money.Minor // metalwork on this body with its parts, wire and gas
	Other   money.Minor // everything to do with another body, its own metalwork included
	Had     bool        // another can be found
	Advised bool        // and mending this one costs clearly more
}

// anotherDraws are the draws of one car that other whole-car factors leave as they are.
type anotherDraws struct {
	had                              bool
	bought                           money.Minor // price and papers
	search, movingFit, movingMetal   float64     // hours without factors
	metal, weeks, perMetalHour, week float64
}

// OffersAnotherBody says whether the shop has a price for another body of this kind and
// the wish leaves room for it. Where only the outside is done, this body stays.
func (t *Table) OffersAnotherBody() bool { return t.another != nil }

// TakesAnotherBody says whether a car's total is that on another body where the shop
// would advise it.
func (t *Table) TakesAnotherBody() bool { return t.another != nil && t.another.taken }

// TakingAnotherBody returns a copy of the table on which the customer accepts another
// body, or does not. Where the shop offers none, both give the same bills.
func (t *Table) TakingAnotherBody(taken bool) *Table {
	if t.another == nil || t.another.taken == taken {
		return t
	}
	out, another := *t, *t.another
	another.taken = taken
	out.another = &another
	return &out
}

// AdvisedTimes is how many times the price of everything to do with another body the
// metalwork on this one and its parts must cost before the shop advises another.
func (t *Table) AdvisedTimes() float64 { return t.another.times }

// setAnotherBody makes the figures of another body. Hours follow the standard, except
// those of the search; those of moving and of its metal also follow the size of the body.
func (t *Table) setAnotherBody() error {
	one, found := t.Rates.AnotherBody.Find(t.Body.ID)
	if !found || t.outsideOnly() {
		return nil
	}
	r := t.Rates.AnotherBody
	a := &anotherBody{had: one.ToBeHad, prep: r.PrepTimes, times: 1 + r.DearerByPercent/100}
	papers := t.minorPerMajor()
	if !r.PapersStated {
		papers *= t.Rates.Parts.PriceFactor.Float()
	}
	hours := func(trade car.Trade) float64 {
		return t.fig.standard[t.Standard][trade] * t.pace(trade) * t.Body.StageFactor
	}
	for _, set := range []struct {
		to    **chance.ThreePoint
		three [3]float64
		times float64
	}{
		{&a.price, one.Price, t.minorPerMajor()}, {&a.papers, r.Papers, papers}, {&a.weeks, one.Weeks, 1},
		{&a.search, r.Search, t.pace(car.Fit)}, {&a.movingFit, r.MovingFit, hours(car.Fit)},
		{&a.movingMetal, r.MovingMetal, hours(car.Metal)}, {&a.itMetal, r.ItsMetal, hours(car.Metal)},
	} {
		tp, err := threePoint(car.Hours(set.three), set.times)
		if err != nil {
			return err
		}
		*set.to = tp
	}
	a.setStrip(t)
	t.another = a
	return nil
}

// setStrip sets the likely price of stripping the other body, all of it primed, as a
// customer would be told it, and its likely hours.
func (a *anotherBody) setStrip(t *Table) {
	a.stripLabour, a.stripMaterials = t.money.stripLabour, t.money.stripMaterials+t.primer(0)
	for k := range t.strip {
		l := &t.strip[k]
		if l.byCustomer {
			continue
		}
		n := thousandths(l.likely)
		a.stripHours[l.trade] += n
		if l.chargedAsWorked() {
			a.stripLabour += t.Rates.Labour.Trades[l.trade].Rate.Of(n)
		}
	}
	for k, tp := range t.money.sent {
		if tp != nil && t.Rates.SentOut.Work[k].Stage == rates.StripStage {
			v := wholeMinor(tp.Likely())
			a.stripSentOut += v + t.Rates.SentOut.Handling.Of(v)
		}
	}
}

// drawAnother draws what another body takes on one car.
func (t *Table) drawAnother(u *Uniforms, b *Bill) {
	a, x := t.another, &u.Another
	at := func(tp *chance.ThreePoint, k int) float64 { return tp.At(scaledDeviate(x[k])) }
	b.drawn = anotherDraws{
		had:    x[anotherHad] < a.had,
		bought: wholeMinor(at(a.price, anotherPrice)) + wholeMinor(at(a.papers, anotherPapers)),
		search: at(a.search, anotherSearch), movingFit: at(a.movingFit, anotherMovingFit), movingMetal: at(a.movingMetal, anotherMovingMetal),
		metal: at(a.itMetal, anotherMetal), weeks: at(a.weeks, anotherWeeks), week: t.money.week.At(scaledDeviate(u.Week)),
	}
	if t.money.wire != nil {
		b.drawn.perMetalHour = t.money.wire.At(scaledDeviate(u.Wire)) * t.minorPerMajor()
	}
}

// weighAnother compares another body with this one on a car that is priced, and changes
// the bill to the other one where the shop would advise it and the customer agrees. f are
// the whole-car factors of hours without what the figures may have wrong, which reaches
// only the metalwork of the other body: the rest of it has a price that can be asked for.
func (t *Table) weighAnother(f *[car.Trades]float64, b *Bill) {
	a, d, r := t.another, &b.drawn, t.Rates
	var hours [car.Trades]int64
	searching, moving := thousandths(d.search*f[car.Fit]), thousandths(d.movingFit*f[car.Fit])
	refit, its := thousandths(d.movingMetal*f[car.Metal]), thousandths(d.metal*f[car.Metal]*b.wrong)
	hours[car.Fit], hours[car.Metal] = searching+moving, refit+its
	labour := b.atItsDay(a.stripLabour+r.Labour.Trades[car.Metal].Rate.Of(hours[car.Metal]), RisingLabour, PhaseStructure) +
		b.atItsDay(r.Labour.Trades[car.Fit].Rate.Of(hours[car.Fit]), RisingLabour, PhaseAssembly)
	wire := b.atItsDay(wholeMinor(d.perMetalHour*float64(hours[car.Metal])/1000), RisingMaterials, PhaseStructure)
	bought := b.atItsDay(d.bought, RisingParts, PhaseStructure)
	materials, sentOut := b.atItsDay(a.stripMaterials, RisingMaterials, PhaseStructure), b.atItsDay(a.stripSentOut, RisingParts, PhaseStructure)

	left := t.fixedAndWorked(b) - b.Labour[car.Metal] // labour that either body takes
	either := t.supplies(left)
	b.Another = AnotherBody{
		Keep:  b.Labour[car.Metal] + b.Consumables + b.Parts + b.Supplies - either,
		Other: bought + labour + materials + sentOut + wire + t.supplies(left+labour) - either,
		Had:   d.had,
	}
	b.Another.Advised = d.had && float64(b.Another.Keep) > float64(float64(b.Another.Other)*a.times)
	if !b.Another.Advised || !a.taken {
		return
	}
	before := b.AfterHours
	if b.list != nil {
		strip := b.atItsDay(a.stripLabour, RisingLabour, PhaseStructure) + materials + sentOut
		b.listAnother(t, searching, moving, refit, its, bought+strip+wire)
	}
	prep := int64(float64(float64(b.AfterHours[car.Prep])*a.prep) + 0.5)
	b.AfterHours[car.Metal], b.AfterHours[car.Prep] = hours[car.Metal], prep
	b.AfterHours[car.Fit] += hours[car.Fit]
	for trade, n := range a.stripHours {
		b.AfterHours[trade] += n
	}
	prepLabour := r.Labour.Trades[car.Prep].Rate.Of(prep)
	if b.over != nil {
		prepLabour = wholeMinor(float64(float64(b.Labour[car.Prep]) * a.prep))
	}
	left += prepLabour - b.Labour[car.Prep]
	b.Total -= b.Labour[car.Metal] + b.Labour[car.Prep] + b.Consumables + b.Parts + b.Supplies
	b.Labour[car.Metal], b.Labour[car.Prep] = 0, prepLabour
	b.Consumables, b.Parts, b.Supplies = 0, 0, t.supplies(left+labour)
	b.AnotherBody, b.Fitting = bought+labour+materials+sentOut+wire, 0
	b.Total += b.Labour[car.Prep] + b.Supplies + b.AnotherBody
	// Papers are fees and carry no tax of the shop's; they are too small a share to keep
	// apart, so the price and the papers count as a part.
	b.Tax = t.tax(left+labour, t.stripMaterials(b)+b.Materials+materials+wire, bought, b.Supplies, b.sentIn+b.SentOut+sentOut)
	more := int64(0)
	for trade, n := range b.AfterHours {
		more += n - before[trade]
	}
	b.Weeks += float64(more)/1000/d.week + d.weeks
}

// fixedAndWorked is all labour of a bill, the base of the share for supplies.
func (t *Table) fixedAndWorked(b *Bill) (sum money.Minor) {
	sum = b.Strip - t.stripMaterials(b) - b.sentIn + b.Least
	for _, l := range b.Labour {
		sum += l
	}
	return sum
}

// stripMaterials are the materials of the strip and survey of this body.
func (t *Table) stripMaterials(b *Bill) money.Minor {
	return b.atItsDay(t.money.stripMaterials+t.primer(b.ReplacedM2), RisingMaterials, PhaseStrip)
}

// listAnother turns the lines of a car into those of the job on another body.
func (b *Bill) listAnother(t *Table, searching, moving, refit, its int64, price money.Minor) {
	a, kept := t.another, (*b.list)[:0]
	for _, l := range *b.list {
		if !l.Strip && (l.Price > 0 || l.Trade == car.Metal) {
			continue
		}
		if !l.Strip && l.Trade == car.Prep {
			l.Thousandths = int64(float64(float64(l.Thousandths)*a.prep) + 0.5)
		}
		kept = append(kept, l)
	}
	*b.list = append(kept,
		Line{ID: AnotherBodyPrice, Item: -1, Price: price},
		Line{ID: AnotherBodySearch, Item: -1, Trade: car.Fit, Thousandths: searching},
		Line{ID: AnotherBodyMoving, Item: -1, Trade: car.Fit, Thousandths: moving},
		Line{ID: AnotherBodyMoving, Item: -1, Trade: car.Metal, Thousandths: refit},
		Line{ID: AnotherBodyMetal, Item: -1, Trade: car.Metal, Thousandths: its})
}
