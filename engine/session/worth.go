package session

import (
	"underpaint/engine/car"
	"underpaint/engine/carfile"
)

// CheckValues holds what each stage to come is worth, and which checks would make the
// range narrowest.
type CheckValues struct {
	State    State
	Done, Of int // simulated outcomes
	Body     *car.Body
	Now      float64      // the width of the range as shown, in minor units
	Stages   []StageWidth // empty until all outcomes are worked out
	Checks   []CheckValue // the best first
}

// StageWidth is a stage to come with the mean width of the range after it, as shown,
// in minor units.
type StageWidth struct {
	ID    string
	Width float64
}

// CheckValues values the checks and stages of a car with one body for whom, "customer"
// or "shop". Each further call does a slice of work on a simulated outcome.
func (s *Session) CheckValues(c *carfile.Car, whom string) (CheckValues, error) {
	j, err := s.openChecks(c, whom)
	if err != nil {
		return CheckValues{}, err
	}
	if !j.valued {
		j.checks, j.valued = valueChecks(j.stages, j.now, whom), true
	} else if j.done < j.of {
		if err := j.step(); err != nil {
			return CheckValues{}, err
		}
	}
	out := CheckValues{State: Refining, Done: j.done, Of: j.of, Body: j.stages.body, Now: shownWidth(j.now.run), Checks: j.checks}
	if j.done == j.of {
		out.State = Settled
		for k, id := range j.ahead {
			out.Stages = append(out.Stages, StageWidth{id, j.width[k] / float64(j.of)})
		}
	}
	return out, nil
}

func (s *Session) openChecks(c *carfile.Car, whom string) (*checkValues, error) {
	key := whom + string(c.Text())
	if s.checks != nil && s.checks.key == key {
		return s.checks, nil
	}
	stages, now, err := s.openNow(c)
	if err != nil {
		return nil, err
	}
	j, err := newCheckValues(key, stages, now)
	if err != nil {
		return nil, err
	}
	s.checks = j
	return j, nil
}
