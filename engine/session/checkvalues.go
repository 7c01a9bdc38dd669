package session

import (
	"underpaint/engine/carfile"
	"underpaint/engine/estimate"
	"underpaint/engine/pricing"
)

// We value a stage on simulated outcomes: draw a car that agrees with everything known,
// simulate the stage on it, and work out the range that would follow. These are the
// number of outcomes, and of simulated cars in each of those ranges and for the checks
// (assumption; the mean width is then accurate to about a tenth).
const (
	outcomes   = 12
	carsOfEach = estimate.Block
	checkCars  = 4096
)

// checkValues holds a car and how far we have valued its checks and stages.
type checkValues struct {
	key      string
	stages   *stageRanges
	now      *stageRun
	valued   bool // the checks are valued
	checks   []CheckValue
	ahead    []string  // stages still to come
	width    []float64 // for each stage ahead, the sum of the widths so far
	done, of int
	table    *pricing.Table
	next     *outcome // the outcome in progress, nil between two
}

// newCheckValues prepares the valuation of a car as it is now. It values nothing yet.
func newCheckValues(key string, stages *stageRanges, now *stageRun) (*checkValues, error) {
	for now.run.Cars() < checkCars {
		now.run.Add()
	}
	c := stages.car
	j := &checkValues{key: key, stages: stages, now: now, of: outcomes}
	for _, id := range carfile.StageIDs {
		if !c.Begun(id) {
			j.ahead = append(j.ahead, id)
		}
	}
	if len(j.ahead) == 0 {
		j.of = 0
	}
	j.width = make([]float64, len(j.ahead))
	var err error
	j.table, err = stages.plain.With(c.Decided(stages.body, c.LastStage(), false))
	return j, err
}

// shownWidth returns the width between the ends as pages show them, rounded outward, so
// that it never contradicts the ends beside it.
func shownWidth(run *estimate.Run) float64 {
	x := run.Price(0)
	e := RoundEnds(x.Low, x.Half, x.SetAside, x.High)
	return float64(e.High - e.Low)
}

// step does a slice of work on a simulated outcome: the odds after a stage, or the cars
// of its range. Slices are small because other requests wait for them. At the end of a
// stage it adds the width of the range that would follow.
func (j *checkValues) step() (err error) {
	if j.next == nil {
		if j.next, err = newOutcome(j.stages, j.now, j.table, j.done); err != nil {
			return err
		}
	}
	o := j.next
	if o.run == nil {
		if err = o.condition(j.stages, j.now, j.ahead[o.stage], j.done); err != nil {
			j.next = nil // asked again, it is simulated anew
		}
		return err
	}
	for o.run.Cars() < carsOfEach {
		o.run.Add()
	}
	j.width[o.stage] += shownWidth(o.run)
	o.run = nil
	if o.stage++; o.stage == len(j.ahead) {
		j.next = nil
		j.done++
	}
	return nil
}
