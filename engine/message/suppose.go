package message

import (
	"cmp"
	"math"
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/damage"
	"underpaint/engine/estimate"
	"underpaint/engine/strict"
	"underpaint/engine/work"
)

// mostNeighbours is how many places are shown whose odds move most.
const mostNeighbours = 8

// suppose takes one item as known and says what that does to the odds of the others
// and to the range. Nothing of it is recorded.
func (s *Session) suppose(id int64, c *carfile.Car, on, condition string) ([]byte, error) {
	j, now, err := s.openNow(c)
	if err != nil {
		return nil, err
	}
	i, ok := j.body.ItemNamed(on)
	if !ok {
		return nil, &strict.Error{Path: "on", Found: on, Expected: "an item of this body, such as " + j.body.Items[0].ID}
	}
	if condition == "" {
		condition = car.ConditionIDs[holedFrom]
	}
	known, err := c.Known(j.body, j.levels, c.LastStage(), s.Rates.Own)
	if err != nil {
		return nil, err
	}
	carfile.AddRead(&known, i, certainly(slices.Index(car.ConditionIDs[:], condition)))
	then, err := damage.NewAfter(known, damage.StandardGrids, now.model)
	if err != nil {
		return nil, &strict.Error{Path: "on", Found: on, Expected: "a part that could still be so: what is recorded of it says otherwise"}
	}
	was, is := now.model.Chances(), then.Chances()
	table := j.priced()
	rows := []whyRow{{"As known now", pricesOf(now.model, table)}, {"If so", pricesOf(then, table)}}
	moved := movedMost(was, is, i)
	name := j.body.ItemName(i, s.Rates.Words)
	w := strict.NewWriter()
	w.Object(func() {
		head(w, id, "suppose")
		w.Member("on", on)
		w.Member("condition", condition)
		w.Member("name", name)
		w.Member("holed_line", name+": rusted through or gone in "+carsInTen(was[i].Holed())+" as known now.")
		s.writeWhyRows(w, rows)
		w.Objects("neighbours", len(moved), func(k int) {
			n := moved[k]
			w.Member("on", j.body.Items[n].ID)
			w.Member("name", j.body.ItemName(n, s.Rates.Words))
			w.Member("before_text", inTen(was[n].Holed()))
			w.Member("after_text", inTen(is[n].Holed()))
			w.Key("same_water")
			w.Bool(j.body.Items[n].Pocket == j.body.Items[i].Pocket)
		})
		w.Member("line", "One look tells about the places that share its water, and a little about the whole car.")
		w.Member("compared", "Knowing that alone, the range would be "+widthWords(width(rows[1].totals)/width(rows[0].totals), "now")+".")
	})
	return w.Bytes(), nil
}

// certainly is the likelihood of an item seen for certain to be in a condition; a
// sound one as it left the works, for a new panel would tell of a repair and little
// of the water.
func certainly(condition int) *damage.Likelihood {
	l := &damage.Likelihood{}
	for f := range l[condition] {
		if condition > 0 || damage.Finding(f) == damage.NoFinding {
			l[condition][f] = [2]float64{1, 1}
		}
	}
	return l
}

func pricesOf(m *damage.Model, t *work.Table) []int64 {
	totals := make([]int64, 0, whyCars)
	estimate.Imagine(m, t, Seed, whyCars, func(_ int, _ *damage.Car, b *work.Bill) { totals = append(totals, int64(b.Total)) })
	slices.Sort(totals)
	return totals
}

// movedMost are the other items whose chance of a hole moves most, a pair of sides
// counted once.
func movedMost(was, is []damage.Chances, but int) (out []int) {
	order := make([]int, len(was))
	for k := range order {
		order[k] = k
	}
	by := func(k int) float64 { return math.Abs(is[k].Holed() - was[k].Holed()) }
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(by(b), by(a)) })
	for _, k := range order {
		if k != but && by(k) >= 0.02 && len(out) < mostNeighbours {
			out = append(out, k)
		}
	}
	return out
}
