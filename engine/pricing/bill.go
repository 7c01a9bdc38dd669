package pricing

import (
	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/damage"
	"underpaint/engine/money"
	"underpaint/engine/olddamage"
)

// Bill is the work on one simulated car and its price. Hours are in thousandths, money
// in whole minor units. Make one with [Table.NewBill] and reuse it for every
// [Table.Price].
type Bill struct {
	StripHours, AfterHours [car.Trades]int64
	Way                    []car.Way // what is done, by item; Leave where covered
	Drawn                  []car.Way // before other work forced a change
	Covered                []bool
	Missing                []bool  // not on the car, by item
	RaisedBy               []int16 // index of the opening that raised it; −1 if none did, or if a panel is fitted whole

	ReplacedM2 float64 // area of the parts replaced, of the faces that primer reaches

	Strip       money.Minor             // the strip and survey stage
	Labour      [car.Trades]money.Minor // after the survey
	Least       money.Minor             // tops a small job up to the least charge
	Materials   money.Minor             // after the survey
	Consumables money.Minor
	Parts       money.Minor
	SentOut     money.Minor
	Supplies    money.Minor
	AnotherBody money.Minor // everything to do with another body, where the job is done on one
	Total       money.Minor
	Tax         money.Minor // on top of Total when rates are published without tax
	Weeks       float64     // in the shop, without the wait before the start
	Rise        money.Minor // how much of Total is there because prices rise while the job runs
	Left        int64       // thousandths of hours still to be worked when the shop's promise ends
	Fitting     money.Minor // of the total: what bought parts that do not fit, or are used ones, cost more
	Another     AnotherBody // the zero value where the shop offers none

	billed  [car.Trades]int64 // strip hours charged as worked, thousandths
	sentIn  money.Minor       // sent out within the strip stage
	partsIn money.Minor       // parts before handling
	prices  []float64         // of every part, in minor units, before what the figures may have wrong
	lacks   bool              // any item is missing
	lost    float64           // weeks of waiting for parts ordered again
	toFit   toFit             // what bought parts take that do not come as they should
	drawn   anotherDraws
	wrong   float64 // what hours and prices after the strip are multiplied by
	credit  []bool
	after   []hoursOf // every addition to AfterHours, without the whole-car factors
	strip   []float64 // by step of the strip: hours without the whole-car factor
	old     olddamage.Car
	oldSent float64 // setting up sent out, in minor units
	kinds   []uint8 // by item: what old damage adds, as bits of olddamage.Kind
	list    *[]Line // if set, every line is appended here

	over         *overTime // nil = no price rises, and the rest stays 0
	byPhase      [Phases][car.Trades]int64
	partsByPhase [Phases]money.Minor
	partPhases   []int8 // by price
	rise         [risings][Phases]float64
}

// NewBill allocates a bill for [Table.Price].
func (t *Table) NewBill() *Bill {
	n := len(t.items)
	return &Bill{Way: make([]car.Way, n), Drawn: make([]car.Way, n), Covered: make([]bool, n), Missing: make([]bool, n), RaisedBy: make([]int16, n), credit: make([]bool, n), kinds: make([]uint8, n), prices: make([]float64, 0, n+len(t.accesses)), partPhases: make([]int8, 0, n+len(t.accesses))}
}

// Price works out one simulated car. lastPlace is the id of the climate where the car
// was last kept.
func (t *Table) Price(c *damage.Car, lastPlace string, u *Uniforms, b *Bill) {
	b.nothing()
	b.over = t.overTime
	b.after, b.prices, b.partPhases, b.lost = b.after[:0], b.prices[:0], b.partPhases[:0], 0
	b.toFit = toFit{}
	t.drawMissing(u, b)
	t.drawWays(c, u, b)
	t.raiseWays(b.Way, b.RaisedBy)
	t.dropCovered(u, b)
	b.ReplacedM2 = t.replacedM2(b)
	t.creditSeams(b)
	if t.reckons() {
		t.drawOld(c, u, b)
	}
	strip := t.factors(u)
	wrong := t.doubt.factor(u.Doubt)
	after := scaled(strip, wrong)
	b.wrong = wrong
	t.workItems(c, u, &after, b)
	t.getIn(lastPlace, u, &after, b)
	assembly := t.assemblyTimes(u)
	for k := range t.after {
		line := &t.after[k]
		h := line.hours.At(scaledDeviate(u.After[k]))
		if line.trade == car.Fit {
			h *= assembly
		}
		b.hours(-1, line.id, line.trade, h, after[line.trade])
	}
	t.workWholeCar(u, &after, b)
	if t.reckons() {
		t.workOld(u, &after, b)
	}
	t.stripCar(u, b)
	t.chargeStrip(&strip, b)
	t.charge(u, &after, b)
	if t.another != nil {
		t.drawAnother(u, b)
		t.weighAnother(&strip, b)
	}
}

