package pricing

import (
	"underpaint/engine/car"
	"underpaint/engine/chance"
)

// labour holds the trades, hours and price of a wayLine as [Table.Price] reads them. It
// is small so that the ways of a whole car fit into the processor's cache.
type labour struct {
	hours []chance.Curve
	price *chance.ThreePoint
	trade [car.Trades]int8
}

// setLabour copies trades and hours out of the items, with all hours in one slice.
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
