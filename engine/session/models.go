package session

import (
	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/damage"
	"underpaint/engine/exposure"
	"underpaint/engine/rates"
)

// conditionedModel is the model of a body conditioned on all that is believed of one
// car, with that belief as text.
type conditionedModel struct {
	evidence string
	body     *car.Body
	model    *damage.Model
}

// models is the cache of conditioned models, keyed by what is believed. Where the
// range or a row of the stages has a model already it serves again: after a full
// survey nothing takes longer to work out, or more memory. What is to be done, how
// well and to which parts of the car says nothing about rust and is not in the key.
type models struct {
	ofRange  []conditionedModel // those that the open range uses, one for each body
	ofStages []conditionedModel // those that its stages use
}

// condition gives the model of a body with everything known by the end of a stage.
func (m *models) condition(c *carfile.Car, b *car.Body, histories []exposure.History, reached string, own *rates.Own) (conditionedModel, error) {
	evidence := evidenceOf(c, b.ID, reached)
	for _, list := range [][]conditionedModel{m.ofRange, m.ofStages} {
		for _, one := range list {
			if one.evidence == evidence {
				return one, nil
			}
		}
	}
	model, err := c.ModelAt(b, histories, reached, own, m.before(b))
	return conditionedModel{evidence, b, model}, err
}

// before is the model of a body that the open range uses, nil where there is none:
// from one entry to the next most of it stays as it is.
func (m *models) before(b *car.Body) *damage.Model {
	for _, one := range m.ofRange {
		if one.body == b {
			return one.model
		}
	}
	return nil
}

// evidenceOf is what the odds of a body depend on by the end of a stage: of a record
// what it says of rust and of earlier repairs, not the note beside it or the further
// work.
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
