package message

import (
	"strings"

	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/estimate"
	"underpaint/engine/rates"
	"underpaint/engine/strict"
	"underpaint/engine/work"
)

// Version is the version of the messages; a page and an engine of different
// versions refuse each other.
const Version = "1"

// Seed is the seed of every range unless a request names another.
const Seed = 1

// Session is one shop's rates and the car in hand. It is not safe for use by
// several goroutines at once.
type Session struct {
	Rates    *rates.Rates
	Accuracy estimate.Accuracy

	common *car.Common
	text   *wording
	job    *job
	stages *stageJob
	worth  *worthJob
	wide   *wideJob
}

// NewSession opens a shop's rates.
func NewSession(ratesText []byte) (*Session, error) {
	r, err := rates.Decode(ratesText)
	if err != nil {
		return nil, err
	}
	return newSession(r)
}

func newSession(r *rates.Rates) (*Session, error) {
	common, err := car.LoadCommon()
	if err != nil {
		return nil, err
	}
	text, err := loadWording()
	if err != nil {
		return nil, err
	}
	return &Session{Rates: r, Accuracy: estimate.StandardAccuracy, common: common, text: text}, nil
}

// job is the car in hand with its imagined cars so far.
type job struct {
	key  string
	car  *carfile.Car
	runs []bodyRun
}

// bodyRun is one body that the car may be.
type bodyRun struct {
	body      *car.Body
	standards []string
	tables    []*work.Table
	belief    belief
	run       *estimate.Run
}

// Open makes the car the one in hand, keeping the imagined cars if it already is.
func (s *Session) Open(c *carfile.Car) error {
	key := string(c.Text())
	if s.job != nil && s.job.key == key {
		return nil
	}
	j := &job{key: key, car: c}
	if len(c.Bodies) > 1 && len(c.Survey) > 0 {
		return &strict.Error{Path: "bodies", Found: strings.Join(c.Bodies, ", "), Expected: "one body: what is recorded of a bare car is recorded on one"}
	}
	levels, err := c.Levels()
	if err != nil {
		return err
	}
	standards := []string{c.Standard}
	if c.Standard == carfile.NotSure {
		standards = car.Standards
	}
	for _, id := range c.Bodies {
		one := bodyRun{standards: standards}
		if one.body, err = c.Body(id); err != nil {
			return err
		}
		for _, standard := range standards {
			t, err := s.table(c, one.body, standard)
			if err != nil {
				return err
			}
			one.tables = append(one.tables, t)
		}
		if one.belief, err = s.belief(c, one.body, levels, c.LastStage()); err != nil {
			return err
		}
		one.run = estimate.NewRun(one.belief.model, one.tables, Seed)
		j.runs = append(j.runs, one)
	}
	s.job = j
	return nil
}

// table is the price table of a body with everything recorded and chosen. What
// cannot stand is refused here, before any odds are worked out.
func (s *Session) table(c *carfile.Car, b *car.Body, standard string) (*work.Table, error) {
	t, err := work.NewTable(b, s.common, s.Rates, standard, c.Scope)
	if err != nil {
		return nil, err
	}
	if wrong := c.Faults(b, t); len(wrong) > 0 {
		return nil, wrong[0].Err
	}
	return t.With(c.Decided(b, c.LastStage(), true))
}

// State says how far the range has got.
type State string

// The states of a range.
const (
	Rough       State = "rough"
	Refining    State = "refining"
	Settled     State = "settled"
	BudgetEnded State = "budget_ended"
)

// step adds one block of imagined cars to every run that is not settled yet and
// says how far it has got.
func (s *Session) step() State {
	state := Settled
	for k := range s.job.runs {
		r := s.job.runs[k].run
		switch {
		case r.Settled(s.Accuracy):
		case r.Cars()+estimate.Block > s.Accuracy.Budget:
			if state == Settled {
				state = BudgetEnded
			}
		default:
			r.Add()
			if !r.Settled(s.Accuracy) {
				state = Refining
			}
		}
	}
	return state
}

// rough makes sure of one block of cars in every run.
func (s *Session) rough() State {
	for k := range s.job.runs {
		if r := s.job.runs[k].run; r.Cars() == 0 {
			r.Add()
		}
	}
	return Rough
}

// Settle adds cars until every range is settled or its budget is spent.
func (s *Session) Settle() State {
	for {
		if state := s.step(); state != Refining {
			return state
		}
	}
}
