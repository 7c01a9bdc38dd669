package pricing

import (
	"underpaint/engine/car"
	"underpaint/engine/chance"
)

// labour is the trades, hours and price of a wayLine as [Table.Price] reads them: the
// ways of a whole car then fit into the fast memory of a processor.
type labour struct {
	hours []chance.Curve
	price *chance.ThreePoint
	trade [car.Trades]int8
}

// setLabour copies trades and hours out of the items, all hours into one list.
func (t *Table) setLabour() {
	var all []chance.Curve
	for i := range t.items {
		for w := range t.items[i].ways {
			for _, h := range t.items[i].ways[w].hours[:t.items[i].ways[w].n] {
				all = append(all, h.Curve)
			}
		}
	}
	t.labour = make([][car.Ways]labour, len(t.items))
	for i := range t.items {
		for w := range t.items[i].ways {
			way, to := &t.items[i].ways[w], &t.labour[i][w]
			to.price, to.hours, all = way.price, all[:way.n:way.n], all[way.n:]
			for k, trade := range way.trade {
				to.trade[k] = int8(trade)
			}
		}
	}
}
