package pricing

import (
	"math"
	"slices"
	"testing"

	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"underpaint/engine/car"
	"underpaint/engine/chance"
)

// published is how much the pieces may cost as a multiple of the full panel's price, as
// work.json publishes it.
const published = 1.15

// byItself is the cost of a way on an item at its own draws, from its three-point
// figures, the published rates and the published handling, in minor units.
func byItself(table *Table, i int, w car.Way, u *Uniforms) (sum float64) {
	one := &table.items[i].ways[w]
	for k := range one.n {
		sum += 100 * table.Rates.Labour.Trades[one.trade[k]].Rate.Published.Float() * one.hours[k].Quantile(u.Hours[i])
	}
	if one.price != nil {
		sum += (1 + table.Rates.Parts.Handling.Published.Float()/100) * one.price.Quantile(u.Price[i])
	}
	return sum
}

// wholeByItself fits whole panels by its own reading of the rule, and returns how close
// the closest comparison was to a tie.
func wholeByItself(table *Table, way []car.Way, u *Uniforms) (whole []int, nearest float64) {
	way, nearest = slices.Clone(way), math.Inf(1)
	covered := map[int]bool{}
	cover := func(i int) {
		if way[i] == car.Full {
			for _, k := range table.covers[i] {
				covered[k] = true
			}
		}
	}
	for i := range way {
		cover(i)
	}
	for i := range way {
		if len(table.covers[i]) == 0 || way[i] >= car.Full || covered[i] || !table.isDone(i, car.Full) {
			continue
		}
		pieces := 0.0
		for _, k := range append([]int{i}, table.covers[i]...) {
			if !covered[k] {
				pieces += byItself(table, k, way[k], u)
			}
		}
		ratio := pieces / byItself(table, i, car.Full, u)
		nearest = min(nearest, math.Abs(ratio/published-1))
		if ratio > published {
			way[i], whole = car.Full, append(whole, i)
			cover(i)
		}
	}
	return whole, nearest
}

// TestWholePanelsProperties compares the panels that are fitted whole, on cars of every
// sort, with a second implementation of the rule that works out every cost.
func TestWholePanelsProperties(t *testing.T) {
	for _, body := range []string{"two_door_unitary", "pickup"} {
		model, table := testTable(t, body, "concours")
		c, u, b := model.NewCar(), table.NewUniforms(), table.NewBill()
		fitted, differ := 0, 0
		agrees := func(table *Table, n uint64) bool {
			s := chance.NewStream(seed, n)
			model.Draw(&s, c)
			u.Fill(&s)
			table.drawWays(c, u, b)
			table.raiseWays(b.Way, b.RaisedBy)
			want, nearest := wholeByItself(table, b.Way, u)
			before := slices.Clone(b.Way)
			table.fitPanelsAlone(u, b)
			var got []int
			for i, w := range b.Way {
				if w != before[i] {
					got = append(got, i)
				}
			}
			fitted += len(got)
			return nearest < 1e-9 || slices.Equal(got, want)
		}
		properties := gopter.NewProperties(parameters())
		properties.Property("panels are fitted whole where pieces cost more, and nowhere else", prop.ForAll(func(n uint64) bool { return agrees(table, n) }, gen.UInt64()))
		properties.Property("no opening is left undone by it", prop.ForAll(func(n uint64) bool {
			agrees(table, n)
			return unmet(table, b.Way) == ""
		}, gen.UInt64()))
		properties.TestingRun(t)
		if fitted < 100 {
			t.Errorf("%s: only %d panels fitted whole", body, fitted)
		}

		// Negative control: with another margin some car differs.
		other, fig := *table, *table.fig
		fig.wholePanel = 1.2
		other.fig = &fig
		for n := range uint64(300) {
			if !agrees(&other, n) {
				differ++
			}
		}
		if differ == 0 {
			t.Errorf("%s: the comparison cannot fail", body)
		}
	}
}

// fitPanelsAlone marks what full panels cover and fits panels, but drops nothing.
func (t *Table) fitPanelsAlone(u *Uniforms, b *Bill) {
	for i, way := range b.Way {
		if way == car.Full {
			for _, k := range t.covers[i] {
				b.Covered[k] = true
			}
		}
	}
	t.fitPanels(u, b)
}

// TestBrackets: at every uniform a cost lies between those at the edges of its cell,
// and the edges increase.
func TestBrackets(t *testing.T) {
	_, table := testTable(t, "two_door_unitary", "show")
	u := table.NewUniforms()
	properties := gopter.NewProperties(parameters())
	properties.Property("costs lie in their brackets", prop.ForAll(func(hours, price float64, pick int) bool {
		p := &table.panels[pick%len(table.panels)]
		x := &p.pieces[pick/len(table.panels)%len(p.pieces)]
		u.Hours[x.item], u.Price[x.item] = hours, price
		for w := car.Leave; w < car.Ways; w++ {
			low, high := x.bracket(w, u)
			if v := table.costAt(x.item, w, u); !(low <= v && v <= high) || w > car.Leave && v > 0 && low >= high {
				t.Logf("%s of %s at %g and %g: %g, %g to %g", car.WayIDs[w], table.Body.Items[x.item].ID, hours, price, v, low, high)
				return false
			}
		}
		return true
	}, inside(), inside(), gen.IntRange(0, 1<<20)))
	properties.TestingRun(t)
	for k := range costCells {
		if at := costEdge(k); costCell(at) != k || k > 0 && costCell(math.Nextafter(at, 0)) != k-1 {
			t.Errorf("cell %d begins at %g, which is in cell %d", k, at, costCell(at))
		}
	}
	if costCell(math.Nextafter(1, 0)) != costCells-1 {
		t.Error("the last cell does not end at 1")
	}
}

// inside generates uniforms, including the smallest and the largest of
// [chance.Stream.Uniform].
func inside() gopter.Gen {
	return gen.OneGenOf(gen.Float64Range(0x1p-53, 1-0x1p-53), gen.OneConstOf(0x1p-53, 1-0x1p-53, 1.0/16, 15.0/16, .5))
}

// TestOpeningsDoNotWaitForPanels: a part whose panel may be fitted whole sets off no
// opening, so openings need not run again afterwards.
func TestOpeningsDoNotWaitForPanels(t *testing.T) {
	for _, body := range car.BodyIDs {
		_, table := testTable(t, body, "show")
		if len(table.panels) < 4 {
			t.Errorf("%s: %d panels", body, len(table.panels))
		}
		for _, p := range table.panels {
			for _, r := range table.openings {
				if slices.Contains(r.ifItems, p.item) {
					t.Errorf("%s: %s sets off %s", body, table.Body.Items[p.item].ID, table.fig.openings[r.rule].id)
				}
			}
		}
	}
}
