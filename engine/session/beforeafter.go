package session

import (
	"slices"

	"underpaint/engine/carfile"
	"underpaint/engine/estimate"
)

// StageRanges are the ranges of all stages of one car, with what changed the last.
type StageRanges struct {
	State   State
	Rows    []StageRange
	Moved   []PocketMoved // the pockets by how unlike most other cars they are, most unlike first
	Items   []ItemMoved   // the items whose odds changed most
	Tally   Tally
	Other   carfile.Stage // the first recorded with other figures of the program than today's; zero if none is
	MostDot float64       // the most expensive of all dots, in minor units
}

// StageRange is the range after one stage. Its id is one of the car file's stages,
// or [Chosen].
type StageRange struct {
	ID    string
	On    string // the day of the stage, YYYY-MM-DD, empty where none is known
	Done  bool   // the car has reached it, and some cars are simulated
	Exact estimate.PriceRange
	Shown Ends
}

// Width returns the distance between the exact ends, in minor units.
func (r *StageRange) Width() float64 { return r.Exact.High - r.Exact.Low }

// StageRanges does another slice of work on the ranges of all stages of a car with one
// body. It lists what changed them once they are settled.
func (s *Session) StageRanges(c *carfile.Car) (out StageRanges, err error) {
	j, err := s.openStages(c)
	if err != nil {
		return out, err
	}
	if out.State, err = j.step(); err != nil {
		return out, err
	}
	for _, id := range append([]string{carfile.Told}, carfile.StageIDs...) {
		out.Rows = append(out.Rows, j.row(id))
	}
	if len(j.car.Ways) > 0 {
		out.Rows = append(out.Rows, j.row(Chosen))
	}
	for k := range out.Rows {
		out.MostDot = max(out.MostDot, out.Rows[k].Exact.Dots[19])
	}
	out.Tally = countUp(c, j.body, j.shop.Rates.Reckoned() != nil)
	out.Other, _ = OtherFigures(c)
	if out.State == Settled {
		out.Moved = j.movedPockets()
		out.Items, err = j.movedItems()
	}
	return out, err
}

func (j *stageRanges) row(id string) StageRange {
	r := StageRange{ID: id}
	for _, one := range j.car.Stages {
		if one.Stage == id {
			r.On = one.On
		}
	}
	k := slices.IndexFunc(j.runs, func(o *stageRun) bool { return o.id == id })
	if k < 0 || j.runs[k].run == nil || j.runs[k].run.Cars() == 0 {
		return r
	}
	r.Exact, r.Done = j.runs[k].run.Price(0), true
	r.Shown = RoundEnds(r.Exact.Low, r.Exact.Half, r.Exact.SetAside, r.Exact.High)
	return r
}
