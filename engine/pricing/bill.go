package pricing

import (
	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/damage"
	"underpaint/engine/money"
)

// Bill is the work on one simulated car and its price. Hours are in thousandths, money
// in whole minor units. Make one with [Table.NewBill] and reuse it for every
// [Table.Price].
type Bill struct {
	StripHours, AfterHours [car.Trades]int64
	Way                    []car.Way // what is done, by item; Leave where covered
	Drawn                  []car.Way // before other work forced a change
	Covered                []bool
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
	Another     AnotherBody // the zero value where the shop offers none

	billed  [car.Trades]int64 // strip hours charged as worked, thousandths
	sentIn  money.Minor       // sent out within the strip stage
	partsIn money.Minor       // parts before handling
	prices  []float64         // of every part, in minor units, before what the figures may have wrong
	drawn   anotherDraws
	wrong   float64 // what hours and prices after the strip are multiplied by
	credit  []bool
	after   []hoursOf // every addition to AfterHours, without the whole-car factors
	strip   []float64 // by step of the strip: hours without the whole-car factor
	list    *[]Line   // if set, every line is appended here
}

// NewBill allocates a bill for [Table.Price].
func (t *Table) NewBill() *Bill {
	n := len(t.items)
	return &Bill{Way: make([]car.Way, n), Drawn: make([]car.Way, n), Covered: make([]bool, n), RaisedBy: make([]int16, n), credit: make([]bool, n), prices: make([]float64, 0, n+len(t.accesses))}
}

// Price works out one simulated car. lastPlace is the id of the climate where the car
// was last kept.
func (t *Table) Price(c *damage.Car, lastPlace string, u *Uniforms, b *Bill) {
	b.nothing()
	b.after, b.prices = b.after[:0], b.prices[:0]
	t.drawWays(c, u, b)
	t.raiseWays(b.Way, b.RaisedBy)
	t.dropCovered(u, b)
	b.ReplacedM2 = t.replacedM2(b)
	t.creditSeams(b)
	strip := t.factors(u)
	wrong := t.doubt.factor(u.Doubt)
	after := scaled(strip, wrong)
	b.wrong = wrong
	t.workItems(c, u, &after, b)
	t.getIn(lastPlace, u, &after, b)
	for k := range t.after {
		line := &t.after[k]
		b.add(line, scaledDeviate(u.After[k]), after[line.trade])
	}
	t.workWholeCar(u, &after, b)
	t.stripCar(u, b)
	t.chargeStrip(&strip, b)
	t.charge(u, b)
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
			way = line.instead[line.ends.way(condition[i], uniform[i])]
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
	for i, way := range b.Way {
		if b.Covered[i] {
			continue
		}
		one := &t.labour[i][way]
		extra := way < car.Full && (hasFinding(c, i) || len(t.also(i)) > 0) && !t.leftOut(i)
		if len(one.hours) == 0 && !extra {
			continue
		}
		s := scaledDeviate(u.Hours[i])
		t.workItem(i, one, s, f, b)
		if extra {
			t.addFindings(c, i, s, f[car.Metal], b)
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
// trades.
func (t *Table) workItem(i int, way *labour, s float64, f *[car.Trades]float64, b *Bill) {
	var hours [car.Trades]float64
	chance.AllAt(way.hours, s, hours[:])
	for k, h := range hours[:len(way.hours)] {
		trade := car.Trade(way.trade[k])
		if trade == car.Metal && b.credit[i] {
			h *= 1 - t.fig.seam
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
		if !a.needed(b.Way) {
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
	b.after = append(b.after, hoursOf{h, trade})
	if b.list != nil {
		b.write(Line{ID: id, Item: item, Trade: trade, Thousandths: n})
	}
}

// part adds a part at a price in minor units.
func (b *Bill) part(item int, price float64) {
	n := wholeMinor(float64(price * b.wrong))
	b.partsIn += n
	b.prices = append(b.prices, price)
	if b.list != nil {
		b.write(Line{ID: "part", Item: item, Price: n})
	}
}

// write appends a line. Callers check b.list first, so that they build no line in vain.
func (b *Bill) write(l Line) { *b.list = append(*b.list, l) }
