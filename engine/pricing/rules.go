package pricing

import (
	"sort"

	"underpaint/engine/car"
)

// openingRule is one opening on one side of one body.
type openingRule struct {
	rule          int // index in figures.openings, for the reason
	ifItems       []int
	atLeast       car.Way
	unless        []int
	unlessAtLeast car.Way
	raise         []raiseItem
}

type raiseItem struct {
	item int
	to   car.Way
}

// aboveRule adds hours where a brace is replaced under a floor that stays.
type aboveRule struct {
	brace, floor int
	above        int // index in figures.above
}

// seam joins two neighbours, first < second.
type seam struct{ first, second int }

// itemsOf returns the items of a part on a side. An item without a side belongs to
// both; side NoSide returns all items.
func (t *Table) itemsOf(part string, side car.Side, end string) (out []int) {
	p, ok := t.Body.PartNamed(part)
	if !ok {
		return nil
	}
	for _, i := range t.Body.Parts[p].Items {
		it := &t.Body.Items[i]
		if side != car.NoSide && it.Side != car.NoSide && it.Side != side {
			continue
		}
		if end == "" || it.End == end {
			out = append(out, i)
		}
	}
	return out
}

func (t *Table) itemsOfAll(parts []string, side car.Side) (out []int) {
	for _, p := range parts {
		out = append(out, t.itemsOf(p, side, "")...)
	}
	return out
}

func (t *Table) setOpenings() {
	for n, o := range t.fig.openings {
		sides := []car.Side{car.NoSide}
		if o.sameSide {
			sides = []car.Side{car.Left, car.Right}
		}
		for _, side := range sides {
			r := openingRule{rule: n, ifItems: t.itemsOfAll(o.parts, side), atLeast: o.atLeast}
			if o.unless != "" {
				r.unless, r.unlessAtLeast = t.itemsOf(o.unless, side, ""), o.unlessAtLeast
			}
			for _, raise := range o.raise {
				for _, i := range t.itemsOf(raise.part, side, raise.end) {
					r.raise = append(r.raise, raiseItem{i, raise.to})
				}
			}
			if len(r.ifItems) > 0 && len(r.raise) > 0 {
				t.openings = append(t.openings, r)
			}
		}
	}
	for n, a := range t.fig.above {
		for _, brace := range t.itemsOf(a.part, car.NoSide, a.end) {
			side := t.Body.Items[brace].Side
			floors := t.itemsOf(a.floor, side, "")
			if len(floors) == 0 && a.elseFloor != "" {
				floors = t.itemsOf(a.elseFloor, side, "")
			}
			if len(floors) > 0 {
				t.above = append(t.above, aboveRule{brace: brace, floor: floors[0], above: n})
			}
		}
	}
}

// setCovers lists, for every item, what a full panel there covers on its side.
func (t *Table) setCovers() {
	t.covers = make([][]int, len(t.Body.Items))
	for i := range t.Body.Items {
		for _, cover := range t.Body.PartOf(i).CoveredBy {
			for _, c := range t.itemsOf(cover, t.Body.Items[i].Side, "") {
				t.covers[c] = append(t.covers[c], i)
			}
		}
	}
}

// setSeams pairs neighbours on the same side, in the order of the items. As with
// openings, an item without a side is a neighbour of both.
func (t *Table) setSeams(common *car.Common) {
	seen := map[seam]bool{}
	for _, b := range common.Behind {
		for _, n := range b.Neighbours {
			for _, i := range t.itemsOf(b.Part, car.NoSide, "") {
				for _, j := range t.itemsOf(n.Part, car.NoSide, "") {
					if i == j || apart(t.Body.Items[i].Side, t.Body.Items[j].Side) {
						continue
					}
					s := seam{min(i, j), max(i, j)}
					if !seen[s] {
						seen[s] = true
						t.seams = append(t.seams, s)
					}
				}
			}
		}
	}
	sort.Slice(t.seams, func(a, b int) bool {
		x, y := t.seams[a], t.seams[b]
		return x.first < y.first || x.first == y.first && x.second < y.second
	})
}

// apart says whether two items are on different sides of the car.
func apart(a, b car.Side) bool { return a != b && a != car.NoSide && b != car.NoSide }

// raiseWays applies the openings until nothing changes. It ends because a rule only
// ever raises a way. by records the rule that raised an item, −1 for none.
func (t *Table) raiseWays(way []car.Way, by []int16) {
	for changed := true; changed; {
		changed = false
		for k := range t.openings {
			r := &t.openings[k]
			if !anyAtLeast(way, r.ifItems, r.atLeast) || anyAtLeast(way, r.unless, r.unlessAtLeast) {
				continue
			}
			for _, x := range r.raise {
				to := t.items[x.item].instead[x.to]
				if way[x.item] < x.to && way[x.item] < to {
					way[x.item], by[x.item], changed = to, int16(r.rule), true
				}
			}
		}
	}
}

func anyAtLeast(way []car.Way, items []int, least car.Way) bool {
	for _, i := range items {
		if way[i] >= least {
			return true
		}
	}
	return false
}

func anyExactly(way []car.Way, items []int, is car.Way) bool {
	for _, i := range items {
		if way[i] == is {
			return true
		}
	}
	return false
}

// creditSeams marks the smaller of two new neighbours, because their shared seam is
// made once. The smaller has fewer likely hours of metalwork; in a tie, it is the later
// item. A rail that another chassis replaces is not new metal on this one.
func (t *Table) creditSeams(b *Bill) {
	for _, s := range t.seams {
		if !t.isNew(b, s.first) || !t.isNew(b, s.second) {
			continue
		}
		small := s.second
		if t.items[s.first].ways[b.Way[s.first]].likelyMetal < t.items[s.second].ways[b.Way[s.second]].likelyMetal {
			small = s.first
		}
		b.credit[small] = true
	}
}

// isNew says whether an item is made of new metal, bought or made by hand.
func (t *Table) isNew(b *Bill, i int) bool {
	return b.Way[i] > car.Full || b.Way[i] == car.Full && !t.items[i].once
}
