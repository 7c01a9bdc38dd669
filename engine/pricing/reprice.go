package pricing

import "underpaint/engine/car"

// hoursOf are hours of one trade.
type hoursOf struct {
	hours float64
	trade car.Trade
}

// Reprice works out the same car again with other whole-car factors and another doubt in
// u, and everything else as in the last [Table.Price] with u and b. It gives the same as
// Price to the minor unit in a small part of the time. It writes no lines.
func (t *Table) Reprice(u *Uniforms, b *Bill) {
	b.nothing()
	strip := t.factors(u)
	b.wrong = t.doubt.factor(u.Doubt)
	after := scaled(strip, b.wrong)
	for _, h := range b.after {
		b.AfterHours[h.trade] += thousandths(h.hours * after[h.trade])
	}
	for _, price := range b.prices {
		b.partsIn += wholeMinor(float64(price * b.wrong))
	}
	t.chargeStrip(&strip, b)
	t.charge(u, b)
	if t.another != nil {
		t.weighAnother(&strip, b)
	}
}

// nothing takes the hours and the parts off a bill.
func (b *Bill) nothing() {
	b.partsIn, b.AnotherBody = 0, 0
	b.StripHours, b.AfterHours, b.billed = [car.Trades]int64{}, [car.Trades]int64{}, [car.Trades]int64{}
}
