package pricing

import (
	"math"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/money"
	"underpaint/engine/rates"
)

// pricing holds what turns hours and parts into money. It is worked out once per table.
type pricing struct {
	rhoRest   float64             // √(1 − ρ²)
	perHour   [car.Trades]float64 // minor units
	handled   float64             // price of a part with handling per unit of price without
	above     []*chance.ThreePoint
	nutChance map[string]float64

	stripLabour    money.Minor // the labour of the fixed part of the stage
	stripMaterials money.Minor // without primers whose quantity depends on the parts replaced
	materials      money.Minor // after the survey, without those on the parts replaced
	wire           *chance.ThreePoint
	sent           []*chance.ThreePoint // minor units; nil = not at this standard or scope
	week, wait     *chance.ThreePoint
	taxed          [5]bool // labour, materials, parts, supplies, sent out
}

func (t *Table) setMoney() error {
	t.money = pricing{}
	m := &t.money
	m.rhoRest = math.Sqrt(1 - float64(t.fig.rho*t.fig.rho))
	for trade := range m.perHour {
		m.perHour[trade] = perHour(t.Rates.Labour.Trades[trade].Rate.Rate)
	}
	m.handled = 1 + float64(t.Rates.Parts.Handling.Percent.Millionths())/1e8
	t.setPanels()
	for _, a := range t.fig.above {
		// Drilling takes the same time whatever the finish, so the standard's factor
		// does not apply.
		tp, err := threePoint(a.metal, t.pace(car.Metal))
		if err != nil {
			return err
		}
		m.above = append(m.above, tp)
	}
	for _, g := range t.fig.gettingIn {
		if g.chance != nil {
			m.nutChance = g.chance
		}
	}
	t.setSurfaces()
	m.stripMaterials = t.materialsOf(rates.StripStage)
	m.materials = t.materialsOf(rates.AfterStage)
	m.stripLabour = t.fixedLabour()
	if t.Rates.Strip.PriceSet {
		// A price set by the shop covers everything fixed in the stage, materials
		// included.
		m.stripLabour, m.stripMaterials = t.Rates.Strip.Price, 0
	}
	return t.setMoneyDraws()
}

func (t *Table) setMoneyDraws() (err error) {
	m := &t.money
	if t.Rates.Consumables.Charged {
		if m.wire, err = threePoint(car.Hours(t.Rates.Consumables.PerMetalHour), 1); err != nil {
			return err
		}
	}
	for _, s := range t.Rates.SentOut.Work {
		var tp *chance.ThreePoint
		if s.Standards[t.Standard] && s.Scopes[t.Scope] {
			if tp, err = threePoint(car.Hours(s.Price), t.minorPerMajor()); err != nil {
				return err
			}
		}
		m.sent = append(m.sent, tp)
	}
	if m.week, err = threePoint(car.Hours(t.Rates.Time.HoursAWeek), 1); err != nil {
		return err
	}
	if t.Rates.Time.Waits {
		if m.wait, err = threePoint(car.Hours(t.Rates.Time.WaitsWeeks), 1); err != nil {
			return err
		}
	}
	for k, answer := range t.Rates.Tax.On.Kinds() {
		m.taxed[k] = answer == rates.Yes
	}
	return nil
}

// fixedLabour is the labour of the steps charged at a fixed price or by the piece:
// their likely hours at the shop's rates, with one rounding per trade.
func (t *Table) fixedLabour() (sum money.Minor) {
	var hours [car.Trades]int64
	for k := range t.strip {
		if line := &t.strip[k]; !line.chargedAsWorked() && !line.byCustomer {
			hours[line.trade] += thousandths(line.likely)
		}
	}
	for trade, h := range hours {
		sum += t.Rates.Labour.Trades[trade].Rate.Of(h)
	}
	return sum
}

func (l *stripLine) chargedAsWorked() bool { return l.how == rates.ByTheHour || l.how == rates.AtCost }

// Quantity is how much of a material this car takes, in thousandths of the material's
// unit, without what goes on the parts that are replaced.
func (t *Table) Quantity(m rates.Material) int64 {
	q := m.UnitsPerM2() * t.area(&m)
	if m.How == rates.PerCar {
		q = m.Quantity
	}
	standard := t.Standard
	if m.Area == rates.InsideAndUnder || m.Area == rates.Frame {
		standard = t.Unseen
	}
	return int64(float64(q*m.Factor[standard]*1000) + 0.5)
}

// materialsOf is what the materials of a stage cost that every car takes alike.
func (t *Table) materialsOf(stage string) (sum money.Minor) {
	for _, m := range t.Rates.Materials {
		if m.Stage == stage && m.Scopes[t.Scope] && !(isPrimer(&m) && len(t.surfaces.primers) > 0) {
			sum += m.Price.Of(t.Quantity(m))
		}
	}
	return sum
}

