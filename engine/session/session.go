package session

import (
	"underpaint/engine/carfile"
	"underpaint/engine/estimate"
	"underpaint/engine/rates"
)

// Session is one shop and its open car. Only one goroutine may use it at a time.
type Session struct {
	*Shop
	Accuracy estimate.Accuracy // of the range

	models   models
	car      *openCar
	stages   *stageRanges
	checks   *checkValues
	variance *varianceShares
}

// New opens a session at a shop's rates. The error names the path in the file.
func New(ratesText []byte) (*Session, error) {
	shop, err := OpenShop(ratesText)
	if err != nil {
		return nil, err
	}
	return &Session{Shop: shop, Accuracy: estimate.StandardAccuracy}, nil
}

// Of opens a session at rates that are already decoded.
func Of(r *rates.Rates) (*Session, error) {
	shop, err := NewShop(r)
	if err != nil {
		return nil, err
	}
	return &Session{Shop: shop, Accuracy: estimate.StandardAccuracy}, nil
}

// Open makes c the open car. If it already is, Open keeps its simulated cars. An entry
// that contradicts the rest of the file is an error with its path in the car file, and
// the earlier car stays open.
func (s *Session) Open(c *carfile.Car) error {
	if s.car != nil && s.car.key == string(c.Text()) {
		return nil
	}
	j, err := newOpenCar(s.Shop, &s.models, c)
	if err != nil {
		return err
	}
	s.car, s.models.ofRange = j, j.models()
	return nil
}

// Rough makes sure that every range of the open car has its first simulated cars.
func (s *Session) Rough() State { return s.car.rough() }

// Step adds one block of simulated cars to every range that is not settled yet.
func (s *Session) Step() State { return s.car.step(s.Accuracy) }

// Settle adds simulated cars until every range is settled or has reached its limit.
func (s *Session) Settle() State {
	for {
		if state := s.Step(); state != Refining {
			return state
		}
	}
}

// openStages lays out the stages of a car without working anything out.
func (s *Session) openStages(c *carfile.Car) (*stageRanges, error) {
	if s.stages != nil && s.stages.key == string(c.Text()) {
		return s.stages, nil
	}
	j, err := newStageRanges(s.Shop, &s.models, c, s.stages)
	if err != nil {
		return nil, err
	}
	s.stages = j
	return j, nil
}

// openNow returns the stages of a car and, with its model, the stage that the car has
// reached.
func (s *Session) openNow(c *carfile.Car) (*stageRanges, *stageRun, error) {
	j, err := s.openStages(c)
	if err != nil {
		return nil, nil, err
	}
	_, now := j.lastTwo()
	return j, now, j.need(now)
}
