package pricing

import "underpaint/engine/car"

// Step is one step of the strip and survey, as a shop's form names it.
type Step struct {
	ID   string // one of rates.StepIDs
	Name car.Words
}

// Steps lists the steps of the strip and survey in working order.
func Steps() ([]Step, error) {
	g, err := loadFigures()
	if err != nil {
		return nil, err
	}
	out := make([]Step, len(g.steps))
	for i, s := range g.steps {
		out[i] = Step{s.id, s.name}
	}
	return out, nil
}

// StartingWays returns the probability of each way for a shop without a table of its
// own: by standard (car.Standards), kind (rates.Kinds), condition and way.
func StartingWays() (chance [3][4][car.Conditions][car.Ways]float64, err error) {
	g, err := loadFigures()
	if err != nil {
		return chance, err
	}
	for s := range g.done {
		chance[s] = g.done[s]
	}
	return chance, nil
}
