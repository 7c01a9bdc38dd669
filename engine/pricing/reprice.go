package pricing

import "underpaint/engine/car"

// hoursOf are hours of one trade.
type hoursOf struct {
	hours float64
	trade car.Trade
}

// Reprice works out the same car again with other whole-car factors in u and everything
// else as in the last [Table.Price] with u and b. It gives the same as Price to the
// minor unit in a small part of the time. It writes no lines.
func (t *Table) Reprice(u *Uniforms, b *Bill) {
	b.noHours()
	f := t.factors(u)
	for _, h := range b.after {
		b.AfterHours[h.trade] += thousandths(h.hours * f[h.trade])
	}
	t.chargeStrip(&f, b)
	t.charge(u, b)
}

func (b *Bill) noHours() {
	b.StripHours, b.AfterHours, b.billed = [car.Trades]int64{}, [car.Trades]int64{}, [car.Trades]int64{}
}
