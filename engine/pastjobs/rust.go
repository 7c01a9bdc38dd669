package pastjobs

import (
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/chance"
	"underpaint/engine/damage"
	"underpaint/engine/estimate"
	"underpaint/engine/evidence"
	"underpaint/engine/olddamage"
	"underpaint/engine/pricing"
	"underpaint/engine/rates"
)

// shifts are the values of a shift of the log of the depth of rust at which the
// expected survey is worked out, with straight lines between them. They span the
// factors that a rates file accepts, 0.4 to 2.5.
var shifts = [...]float64{-0.916, -0.458, 0, 0.458, 0.916}

// unshifted is the index of no shift in shifts.
const unshifted = 2

// widened is the factor on the spread at which the variance is also worked out.
const widened = 1.3

// Expected holds what the survey of one pocket group was expected to show of one car
// before it was stripped, and what it did show. Both are in steps on the scale of
// conditions, summed over the parts that bare metal shows.
type Expected struct {
	Group    string
	Parts    int
	Found    float64
	Mean     [len(shifts)]float64 // at each of shifts
	Variance [len(shifts)]float64
	Widened  float64 // variance at shift 0 with the spread widened
}

// at returns the mean, its slope and the variance at a shift.
func (e *Expected) at(shift float64) (mean, slope, variance float64) {
	k := 0
	for k < len(shifts)-2 && shift > shifts[k+1] {
		k++
	}
	width := shifts[k+1] - shifts[k]
	t := (shift - shifts[k]) / width
	slope = (e.Mean[k+1] - e.Mean[k]) / width
	t = max(0, min(1, t))
	return e.Mean[k] + float64(t*(e.Mean[k+1]-e.Mean[k])), slope, e.Variance[k] + float64(t*(e.Variance[k+1]-e.Variance[k]))
}

// surveyed returns the parts of each group that bare metal shows, with the steps found,
// for the groups all of whose such parts are recorded.
func (k *known) surveyed() (items [][]int, found []float64) {
	items, found = make([][]int, len(k.body.Groups)), make([]float64, len(k.body.Groups))
	whole := make([]bool, len(k.body.Groups))
	for g := range whole {
		whole[g] = true
	}
	condition := map[string]int{}
	for n := range k.car.Survey {
		if r := &k.car.Survey[n]; r.Stage == carfile.Survey && r.Condition != "" && !r.CouldNotSee {
			condition[r.On] = slices.Index(car.ConditionIDs[:], r.Condition)
		}
	}
	for i := range k.body.Items {
		p := k.body.PartOf(i)
		if !p.SeenWhenStripped {
			continue
		}
		steps, ok := condition[k.body.Items[i].ID]
		whole[p.Group] = whole[p.Group] && ok
		items[p.Group] = append(items[p.Group], i)
		found[p.Group] += float64(steps)
	}
	for g := range items {
		if !whole[g] {
			items[g] = nil
		}
	}
	return items, found
}

// expected simulates surveys of cars of which only the customer's answers are known, on
// the starting figures and at a few shifts of them.
func (k *known) expected() (out []Expected, all *Expected, err error) {
	items, found := k.surveyed()
	sum := Expected{}
	var at []int // by index in out: its group
	for g, list := range items {
		if len(list) > 0 {
			out, at = append(out, Expected{Group: k.body.Groups[g].ID, Parts: len(list), Found: found[g]}), append(at, g)
			sum.Parts, sum.Found = sum.Parts+len(list), sum.Found+found[g]
		}
	}
	if len(out) == 0 {
		return nil, nil, nil
	}
	for n := range shifts {
		if err := k.imagine(items, at, out, &sum, n, 1); err != nil {
			return nil, nil, err
		}
	}
	return out, &sum, k.imagine(items, at, out, &sum, unshifted, widened)
}

// imagine fills in mean and variance at one shift, or the variance with the spread
// widened.
func (k *known) imagine(items [][]int, at []int, out []Expected, sum *Expected, n int, spread float64) error {
	told := k.car.Cut(carfile.Told)
	set, err := told.Known(k.body, k.histories, carfile.Told, rates.NothingLearnt(), olddamage.Starting())
	if err != nil {
		return err
	}
	set.Spread = spread
	for range k.body.Groups {
		set.Shift = append(set.Shift, shifts[n])
	}
	m, err := damage.New(set, damage.CoarseGrids)
	if err != nil {
		return err
	}
	steps, total := make([][]float64, len(at)), []float64{}
	estimate.Imagine(m, nil, scoreSeed, surveyCars, func(c int, truth *damage.Car, _ *pricing.Bill) {
		stream := chance.NewStream(scoreSeed+1, uint64(c))
		read := evidence.ImagineSurvey(k.body, truth, false, &stream)
		whole := 0.0
		for e, g := range at {
			one := 0.0
			for _, i := range items[g] {
				one += float64(slices.Index(car.ConditionIDs[:], read[i].Condition))
			}
			steps[e] = append(steps[e], one)
			whole += one
		}
		total = append(total, whole)
	})
	for e := range at {
		out[e].set(n, spread, steps[e])
	}
	sum.set(n, spread, total)
	return nil
}

func (e *Expected) set(n int, spread float64, steps []float64) {
	mean, variance := moments(steps)
	if spread != 1 {
		e.Widened = variance
		return
	}
	e.Mean[n], e.Variance[n] = mean, variance
}
