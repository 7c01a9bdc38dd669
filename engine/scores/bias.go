package scores

import (
	"errors"
	"math"

	"underpaint/engine/chance"
)

// Pair is what was expected and what was found in one group of one job: steps of
// damage in a pocket group, or hours of a trade.
type Pair struct {
	Group, Job      string
	Expected, Found float64
}

// HalfStep is added to found and expected steps of damage before their ratio is
// taken, so that a group found sound counts (assumption; it draws ratios of small
// counts towards 1). Hours need none.
const HalfStep = 0.5

// Ratio compares one group over its jobs: the geometric mean of found over
// expected. SE is the standard error of its logarithm, [Low, High] the interval
// of the ratio by Student's t. With fewer than two jobs these are zero and Known
// is false.
type Ratio struct {
	Group     string
	Jobs      int
	Ratio     float64
	Log, SE   float64
	Low, High float64
	Known     bool
}

// Ratios compares every group, in the order in which groups first appear.
// Confidence such as .8. A figure that has no ratio is an error, and so is a job
// that appears in a group twice.
func Ratios(pairs []Pair, offset, confidence float64) ([]Ratio, error) {
	logs := newGrouped()
	for _, p := range pairs {
		expected, found := p.Expected+offset, p.Found+offset
		if !finite(expected) || expected <= 0 {
			return nil, wrong(p.Group, p.Job, "expected figure must be above zero")
		}
		if !finite(found) || found <= 0 {
			return nil, wrong(p.Group, p.Job, "found figure must be above zero")
		}
		if err := logs.add(p.Group, p.Job, chance.Log(found)-chance.Log(expected), 0); err != nil {
			return nil, err
		}
	}
	out := make([]Ratio, 0, len(logs.names))
	for g, name := range logs.names {
		out = append(out, ratioOf(name, logs.value[g], confidence))
	}
	return out, nil
}

func ratioOf(name string, logs []float64, confidence float64) Ratio {
	r := Ratio{Group: name, Jobs: len(logs)}
	r.Log, r.SE, r.Known = Average(logs)
	r.Ratio = chance.Exp(r.Log)
	if r.Known {
		half := float64(studentQuantile(confidence, r.Jobs-1) * r.SE)
		r.Low, r.High = chance.Exp(r.Log-half), chance.Exp(r.Log+half)
	}
	return r
}

func finite(x float64) bool { return !math.IsInf(x, 0) && !math.IsNaN(x) }

// wrong is an error about one job's figure.
func wrong(group, job, expected string) error {
	return errors.New("job \"" + job + "\", group \"" + group + "\": " + expected)
}
