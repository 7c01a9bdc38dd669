package session

import (
	"underpaint/engine/carfile"
	"underpaint/engine/estimate"
	"underpaint/engine/pricing"
)

// What a stage is worth is worked out on simulated outcomes: a car is drawn from
// all that is known, the stage is simulated on it, and the range that would follow
// is worked out. These are how many outcomes, and how many simulated cars each range
// has (assumption; they leave the mean width good to about a tenth).
const (
	outcomes   = 12
	carsOfEach = estimate.Block
	checkCars  = 4096
)

// checkValues is a car whose checks and stages are being valued.
type checkValues struct {
	key      string
	stages   *stageRanges
	now      *stageRun
	valued   bool // the checks are valued
	checks   []CheckValue
	ahead    []string  // stages still to come
	width    []float64 // by stage ahead: the widths so far, added up
	done, of int
	table    *pricing.Table
	next     *outcome // the one being worked out, nil between two
}

// newCheckValues prepares the valuation of a car as it is now; nothing is valued yet.
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

// shownWidth is the width between the ends as they are shown, rounded outward, so
// that a width never contradicts the ends beside it.
func shownWidth(run *estimate.Run) float64 {
	x := run.Price(0)
	e := RoundEnds(x.Low, x.Half, x.SetAside, x.High)
	return float64(e.High - e.Low)
}

// step goes on with a simulated outcome, the odds after a stage or the cars of its
// range at a time: whoever waits for something else waits for no more than that. At
// the end of a stage the width of the range that would follow is added.
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
