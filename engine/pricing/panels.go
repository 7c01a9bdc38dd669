package pricing

import (
	"math"
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/money"
)

// wholePanel is a part whose full panel covers others. The panel is fitted where the
// pieces would cost clearly more.
type wholePanel struct {
	item   int
	pieces []piece // the part itself first, then what its full panel covers
}

// piece is one item of a wholePanel. Its brackets settle most comparisons before any
// cost is worked out.
type piece struct {
	item          int
	labour, parts *wayBrackets
	priced        [car.Ways]bool
}

// wayBrackets hold, by way, the cost in minor units at the edges of the cells of the
// uniform that sets it. In cell k the cost lies between [k] and [k+1]; the last edge is
// +Inf.
type wayBrackets [car.Ways][costCells + 1]float64

// The cells of (0, 1): four in each sixteenth at the ends, where costs spread widely, and
// one in each of the other fourteen.
const costCells = 4 + 14 + 4

func costCell(u float64) int {
	switch {
	case u < 1.0/16:
		return int(u * 64)
	case u < 15.0/16:
		return 3 + int(u*16)
	}
	return 18 + int((u-15.0/16)*64)
}

// costEdge is the uniform where cell k begins.
func costEdge(k int) float64 {
	switch {
	case k < 4:
		return float64(k) / 64
	case k < 18:
		return float64(k-3) / 16
	}
	return 15.0/16 + float64(float64(k-18)/64)
}

// setPanels lists the whole panels in the order of the file.
func (t *Table) setPanels() {
	made := make([]piece, len(t.Body.Parts)) // both sides cost the same
	one := func(i int) piece {
		p := t.Body.Items[i].Part
		if made[p].labour == nil {
			made[p] = piece{labour: t.brackets(i, (*Table).labourCost), parts: t.brackets(i, (*Table).partCost)}
			for w := range made[p].priced {
				made[p].priced[w] = t.labour[i][w].price != nil
			}
		}
		x := made[p]
		x.item = i
		return x
	}
	t.panels = nil
	for i, covered := range t.covers {
		if len(covered) == 0 || !t.isDone(i, car.Full) || t.items[i].once || t.items[i].leftOut {
			continue
		}
		p := wholePanel{item: i, pieces: []piece{one(i)}}
		for _, k := range covered {
			p.pieces = append(p.pieces, one(k))
		}
		t.panels = append(t.panels, p)
	}
}

// setPieces keeps the whole panels for which nobody has chosen a way, either on the
// part itself or on a part that the panel would cover.
func (t *Table) setPieces(to *decided, d Decided) error {
	if d.KeepOldMetal {
		return nil
	}
	for _, p := range t.panels {
		if to.way == nil || !slices.ContainsFunc(p.pieces, func(x piece) bool { return to.way[x.item] >= 0 }) {
			to.panels = append(to.panels, p)
		}
	}
	return nil
}

func (t *Table) brackets(i int, cost func(t *Table, i int, w car.Way, s float64) float64) *wayBrackets {
	out := &wayBrackets{}
	for k := 1; k < costCells; k++ {
		s := scaledDeviate(costEdge(k))
		for w := range out {
			out[w][k] = cost(t, i, car.Way(w), s)
		}
	}
	for w := range out {
		if out[w][1] > 0 {
			out[w][costCells] = math.Inf(1)
		}
	}
	return out
}

// labourCost is the cost of the hours of a way on an item at a score, at the shop's
// rates and without the whole-car factors, in minor units.
func (t *Table) labourCost(i int, w car.Way, s float64) (sum float64) {
	way := &t.labour[i][w]
	var hours [car.Trades]float64
	chance.AllAt(way.hours, s, hours[:])
	for k, h := range hours[:len(way.hours)] {
		sum += float64(t.money.perHour[way.trade[k]] * h)
	}
	return sum
}

// partCost is the price of the part with the shop's handling, in minor units.
func (t *Table) partCost(i int, w car.Way, s float64) float64 {
	if price := t.labour[i][w].price; price != nil {
		return float64(t.money.handled * price.At(s))
	}
	return 0
}

// perHour is the rate per hour in minor units.
func perHour(r money.Rate) float64 {
	millionths, divisor := r.Ratio()
	if millionths == 0 {
		return 0 // a rate of 0 has no divisor
	}
	return float64(millionths) * 1000 / float64(divisor)
}

// fitPanels fits a full panel where the ways drawn for it and for everything it covers
// cost more than the panel by the published margin, each at its own draws. The
// whole-car factors play no part, because nobody knows how hard the work on this car
// goes when this is decided. Items that another full panel already covers do not count.
func (t *Table) fitPanels(u *Uniforms, b *Bill) {
	panels := t.panels
	if t.decided != nil {
		panels = t.decided.panels
	}
	for k := range panels {
		p := &panels[k]
		if b.Way[p.item] >= car.Full || b.Covered[p.item] || !t.piecesCostMore(p, u, b) {
			continue
		}
		b.Way[p.item] = car.Full
		for _, x := range p.pieces[1:] {
			b.Covered[x.item] = true
		}
	}
}

// piecesCostMore compares brackets first, which settles nearly every car.
func (t *Table) piecesCostMore(p *wholePanel, u *Uniforms, b *Bill) bool {
	least, most := 0.0, 0.0
	for k := range p.pieces {
		x := &p.pieces[k]
		if w := b.Way[x.item]; w > car.Leave && !b.Covered[x.item] {
			low, high := x.bracket(w, u)
			least, most = least+low, most+high
		}
	}
	low, high := p.pieces[0].bracket(car.Full, u)
	if most <= float64(low*t.fig.wholePanel) {
		return false
	}
	if least > float64(high*t.fig.wholePanel) {
		return true
	}
	sum := 0.0
	for k := range p.pieces {
		if i := p.pieces[k].item; !b.Covered[i] {
			sum += t.costAt(i, b.Way[i], u)
		}
	}
	return sum > float64(t.costAt(p.item, car.Full, u)*t.fig.wholePanel)
}

// bracket returns two amounts between which the cost of a way lies.
func (x *piece) bracket(w car.Way, u *Uniforms) (low, high float64) {
	h := costCell(u.Hours[x.item])
	low, high = x.labour[w][h], x.labour[w][h+1]
	if x.priced[w] {
		p := costCell(u.Price[x.item])
		low, high = low+x.parts[w][p], high+x.parts[w][p+1]
	}
	return low, high
}

// costAt is the cost of a way on an item at the item's own draws, in minor units.
func (t *Table) costAt(i int, w car.Way, u *Uniforms) (cost float64) {
	if len(t.labour[i][w].hours) > 0 {
		cost = t.labourCost(i, w, scaledDeviate(u.Hours[i]))
	}
	if t.labour[i][w].price != nil {
		cost += t.partCost(i, w, scaledDeviate(u.Price[i]))
	}
	return cost
}
