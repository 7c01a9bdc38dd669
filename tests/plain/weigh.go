package plain

import (
	"math"

	"underpaint/engine/car"
	"underpaint/tests/figures"
)

// The two states of cover.
const (
	asItShows = iota
	freshlyCovered
	states
)

// Seen is what was seen of a car. It has at most one check of each place, because the
// rule that combines several is not implemented a second time here.
type Seen []Result

// Result is the answer to a check of the worst of some items: its likelihood by the
// condition of the worst, on a car that shows as it is and on a freshly covered one.
type Result struct {
	Items  []int
	Likely [states][car.Conditions]float64
}

// Look adds a check and its answer. On a freshly covered car a good answer says little
// where cover can hide the bad one: the log ratios are multiplied by the share in the
// figures of the check.
func (s Seen) Look(l figures.Look, bad bool, items ...int) Seen {
	one := Result{Items: items}
	for k, yes := range l.Yes {
		if bad {
			one.Likely[asItShows][k], one.Likely[freshlyCovered][k] = yes, yes
			continue
		}
		times := 1.0
		if l.GoodCovered != nil {
			times = *l.GoodCovered
		}
		one.Likely[asItShows][k], one.Likely[freshlyCovered][k] = 1-yes, math.Pow((1-yes)/(1-l.Yes[0]), times)
	}
	return append(s, one)
}

// weight is the likelihood of what was seen on a car.
func (s Seen) weight(one *Car) (w [states]float64) {
	w = [states]float64{1, 1}
	for n := range s {
		worst := int8(0)
		for _, i := range s[n].Items {
			worst = max(worst, one.Condition[i])
		}
		for v := range w {
			w[v] *= s[n].Likely[v][worst]
		}
	}
	return w
}

// Weighed holds means over cars that agree with what was seen.
type Weighed struct {
	Mean, SE  []float64       // of each number asked for
	Effective [states]float64 // effective number of cars in each state of cover
	Drawn     int
}

// Weigh draws cars until the effective number reaches enough in both states of cover,
// or most cars were drawn. ask fills in the numbers for one car. The probability of
// cover is that from the answers, whatever was seen.
func (c *Cars) Weigh(seen Seen, enough float64, most, numbers int, ask func(one *Car, out []float64)) Weighed {
	var sum, squares [states]float64
	x, one := make([]float64, numbers), c.NewCar()
	type moments struct{ wx, wwx, wwxx float64 }
	var of [states][]moments
	for v := range of {
		of[v] = make([]moments, numbers)
	}
	effective := func(v int) float64 { return sum[v] * sum[v] / squares[v] }
	out := Weighed{}
	for out.Drawn < most && (out.Drawn < 1000 || min(effective(asItShows), effective(freshlyCovered)) < enough) {
		c.Draw(one)
		out.Drawn++
		clear(x)
		ask(one, x)
		for v, w := range seen.weight(one) {
			sum[v], squares[v] = sum[v]+w, squares[v]+w*w
			for n, value := range x {
				m := &of[v][n]
				m.wx, m.wwx, m.wwxx = m.wx+w*value, m.wwx+w*w*value, m.wwxx+w*w*value*value
			}
		}
	}
	for n := range numbers {
		mean, se := 0.0, 0.0
		for v, share := range [states]float64{1 - c.Covered, c.Covered} {
			m := &of[v][n]
			at := m.wx / sum[v]
			mean += share * at
			// Both states use the same cars, so their errors add up.
			se += share * math.Sqrt(max(0, m.wwxx-2*at*m.wwx+at*at*squares[v])) / sum[v]
		}
		out.Mean, out.SE = append(out.Mean, mean), append(out.SE, se)
	}
	for v := range out.Effective {
		out.Effective[v] = effective(v)
	}
	return out
}
