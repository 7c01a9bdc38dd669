package pastjobs

import (
	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/chance"
	"underpaint/engine/damage"
	"underpaint/engine/exposure"
	"underpaint/engine/money"
	"underpaint/engine/pastjobs/scores"
	"underpaint/engine/pricing"
	"underpaint/engine/rates"
	"underpaint/engine/strict"
)

// Numbers of simulated cars for the range of a finished job, for its hours, and for
// what its survey was expected to show. Assumption: an end of a range then has a
// standard error of about a sixtieth of the width.
const (
	rangeCars  = 2048
	hoursCars  = 768
	surveyCars = 384
)

// scoreSeed is the seed of every range that is worked out again.
const scoreSeed = 1

// Score is how one job came out. Amounts are in minor units.
type Score struct {
	Name   string
	WhyNot string // why it could not be scored, "" = it was
	Said   bool   // the first range is the one that the customer was given, not worked out again
	First  scores.Finished
	Half   float64 // middle of the first range; 0 when only the ends were given

	Modelled       bool // the range was worked out again, which gives the two scores below
	CRPS, Interval float64
	sureCRPS       float64 // of the same range without the doubt about the figures

	Surveyed bool // there is also a range after the survey
	Survey   scores.Finished

	Rust  []Expected // by pocket group with a complete survey
	All   *Expected  // all those groups together; nil without any
	Hours []HoursMiss
}

// HoursMiss is the log of a trade's hours over those expected after the survey, with
// the variance that the model gives it.
type HoursMiss struct {
	Trade         car.Trade
	Log, Variance float64
}

func (h HoursMiss) ratio() float64 { return chance.Exp(h.Log) }

// Score works out one job. The result is the same on every machine and does not depend
// on the other jobs.
func (j *Jobs) Score(n int) Score {
	job := &j.Jobs[n]
	s := Score{Name: job.Name}
	r, why := j.ready(job)
	if r != nil {
		if err := s.model(job, r); err != nil {
			why = err.Error()
		}
	}
	if job.Said != nil {
		s.Said = true
		s.First = scores.Finished{Low: float64(job.Said.Low), High: float64(job.Said.High), Found: float64(job.Scored())}
		s.First.PIT = scores.LognormalPIT(s.First.Low, s.First.High, s.First.Found)
		return s
	}
	if !s.Modelled {
		s.WhyNot = why
	}
	return s
}

// ready returns the rates at which a job can be worked out again, or why it cannot.
func (j *Jobs) ready(job *Job) (*rates.Rates, string) {
	r := j.RatesOf(job)
	switch {
	case job.Car == nil:
		return nil, "neither the range that was said nor the car is in the file"
	case job.Rates == "":
		return nil, "it is not said at which rates the job was priced"
	case r == nil:
		return nil, "the rates " + job.Rates + " are not in the file"
	case len(job.Car.Bodies) != 1:
		return nil, "the body was not settled"
	case job.Car.Standard == carfile.NotSure:
		return nil, "the standard was not settled"
	}
	return r, ""
}

// model works the ranges out again, with what survey and hours say.
func (s *Score) model(job *Job, r *rates.Rates) error {
	k, err := open(job.Car)
	if err != nil {
		return err
	}
	at, err := k.at(carfile.Told, r)
	if err != nil {
		return err
	}
	totals := at.told()
	found := job.Scored()
	s.Modelled, s.First, s.Half = true, finished(totals, found), chance.QuantileMinor(totals, 0.5)
	s.CRPS, s.sureCRPS = scores.CRPS(totals, int64(found)), scores.CRPS(at.sure(), int64(found))
	s.Interval = scores.IntervalScore(s.First.Low, s.First.High, float64(found), scores.Outside)
	if job.Car.Begun(carfile.Survey) {
		if at, err = k.at(job.Car.LastStage(), r); err != nil {
			return err
		}
		s.Surveyed, s.Survey = true, finished(at.told(), found)
		if s.Rust, s.All, err = k.expected(); err != nil {
			return err
		}
	}
	s.Hours, err = k.hours(job, r)
	return err
}

// finished says where a job fell among the draws, which are in increasing order.
func finished(totals []int64, found money.Minor) scores.Finished {
	return scores.Finished{Low: chance.QuantileMinor(totals, 0.1), High: chance.QuantileMinor(totals, 0.9), Found: float64(found), PIT: scores.PIT(totals, int64(found))}
}

// known is the car of one job, ready to be worked out.
type known struct {
	car       *carfile.Car
	body      *car.Body
	histories []exposure.History
	common    *car.Common
	last      *damage.Model // at the last stage on the starting figures, once it is needed
}

func open(c *carfile.Car) (*known, error) {
	b, err := c.OneBody()
	if err != nil {
		return nil, err
	}
	common, err := car.LoadCommon()
	if err != nil {
		return nil, err
	}
	histories, err := c.Histories()
	if err != nil {
		return nil, err
	}
	return &known{car: c, body: b, histories: histories, common: common}, nil
}

// table prices the car at a stage, with its parts as they come. Chosen ways count at the last stage.
func (k *known) table(c *carfile.Car, stage string, r *rates.Rates) (*pricing.Table, error) {
	t, err := pricing.NewTable(k.body, k.common, r, c.Standard, c.Scope)
	if err != nil {
		return nil, err
	}
	if wrong := c.Faults(k.body, t); len(wrong) > 0 {
		return nil, wrong[0].Err
	}
	if t, err = t.With(c.Decided(k.body, stage, stage == c.LastStage())); err != nil {
		return nil, err
	}
	return t.Supplied(c.Supply(k.body, stage)).TakingAnotherBody(c.TakesAnotherBody()), nil
}

// model conditions on everything known by a stage. Its coarse grids move no probability
// of a condition by more than .01 and take a fifth of the time.
func (k *known) model(stage string, r *rates.Rates) (*damage.Model, error) {
	own := r.Own
	plain := stage == k.car.LastStage() && len(own.Rust) == 0 && own.Spread.Factor == 1
	if plain && k.last != nil {
		return k.last, nil
	}
	known, err := k.car.Known(k.body, k.histories, stage, own, r.Reckoned())
	if err != nil {
		return nil, err
	}
	m, err := damage.New(known, damage.CoarseGrids)
	if err != nil {
		return nil, &strict.Error{Path: "car.survey", Found: "entries that cannot all be true", Expected: "one of them taken back"}
	}
	if plain {
		k.last = m
	}
	return m, nil
}
