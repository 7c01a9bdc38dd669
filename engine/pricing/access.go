package pricing

import (
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/rates"
)

// access is one line for getting in. It is charged once if any of its items is bad
// enough.
type access struct {
	in            int // index in figures.gettingIn
	side          car.Side
	line          plainLine
	price         *chance.ThreePoint // minor units
	items         []int
	way           car.Way
	exact         bool
	unless        []int
	unlessAtLeast car.Way
	unlessExact   bool
	covers        []int
	fromAnother   // the zero value for work on this car alone
}

// nut is one body bolt that may have seized, which shows once the body is lifted.
type nut struct {
	item int
	line plainLine
}

// doneInStrip says whether the scope includes the whole of a step of the strip.
func (t *Table) doneInStrip(id string) bool {
	for _, s := range t.fig.steps {
		if s.id == id || s.onAFrame != nil && s.onAFrame.id == id {
			lifted := s.onAFrame != nil && s.onAFrame.id == id
			if s.onAFrame != nil && lifted != t.Body.OnAFrame {
				continue
			}
			return !t.outsideOnly() || s.outsideOnly == 1
		}
	}
	return false
}

func (t *Table) setGettingIn() error {
	for n, g := range t.fig.gettingIn {
		body := t.gettingInOf(g.id)
		if body == nil || t.anyDone(g.notIfDone) {
			continue
		}
		tp, err := threePoint(body.Hours, t.pace(g.trade))
		if err != nil {
			return err
		}
		line := plainLine{id: g.id, name: g.name, trade: g.trade, hours: tp}
		if g.chance != nil {
			for _, i := range t.itemsOfAll(g.parts, car.NoSide) {
				t.nuts = append(t.nuts, nut{item: i, line: line})
			}
			continue
		}
		if err := t.addAccesses(n, g, line, body); err != nil {
			return err
		}
	}
	return nil
}

// addAccesses adds one line per car, one per side, or one per end.
func (t *Table) addAccesses(n int, g gettingIn, line plainLine, body *car.GettingIn) error {
	more, err := t.fromAnother(line, body)
	if err != nil {
		return err
	}
	tp, err := threePoint(body.Price, t.Rates.Parts.PriceFactor.Float()*t.minorPerMajor())
	if err != nil {
		return err
	}
	sides := []car.Side{car.NoSide}
	if g.per == "side" {
		sides = []car.Side{car.Left, car.Right}
	}
	for _, when := range g.when {
		for _, side := range sides {
			a := access{in: n, side: side, line: line, price: tp, items: t.itemsOfAll(when.parts, side), way: when.way, exact: when.exact, fromAnother: more}
			if g.unless != "" {
				a.unless, a.unlessAtLeast, a.unlessExact = t.itemsOf(g.unless, side, ""), g.unlessAtLeast, g.unlessExact
			}
			a.covers = t.itemsOfAll(g.covers, car.NoSide)
			if len(a.items) > 0 {
				t.accesses = append(t.accesses, a)
			}
		}
	}
	return nil
}

func (t *Table) gettingInOf(id string) *car.GettingIn {
	for k := range t.Body.GettingIn {
		if t.Body.GettingIn[k].ID == id {
			return &t.Body.GettingIn[k]
		}
	}
	return nil
}

func (t *Table) anyDone(steps []string) bool {
	for _, s := range steps {
		if t.doneInStrip(s) {
			return true
		}
	}
	return false
}

// needed says whether these ways call for the line.
func (a *access) needed(way []car.Way) bool {
	if a.unlessExact && anyExactly(way, a.unless, a.unlessAtLeast) || !a.unlessExact && anyAtLeast(way, a.unless, a.unlessAtLeast) {
		return false
	}
	for _, i := range a.items {
		if way[i] == a.way || !a.exact && way[i] > a.way {
			return true
		}
	}
	return false
}

// stripLine is one step of the strip and survey on this body.
type stripLine struct {
	plainLine
	how     string  // rates.Fixed, EachOne, ByTheHour or AtCost
	ceiling float64 // hours, 0 = none
	likely  float64
	each    int // number of pieces, for EachOne
	// byCustomer marks a step that the customer does: the shop neither works nor
	// charges it.
	byCustomer bool
}

// setStrip scales the steps to the body: most by its stage factor, the lead by the
// number of its joints. The body lift has hours of its own.
func (t *Table) setStrip() error {
	for n, s := range t.fig.steps {
		factor := t.Body.StageFactor
		if s.onAFrame != nil && t.Body.OnAFrame {
			s, factor = *s.onAFrame, 1
		}
		charge := t.Rates.Strip.Charged[n]
		hours, each := s.hours, 0
		if s.perLeadJoint {
			each = t.Body.LeadJoints()
			hours, factor = t.fig.takeOut, float64(each)
		}
		if t.outsideOnly() {
			factor *= s.outsideOnly
		}
		factor *= t.pace(s.trade)
		tp, err := threePoint(hours, factor)
		if err != nil {
			return err
		}
		if tp == nil {
			continue
		}
		line := stripLine{plainLine: plainLine{id: s.id, name: s.name, trade: s.trade, hours: tp}, how: charge.How, likely: hours[1] * factor, each: each,
			byCustomer: t.ownDisassembly && s.id == disassemble}
		if charge.How == rates.ByTheHour && charge.Capped {
			line.ceiling = charge.NoMoreThan * factor
		}
		t.strip = append(t.strip, line)
	}
	return nil
}

// The step that a customer can do, and the paint on surfaces that nobody sees.
const disassemble, paintInside = "disassemble", "paint_in"

// setAfter scales the work that every job has after the survey.
func (t *Table) setAfter() error {
	for _, w := range t.fig.after {
		if slices.Index(w.scopes, rates.ScopeIDs[t.Scope]) < 0 {
			continue
		}
		standard := t.Standard
		if w.id == paintInside {
			standard = t.Unseen
		}
		tp, err := threePoint(w.hours[standard], t.Body.AfterSurveyFactor[w.id]*t.pace(w.trade))
		if err != nil {
			return err
		}
		t.after = append(t.after, plainLine{id: w.id, name: w.name, trade: w.trade, hours: tp})
	}
	return nil
}