// charge turns the hours and parts of a bill into money. What prices have risen by is
// worked out apart, with one rounding for each kind of line. after are the whole-car
// factors of the work after the strip.
func (t *Table) charge(u *Uniforms, after *[car.Trades]float64, b *Bill) {
	m, r := &t.money, t.Rates
	week, waits := m.week.At(scaledDeviate(u.Week)), 0.0
	if m.wait != nil {
		waits = m.wait.At(scaledDeviate(u.Wait))
	}
	waits += b.lost
	if t.overTime != nil {
		t.overTime.setRise(u, b, week, waits)
	}
	stripAsWorked := money.Minor(0)
	labour := money.Minor(0)
	hours := int64(0)
	for trade := range b.Labour {
		rate := r.Labour.Trades[trade].Rate
		stripAsWorked += rate.Of(b.billed[trade])
		b.Labour[trade] = rate.Of(b.AfterHours[trade]) + b.labourRise(car.Trade(trade), m.perHour[trade])
		labour += b.Labour[trade]
		hours += b.StripHours[trade] + b.AfterHours[trade]
	}
	stripLabour := b.risen(m.stripLabour+stripAsWorked, RisingLabour, PhaseStrip)
	b.Least = b.risen(t.least(hours), RisingLabour, PhaseAssembly)
	labour += stripLabour + b.Least
	labourRise := b.Rise
	stripMaterials := b.risen(m.stripMaterials+t.primer(b.ReplacedM2), RisingMaterials, PhaseStrip)
	sentIn, sentAfter := t.sentOut(u)
	if t.reckons() {
		sentAfter += wholeMinor(b.oldSent)
	}
	sentAfter = b.wronged(sentAfter)
	b.SentOut = b.risen(sentAfter+r.SentOut.Handling.Of(sentAfter), RisingParts, PhaseAssembly)
	b.sentIn = b.risen(sentIn+r.SentOut.Handling.Of(sentIn), RisingParts, PhaseStrip)
	b.Strip = stripLabour + stripMaterials + b.sentIn
	b.Materials = b.risen(b.wronged(m.materials+t.onNewParts(b.ReplacedM2)), RisingMaterials, PhasePaint)
	b.Consumables = 0
	perHour := 0.0
	if m.wire != nil {
		perHour = m.wire.At(scaledDeviate(u.Wire)) * t.minorPerMajor()
		b.Consumables = wholeMinor(perHour*float64(b.AfterHours[car.Metal])/1000) + b.consumablesRise(perHour)
	}
	t.chargeFitting(after, perHour, b)
	parts := b.partsIn + b.partsRise()
	b.Parts = parts + r.Parts.Handling.Of(parts)
	b.Supplies = t.supplies(labour)
	if b.Rise > 0 {
		b.Rise += b.Parts - parts - r.Parts.Handling.Of(b.partsIn) + b.Supplies - t.supplies(labour-labourRise)
	}
	b.Total = b.Strip + b.Least + b.Materials + b.Consumables + b.Parts + b.SentOut + b.Supplies
	for _, l := range b.Labour {
		b.Total += l
	}
	b.Tax = t.tax(labour, stripMaterials+b.Materials+b.Consumables, b.Parts, b.Supplies, b.sentIn+b.SentOut)
	b.Weeks = float64(hours)/1000/week + waits
}

// least tops a small job up to the shop's least charge, at its metal rate.
func (t *Table) least(hours int64) money.Minor {
	short := thousandths(t.Rates.Labour.LeastHours) - hours
	if short <= 0 {
		return 0
	}
	return t.Rates.Labour.Trades[car.Metal].Rate.Of(short)
}

func (t *Table) sentOut(u *Uniforms) (strip, after money.Minor) {
	for k, tp := range t.money.sent {
		if tp == nil {
			continue
		}
		v := wholeMinor(tp.At(scaledDeviate(u.Sent[k])))
		if t.Rates.SentOut.Work[k].Stage == rates.StripStage {
			strip += v
		} else {
			after += v
		}
	}
	return strip, after
}

func (t *Table) supplies(labour money.Minor) money.Minor {
	s := t.Rates.Supplies
	if !s.ShareOfLabour {
		return 0
	}
	v := s.Percent.Of(labour)
	if s.Capped && v > s.NoMoreThan {
		return s.NoMoreThan
	}
	return v
}

// tax is the tax on the taxed kinds of line, added up and rounded once (the invoice
// basis of the Streamlined Sales and Use Tax Agreement, section 324). It is 0 where
// published rates already include tax.
func (t *Table) tax(kinds ...money.Minor) money.Minor {
	if t.Rates.Tax.Published == rates.WithTax || t.Rates.Tax.NotSure() {
		return 0
	}
	base := money.Minor(0)
	for k, v := range kinds {
		if t.money.taxed[k] {
			base += v
		}
	}
	return t.Rates.Tax.Percent.Of(base)
}
