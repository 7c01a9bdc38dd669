package pricing

import (
	"underpaint/engine/car"
	"underpaint/engine/money"
)

// hoursOf are hours of one trade at one stage.
type hoursOf struct {
	hours float64
	trade int8
	phase int8 // a Phase, where prices rise
}

// Reprice works out the same car again with other whole-car factors, another doubt and
// another rise of prices in u, and everything else as in the last [Table.Price] with u and
// b. It gives the same as Price to the minor unit in a small part of the time. It writes
// no lines.
func (t *Table) Reprice(u *Uniforms, b *Bill) {
	b.nothing()
	strip := t.factors(u)
	b.wrong = t.doubt.factor(u.Doubt)
	after := scaled(strip, b.wrong)
	if b.over != nil {
		b.byPhases(&after)
	} else {
		for _, h := range b.after {
			b.AfterHours[h.trade] += thousandths(h.hours * after[h.trade])
		}
		for _, price := range b.prices {
			b.partsIn += wholeMinor(float64(price * b.wrong))
		}
	}
	t.chargeStrip(&strip, b)
	t.charge(u, &after, b)
	if t.another != nil {
		t.weighAnother(&strip, b)
	}
}

// byPhases adds the hours and the parts again, each also to the stage that it belongs to.
func (b *Bill) byPhases(f *[car.Trades]float64) {
	for _, h := range b.after {
		n := thousandths(h.hours * f[h.trade])
		b.AfterHours[h.trade] += n
		b.byPhase[h.phase][h.trade] += n
	}
	for k, price := range b.prices {
		n := wholeMinor(float64(price * b.wrong))
		b.partsIn += n
		b.partsByPhase[b.partPhases[k]] += n
	}
}

// nothing takes the hours and the parts off a bill.
func (b *Bill) nothing() {
	b.partsIn, b.AnotherBody = 0, 0
	if b.over != nil {
		b.byPhase, b.partsByPhase = [Phases][car.Trades]int64{}, [Phases]money.Minor{}
		b.rise, b.Rise, b.Left = [risings][Phases]float64{}, 0, 0
	}
	b.StripHours, b.AfterHours, b.billed = [car.Trades]int64{}, [car.Trades]int64{}, [car.Trades]int64{}
}
