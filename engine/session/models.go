package session

import (
	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/damage"
	"underpaint/engine/exposure"
	"underpaint/engine/olddamage"
	"underpaint/engine/rates"
)

// conditionedModel is the model of a body conditioned on all evidence about one car, with
// that evidence as text.
type conditionedModel struct {
	evidence string
	body     *car.Body
	model    *damage.Model
}

// models is the cache of conditioned models, keyed by the evidence. The range and the
// rows of the stages share models, because after a full survey nothing takes more time
// or memory than a model. The key leaves out standard, scope, chosen ways and missing
// parts, because they say nothing about rust.
type models struct {
	ofRange  []conditionedModel // used by the open range, one for each body
	ofStages []conditionedModel // used by its stages
}

// condition returns the model of a body with everything known by the end of a stage.
func (m *models) condition(c *carfile.Car, b *car.Body, histories []exposure.History, reached string, r *rates.Rates) (conditionedModel, error) {
	evidence := evidenceOf(c, b.ID, reached)
	for _, list := range [][]conditionedModel{m.ofRange, m.ofStages} {
		for _, one := range list {
			if one.evidence == evidence {
				return one, nil
			}
		}
	}
	model, err := c.ModelAt(b, histories, reached, r.Own, r.Reckoned(), m.before(b))
	return conditionedModel{evidence, b, model}, err
}

// before returns the model of a body that the open range uses, or nil. Most of it stays
// the same from one entry to the next, so conditioning can start from it.
func (m *models) before(b *car.Body) *damage.Model {
	for _, one := range m.ofRange {
		if one.body == b {
			return one.model
		}
	}
	return nil
}

// evidenceOf writes what the odds of a body depend on by the end of a stage. From a
// record it takes what says something about rust and earlier repairs, and leaves out the
// note and the further work but for what tells of an earlier hand.
func evidenceOf(c *carfile.Car, body, reached string) string {
	cut := c.Cut(reached)
	cut.Bodies, cut.Standard, cut.Scope, cut.AllThere, cut.AnotherBody = []string{body}, "", "", "", ""
	survey := make([]carfile.Record, len(cut.Survey))
	for n, r := range cut.Survey {
		survey[n] = carfile.Record{On: r.On, Stage: r.Stage, Condition: r.Condition, Finding: r.Finding, Dent: r.Dent, LeadFailed: r.LeadFailed, CouldNotSee: r.CouldNotSee, Also: olddamage.Telling(r.Also)}
	}
	cut.Recorded = carfile.Recorded{Survey: survey, SurveyCar: carfile.SurveyCar{Zones: cut.SurveyCar.Zones, Square: cut.Measured()}}
	return string(cut.Text())
}