func (t *Table) drawWays(c *damage.Car, u *Uniforms, b *Bill) {
	clear(b.Covered)
	clear(b.credit)
	n := len(t.items)
	condition, uniform, ways, drawn, raised := c.Condition[:n], u.Way[:n], b.Way[:n], b.Drawn[:n], b.RaisedBy[:n]
	for i := range t.items {
		line := &t.items[i]
		way := car.Leave
		if chosen, ok := t.chosen(i); ok {
			way = chosen
		} else if !line.leftOut {
			if b.lacks && b.Missing[i] {
				way = t.wayOfMissing(i, uniform[i])
			} else {
				way = line.instead[line.ends.way(condition[i], uniform[i])]
			}
		}
		ways[i], drawn[i], raised[i] = way, way, -1
	}
}

// dropCovered fits whole panels where their pieces would cost more, then drops the
// items that full panels, or another chassis, replace.
func (t *Table) dropCovered(u *Uniforms, b *Bill) {
	for i, way := range b.Way {
		if way != car.Full {
			continue
		}
		for _, k := range t.covers[i] {
			b.Covered[k] = true
		}
	}
	t.fitPanels(u, b)
	for k := range t.accesses {
		a := &t.accesses[k]
		if len(a.covers) > 0 && a.needed(b.Way) {
			for _, i := range a.covers {
				b.Covered[i] = true
			}
		}
	}
	for i, covered := range b.Covered {
		if covered && !(t.items[i].once && b.Way[i] == car.Full) {
			b.Way[i] = car.Leave
		}
	}
}

// workItems adds the hours and parts of every item, with what earlier repairs add.
func (t *Table) workItems(c *damage.Car, u *Uniforms, f *[car.Trades]float64, b *Bill) {
	reckons := t.reckons()
	for i, way := range b.Way {
		if b.Covered[i] {
			continue
		}
		one := &t.labour[i][way]
		extra := way < car.Full && !b.Missing[i] && (hasFinding(c, i) || len(t.also(i)) > 0 || reckons && b.kinds[i] != 0) && !t.leftOut(i)
		if len(one.hours) == 0 && !extra {
			continue
		}
		s := scaledDeviate(u.Hours[i])
		t.workItem(i, one, s, t.come(i, way, u, f, b), f, b)
		if extra {
			t.addFindings(c, i, s, f[car.Metal], b)
			if reckons {
				t.addKinds(i, s, f, b)
			}
		}
		if one.price != nil {
			b.part(i, one.price.At(scaledDeviate(u.Price[i])))
		}
	}
	for k := range t.above {
		a := &t.above[k]
		rule := &t.fig.above[a.above]
		if b.Way[a.brace] >= rule.atLeast && !b.Covered[a.brace] && b.Way[a.floor] <= rule.atMost && !b.Covered[a.floor] {
			tp := t.money.above[a.above]
			b.hours(a.brace, rule.id, car.Metal, tp.At(scaledDeviate(u.Hours[a.brace])), f[car.Metal])
		}
	}
}

// hasFinding says whether an earlier repair of item i adds to the work.
func hasFinding(c *damage.Car, i int) bool {
	f := c.Finding[i]
	return f == damage.PatchOverRust || f == damage.FillerOverHole || c.Dent[i] || c.LeadFailed[i] > 0
}

