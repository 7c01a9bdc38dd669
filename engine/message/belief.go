package message

import (
	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/damage"
	"underpaint/engine/exposure"
)

// belief is a model and all that it hangs on, but for the rates of the session, as text.
type belief struct {
	evidence string
	model    *damage.Model
}

// belief is a body with everything known of it by the end of a stage. Where the range or
// a row of the stages has that already, it serves again: after a full survey nothing
// takes longer to work out, or more memory, and what is to be done, how well and to
// which parts of the car has no part in it.
func (s *Session) belief(c *carfile.Car, b *car.Body, levels []exposure.Level, reached string) (belief, error) {
	evidence := evidenceOf(c, b.ID, reached)
	if k, ok := s.inHand(evidence); ok {
		return k, nil
	}
	m, err := c.ModelAt(b, levels, reached, s.Rates.Own, s.lastModel(b))
	return belief{evidence, m}, err
}

// lastModel is the model of a body that the open range rests on, nil where there is
// none: from one entry to the next most of it stays as it is.
func (s *Session) lastModel(b *car.Body) *damage.Model {
	if s.job == nil {
		return nil
	}
	for k := range s.job.runs {
		if one := &s.job.runs[k]; one.body == b {
			return one.belief.model
		}
	}
	return nil
}

func (s *Session) inHand(evidence string) (belief, bool) {
	if s.job != nil {
		for k := range s.job.runs {
			if one := s.job.runs[k].belief; one.evidence == evidence {
				return one, true
			}
		}
	}
	if s.stages != nil {
		for _, r := range s.stages.runs {
			if r.model != nil && r.evidence == evidence {
				return r.belief, true
			}
		}
	}
	return belief{}, false
}

// evidenceOf is what the odds of a body hang on by the end of a stage: of a record what
// it says of rust and of earlier repairs, not the note beside it or the further work.
func evidenceOf(c *carfile.Car, body, reached string) string {
	cut := c.Cut(reached)
	cut.Bodies, cut.Standard, cut.Scope = []string{body}, "", ""
	survey := make([]carfile.Record, len(cut.Survey))
	for n, r := range cut.Survey {
		survey[n] = carfile.Record{On: r.On, Stage: r.Stage, Condition: r.Condition, Finding: r.Finding, Dent: r.Dent, LeadFailed: r.LeadFailed, CouldNotSee: r.CouldNotSee}
	}
	cut.Recorded = carfile.Recorded{Survey: survey}
	return string(cut.Text())
}
