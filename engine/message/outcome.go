package message

import (
	"errors"

	"underpaint/engine/carfile"
	"underpaint/engine/chance"
	"underpaint/engine/damage"
	"underpaint/engine/estimate"
	"underpaint/engine/evidence"
	"underpaint/engine/work"
)

// outcomeSeed keeps the imagined outcomes apart from the imagined cars of ranges.
const outcomeSeed = 0x0C0E

// outcome is one imagined car, on which every stage that is still to come is imagined,
// one after another.
type outcome struct {
	stream      chance.Stream
	truth       *damage.Car
	bill        *work.Bill
	known, shut damage.Known // shut is without what was read of closed boxes from outside
	table       *work.Table
	stage       int           // of those ahead
	run         *estimate.Run // the range after it, nil until its odds are worked out
}

// step goes on with an imagined outcome, the odds after a stage or the cars of its range
// at a time: whoever waits for something else waits for no more than that. At the end
// of a stage the width of the range that would follow is added.
func (j *worthJob) step() (err error) {
	if j.next == nil {
		if j.next, err = j.newOutcome(); err != nil {
			return err
		}
	}
	o := j.next
	if o.run == nil {
		if err = j.condition(o); err != nil {
			j.next = nil // asked again, it is imagined anew
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

// newOutcome imagines a car that agrees with all that is known.
func (j *worthJob) newOutcome() (o *outcome, err error) {
	b, c, m := j.stages.body, j.stages.car, j.now.model
	o = &outcome{stream: chance.NewStream(outcomeSeed, uint64(j.done)), truth: m.NewCar(), bill: j.table.NewBill(), table: j.table}
	m.Draw(&o.stream, o.truth)
	u := j.table.NewUniforms()
	u.Fill(&o.stream)
	j.table.Do(o.truth, m.Levels[o.truth.Level].LastClimate, u, o.bill)
	if o.known, err = c.Known(b, j.stages.levels, c.LastStage(), j.table.Rates.Own); err != nil {
		return nil, err
	}
	o.shut, err = c.WithoutClosed(b).Known(b, j.stages.levels, c.LastStage(), j.table.Rates.Own)
	return o, err
}

// condition imagines the next stage and works out the odds after it.
func (j *worthJob) condition(o *outcome) error {
	if err := j.imagine(o); err != nil {
		return err
	}
	m, err := damage.New(o.known, damage.ImaginedGrids)
	if err == nil {
		o.run = estimate.NewRun(m, []*work.Table{o.table}, outcomeSeed+uint64(j.done)+1)
	}
	return err
}

// imagine adds to an outcome what its next stage would bring to light.
func (j *worthJob) imagine(o *outcome) (err error) {
	b, c := j.stages.body, j.stages.car
	closed := func(i int) bool { return !b.PartOf(i).SeenWhenStripped }
	open := func(i int) bool { return !closed(i) }
	anyItem := func(int) bool { return true }
	switch j.ahead[o.stage] {
	case carfile.WalkRound:
		covered := j.now.model.DrawCovered(o.truth, o.stream.Uniform())
		looks := evidence.ImagineWalkRound(b, o.truth, covered, &o.stream)
		err = errors.Join(carfile.AddLooks(&o.known, b, looks), carfile.AddLooks(&o.shut, b, looks))
	case carfile.Survey:
		entries := evidence.ImagineSurvey(b, o.truth, false, &o.stream)
		err = errors.Join(carfile.AddReadings(&o.known, b, entries, anyItem), carfile.AddReadings(&o.shut, b, entries, open))
		if err == nil {
			o.table, err = j.stages.plain.With(worked(c.Decided(b, c.LastStage(), false), o.bill))
		}
	case carfile.OpeningUp:
		o.known = o.shut // what was read from outside gives way
		err = carfile.AddReadings(&o.known, b, evidence.ImagineSurvey(b, o.truth, true, &o.stream), closed)
	}
	return err
}

// worked enters the strip hours of an imagined car.
func worked(d work.Decided, bill *work.Bill) work.Decided {
	for t, h := range bill.StripHours {
		if h > 0 {
			d.StripHours[t] = float64(h) / 1000
		}
	}
	return d
}