// workItem adds the hours of one way on one item. One score sets the hours of all its
// trades, and times multiplies them.
func (t *Table) workItem(i int, way *labour, s float64, times comingTimes, f *[car.Trades]float64, b *Bill) {
	var hours [car.Trades]float64
	chance.AllAt(way.hours, s, hours[:])
	for k, h := range hours[:len(way.hours)] {
		trade := car.Trade(way.trade[k])
		if trade == car.Metal && b.credit[i] {
			h *= 1 - t.fig.seam
		}
		if trade == car.Metal {
			h *= times.missing
		}
		if times.toFit {
			h += b.moreToFit(trade, h, t.coming.workTimes)
		}
		b.hours(i, "", trade, h, f[trade])
	}
}

func (t *Table) addFindings(c *damage.Car, i int, s, factor float64, b *Bill) {
	switch c.Finding[i] {
	case damage.PatchOverRust:
		b.hours(i, "patch_over_rust", car.Metal, t.finding[0].At(s), factor)
	case damage.FillerOverHole:
		b.hours(i, "filler_over_hole", car.Metal, t.finding[1].At(s), factor)
	}
	if c.Dent[i] {
		b.hours(i, "filler_over_dent", car.Metal, t.finding[2].At(s), factor)
	}
	for n := c.LeadFailed[i]; n > 0; n-- {
		b.hours(i, "cracked_lead", car.Metal, t.failedLead.At(s), factor)
	}
	for _, n := range t.also(i) {
		b.hours(i, t.fig.found[n].ID, car.Metal, t.decided.further[n].At(s), factor)
	}
}

// getIn adds the work that is done once to reach the rest.
func (t *Table) getIn(lastPlace string, u *Uniforms, f *[car.Trades]float64, b *Bill) {
	lifted := t.doneInStrip("body_lift")
	for k := range t.accesses {
		a := &t.accesses[k]
		if !a.needed(b.Way) && !t.braced(k, b) {
			continue
		}
		lifted = lifted || a.line.id == bodyOff || a.line.id == otherChassis
		s := scaledDeviate(u.Access[k])
		b.add(&a.line, s, f[a.line.trade])
		a.addFromAnother(s, u, f, b)
		if a.price != nil {
			b.part(-1, a.price.At(scaledDeviate(u.AccessPay[k])))
		}
	}
	if !lifted {
		return
	}
	for k := range t.nuts {
		if n := &t.nuts[k]; u.Nut[k] < t.money.nutChance[lastPlace] {
			b.add(&n.line, scaledDeviate(u.NutHours[k]), f[n.line.trade])
		}
	}
}

// thousandths rounds hours to a thousandth.
func thousandths(h float64) int64 { return int64(float64(h*1000) + 0.5) }

// wholeMinor rounds an amount in minor units.
func wholeMinor(v float64) money.Minor { return money.Minor(int64(v + 0.5)) }

func (b *Bill) add(line *plainLine, s, factor float64) {
	b.hours(-1, line.id, line.trade, line.hours.At(s), factor)
}

func (b *Bill) hours(item int, id string, trade car.Trade, h, factor float64) {
	n := thousandths(h * factor)
	b.AfterHours[trade] += n
	one := hoursOf{hours: h, trade: int8(trade)}
	if b.over != nil {
		phase := b.over.phase(item, trade)
		b.byPhase[phase][trade] += n
		one.phase = int8(phase)
	}
	b.after = append(b.after, one)
	if b.list != nil {
		b.write(Line{ID: id, Item: item, Trade: trade, Thousandths: n})
	}
}

// part adds a part at a price in minor units.
func (b *Bill) part(item int, price float64) {
	n := wholeMinor(float64(price * b.wrong))
	b.partsIn += n
	b.prices = append(b.prices, price)
	if b.over != nil {
		phase := b.over.phase(item, car.Metal)
		b.partsByPhase[phase] += n
		b.partPhases = append(b.partPhases, int8(phase))
	}
	if b.list != nil {
		b.write(Line{ID: "part", Item: item, Price: n})
	}
}

// write appends a line. Callers check b.list first, so that they build no line in vain.
func (b *Bill) write(l Line) { *b.list = append(*b.list, l) }
