package pricing

import (
	"underpaint/engine/car"
	"underpaint/engine/damage"
	"underpaint/engine/money"
	"underpaint/engine/rates"
)

// Line is one line of a drawn list of work: hours of one trade on an item or on the
// car, or the price of a part.
type Line struct {
	ID          string // what the line is, if it is not the way of the item itself
	Item        int    // −1 = the car as a whole
	Trade       car.Trade
	Thousandths int64       // hours × 1000
	Price       money.Minor // of a part
	Strip       bool        // in the strip stage, charged as worked
}

// Explain works out one simulated car as [Table.Price] does and returns every line.
func (t *Table) Explain(c *damage.Car, lastPlace string, u *Uniforms, b *Bill) []Line {
	lines := []Line{}
	b.list = &lines
	t.Price(c, lastPlace, u, b)
	b.list = nil
	return lines
}

// StageLine is one step of the strip and survey as the customer reads it.
type StageLine struct {
	ID      string
	Name    car.Words
	How     string // rates.Fixed, EachOne, ByTheHour, AtCost
	Each    int    // number of pieces, for EachOne
	Likely  money.Minor
	Ceiling money.Minor // for ByTheHour with a ceiling; 0 = none
}

// Stage is the price of the strip and survey: the fixed amount, and for the rest the
// likely amount and its ceiling.
type Stage struct {
	Lines     []StageLine
	Materials money.Minor
	Paints    []Paint     // of the materials, those mixed from a base
	Fixed     money.Minor // labour and materials of everything charged at a fixed price or by the piece
	Likely    money.Minor // Fixed plus the likely amount of what is charged as worked
	ToStop    money.Minor
	SentOut   bool // some of the stage is sent out and charged at cost
}

// StagePrice works out the strip and survey of a car of which nothing is known: as if
// every part were primed.
func (t *Table) StagePrice() Stage { return t.StagePriceFor(0) }

// StagePriceFor works out the strip and survey where parts of this area are to be
// replaced, in m² ([Bill.ReplacedM2]), so that they need no primer. A price fixed
// beforehand takes the mean over simulated cars. Once the hours of a trade are known, its
// charge as worked is certain and no longer just likely.
func (t *Table) StagePriceFor(replaced float64) Stage {
	materials := t.money.stripMaterials + t.primer(replaced)
	s := Stage{Materials: materials, Fixed: t.money.stripLabour + materials, ToStop: t.Rates.Strip.ToStop, Paints: t.stripPaints(replaced)}
	s.Likely = s.Fixed
	for k := range t.strip {
		l := &t.strip[k]
		if l.byCustomer {
			continue
		}
		rate := t.Rates.Labour.Trades[l.trade].Rate
		line := StageLine{ID: l.id, Name: l.name, How: l.how, Each: l.each, Likely: rate.Of(thousandths(l.likely))}
		if t.worked(l.trade) && l.chargedAsWorked() {
			line.Likely = rate.Of(t.decided.charged[k])
		}
		if l.ceiling > 0 {
			line.Ceiling = rate.Of(thousandths(l.ceiling))
		}
		if l.chargedAsWorked() {
			s.Likely += line.Likely
		}
		s.Lines = append(s.Lines, line)
	}
	for k, tp := range t.money.sent {
		if tp != nil && t.Rates.SentOut.Work[k].Stage == rates.StripStage {
			v := wholeMinor(tp.Likely())
			s.Likely += v + t.Rates.SentOut.Handling.Of(v)
			s.SentOut = true
		}
	}
	return s
}

// OpeningReason says why an item was opened; rule comes from Bill.RaisedBy.
func (t *Table) OpeningReason(rule int16) car.Words {
	if rule < 0 {
		return car.Words{}
	}
	return t.fig.openings[rule].why
}
