package scores

import (
	"errors"
	"math"

	"underpaint/engine/chance"
)

// Pair holds what was expected and what was found in one group of one job: steps of
// damage in a pocket group, or hours of a trade.
type Pair struct {
	Group, Job      string
	Expected, Found float64
}

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

// Ratios compares every group, in the order in which groups first appear, by the
// geometric mean of found over expected. It is for figures whose logarithms the model
// predicts, such as hours. confidence is a level such as .8. A figure without a ratio
// is an error, and so is a job that appears twice in a group.
func Ratios(pairs []Pair, confidence float64) ([]Ratio, error) {
	logs := newGrouped()
	for _, p := range pairs {
		if err := p.check(false); err != nil {
			return nil, err
		}
		if err := logs.add(p.Group, p.Job, chance.Log(p.Found)-chance.Log(p.Expected), 0); err != nil {
			return nil, err
		}
	}
	out := make([]Ratio, 0, len(logs.names))
	for g, name := range logs.names {
		out = append(out, ratioOf(name, logs.value[g], confidence))
	}
	return out, nil
}

// SumRatios compares every group by the sum found over the sum expected. It is for
// counts, such as steps of damage, which may be 0 and whose mean the model predicts;
// the mean of their logarithms would come out too low. The standard error is the usual
// linearisation: √(Σ(found − R·expected)²/(n − 1)/n) over the mean expected (W. G.
// Cochran, Sampling Techniques, 3rd ed., 1977, section 6.4; from memory).
func SumRatios(pairs []Pair, confidence float64) ([]Ratio, error) {
	both := newGrouped()
	for _, p := range pairs {
		if err := p.check(true); err != nil {
			return nil, err
		}
		if err := both.add(p.Group, p.Job, p.Found, p.Expected); err != nil {
			return nil, err
		}
	}
	out := make([]Ratio, 0, len(both.names))
	for g, name := range both.names {
		out = append(out, sumRatioOf(name, both.value[g], both.variance[g], confidence))
	}
	return out, nil
}

func (p Pair) check(zero bool) error {
	if !finite(p.Expected) || p.Expected <= 0 {
		return wrong(p.Group, p.Job, "expected figure must be above zero")
	}
	if !finite(p.Found) || p.Found < 0 || p.Found == 0 && !zero {
		return wrong(p.Group, p.Job, "found figure must be above zero")
	}
	return nil
}

func sumRatioOf(name string, found, expected []float64, confidence float64) Ratio {
	n := float64(len(found))
	sumFound, sumExpected, squares := 0.0, 0.0, 0.0
	for k := range found {
		sumFound, sumExpected = sumFound+found[k], sumExpected+expected[k]
	}
	r := Ratio{Group: name, Jobs: len(found), Ratio: sumFound / sumExpected}
	if n < 2 || sumFound == 0 {
		return r
	}
	for k := range found {
		miss := found[k] - float64(r.Ratio*expected[k])
		squares += float64(miss * miss)
	}
	r.Known, r.Log = true, chance.Log(r.Ratio)
	r.SE = math.Sqrt(squares/(n-1)/n) / (sumExpected / n) / r.Ratio
	half := float64(studentQuantile(confidence, r.Jobs-1) * r.SE)
	r.Low, r.High = chance.Exp(r.Log-half), chance.Exp(r.Log+half)
	return r
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
