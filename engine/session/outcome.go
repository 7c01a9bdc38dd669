package session

import (
	"errors"

	"underpaint/engine/carfile"
	"underpaint/engine/chance"
	"underpaint/engine/damage"
	"underpaint/engine/estimate"
	"underpaint/engine/evidence"
	"underpaint/engine/pricing"
)

// outcomeSeed keeps the simulated outcomes apart from the simulated cars of ranges.
const outcomeSeed = 0x0C0E

// outcome is one simulated car on which we simulate every stage still to come, one after
// another.
type outcome struct {
	stream      chance.Stream
	truth       *damage.Car
	bill        *pricing.Bill
	decided     *pricing.Decided // once the survey is simulated
	onCar       []bool           // by item: seen in the simulated stages, so that it is not missing
	known, shut damage.Known     // shut leaves out what was read on closed boxes from outside
	table       *pricing.Table
	old         oldOutcome
	stage       int           // index in the stages ahead
	run         *estimate.Run // the range after the stage, nil until its odds are worked out
}

// newOutcome draws the n-th car that agrees with everything known.
func newOutcome(stages *stageRanges, now *stageRun, t *pricing.Table, n int) (o *outcome, err error) {
	b, c, m := stages.body, stages.car, now.model
	o = &outcome{stream: chance.NewStream(outcomeSeed, uint64(n)), truth: m.NewCar(), bill: t.NewBill(), table: t}
	m.Draw(&o.stream, o.truth)
	u := t.NewUniforms()
	u.Fill(&o.stream)
	u.Supply.Seed, u.Supply.State = chance.Hash(outcomeSeed, uint64(n)), chance.HashUniform(outcomeSeed+1, uint64(n))
	fillOld(u, n)
	t = t.Supplied(c.Supply(b, c.LastStage()))
	t.Price(o.truth, m.Histories[o.truth.History].LastClimate, u, o.bill)
	if o.known, err = c.Known(b, stages.histories, c.LastStage(), t.Rates.Own, t.Rates.Reckoned()); err != nil {
		return nil, err
	}
	o.shut, err = c.WithoutClosed(b).Known(b, stages.histories, c.LastStage(), t.Rates.Own, t.Rates.Reckoned())
	return o, err
}

// condition simulates a stage and works out the odds after it.
func (o *outcome) condition(stages *stageRanges, now *stageRun, stage string, n int) error {
	if err := o.simulate(stages, now, stage, n); err != nil {
		return err
	}
	m, err := damage.New(o.known, damage.ImaginedGrids)
	if err == nil {
		t := doubted(stages.shop.Rates, o.table, stages.car, stages.body, stage, false).Supplied(pricing.Supply{AllThere: stages.car.AllThere, OnCar: o.onCar})
		o.run = estimate.NewRun(m, []*pricing.Table{t}, outcomeSeed+uint64(n)+1)
	}
	return err
}

// simulate adds to the evidence of an outcome what a stage would show.
func (o *outcome) simulate(stages *stageRanges, now *stageRun, stage string, n int) (err error) {
	b := stages.body
	closed := func(i int) bool { return !b.PartOf(i).SeenWhenStripped }
	open := func(i int) bool { return !closed(i) }
	anyItem := func(int) bool { return true }
	switch stage {
	case carfile.WalkRound:
		covered := now.model.DrawCovered(o.truth, o.stream.Uniform())
		checks := evidence.ImagineWalkRound(b, o.truth, covered, &o.stream)
		err = errors.Join(carfile.AddLooks(&o.known, b, checks), carfile.AddLooks(&o.shut, b, checks))
		if d, ok := o.old.walk(stages, o.bill, n); ok && err == nil {
			o.table, err = stages.plain.With(d)
		}
	case carfile.Survey:
		entries := evidence.ImagineSurvey(b, o.truth, false, &o.stream)
		err = errors.Join(carfile.AddReadings(&o.known, b, entries, anyItem), carfile.AddReadings(&o.shut, b, entries, open))
		if err == nil {
			err = o.see(stages, entries, open, open)
		}
	case carfile.OpeningUp:
		o.known = o.shut // the open box replaces what was read from outside
		entries := evidence.ImagineSurvey(b, o.truth, true, &o.stream)
		err = carfile.AddReadings(&o.known, b, entries, closed)
		if err == nil {
			err = o.see(stages, entries, closed, anyItem)
		}
	}
	if o.old.repairs != [damage.RepairStates]float64{} {
		o.known.Repairs, o.shut.Repairs = o.old.repairs, o.old.repairs
	}
	return err
}

// see makes facts of the hours of the strip, of what a stage shows of old damage, and of
// which of the parts seen by then are missing.
func (o *outcome) see(stages *stageRanges, entries []evidence.SurveyEntry, reached, seen func(i int) bool) (err error) {
	b, c := stages.body, stages.car
	if o.decided == nil {
		d := worked(c.Decided(b, c.LastStage(), false), o.bill)
		o.decided = &d
	}
	also := make([][]string, len(b.Items))
	copy(also, o.decided.Also)
	o.onCar = make([]bool, len(b.Items))
	for i := range b.Items {
		if o.onCar[i] = seen(i); o.onCar[i] && o.bill.Missing[i] {
			also[i] = []string{pricing.Missing}
		}
	}
	o.decided.Also = also
	o.old.see(stages, o.bill, o.decided, entries, reached)
	o.table, err = stages.plain.With(*o.decided)
	return err
}

// worked records the strip hours of a simulated car.
func worked(d pricing.Decided, bill *pricing.Bill) pricing.Decided {
	for t, h := range bill.StripHours {
		if h > 0 {
			d.StripHours[t] = float64(h) / 1000
		}
	}
	return d
}
