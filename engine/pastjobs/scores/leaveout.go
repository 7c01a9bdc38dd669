package scores

import "math"

// Prediction is a job's residual as predicted by the other jobs of its group.
type Prediction struct {
	Group, Job string
	Others     int // number of jobs that it was predicted from
	// Shift and SD are what the others taught. Extra is their variance beyond the
	// model's. Variance is the model's for this residual.
	Shift, SD, Extra, Variance float64
	Residual                   float64
}

// Spread is the standard deviation of the prediction with everything included.
func (p Prediction) Spread() float64 {
	return math.Sqrt(p.Variance + p.Extra + float64(p.SD*p.SD))
}

// Standard is the miss in standard deviations of the model alone, without Extra. Its
// mean square is about 1 when the model's spread is right. [LearnSpread] takes it as
// input.
func (p Prediction) Standard() float64 {
	return (p.Residual - p.Shift) / math.Sqrt(p.Variance+float64(p.SD*p.SD))
}

// LeaveOneOut predicts every job from the others of its group, in the order given, so
// that no job is scored by a model that has seen it. The prior predicts a group's only
// job.
func LeaveOneOut(all []Observation, priorSD float64) ([]Prediction, error) {
	g, err := observed(all, priorSD)
	if err != nil {
		return nil, err
	}
	next := make([]int, len(g.names))
	out := make([]Prediction, 0, len(all))
	for _, o := range all {
		i := g.at[o.Group]
		j := next[i]
		next[i]++
		l := shrink(o.Group, without(g.value[i], j), without(g.variance[i], j), priorSD)
		out = append(out, Prediction{Group: o.Group, Job: o.Job, Others: l.Jobs, Shift: l.Shift, SD: l.SD,
			Extra: l.Extra, Variance: o.Variance, Residual: o.Residual})
	}
	return out, nil
}

func without(v []float64, j int) []float64 {
	rest := make([]float64, 0, len(v))
	return append(append(rest, v[:j]...), v[j+1:]...)
}

// Comparison holds the mean CRPS of jobs predicted with what the others taught and with
// the starting figures. Gain is the second minus the first; its standard error treats
// the predictions as independent. All are on the log scale.
type Comparison struct {
	Predictions      int
	Learnt, Starting float64
	Gain, SE         float64
	Known            bool
}

// Compare scores predictions, of which there must be at least one.
func Compare(predictions []Prediction) Comparison {
	c := Comparison{Predictions: len(predictions)}
	var learnt, starting, gain []float64
	for _, p := range predictions {
		a, b := NormalCRPS(p.Shift, p.Spread(), p.Residual), NormalCRPS(0, math.Sqrt(p.Variance), p.Residual)
		learnt, starting, gain = append(learnt, a), append(starting, b), append(gain, b-a)
	}
	c.Learnt, _, _ = Average(learnt)
	c.Starting, _, _ = Average(starting)
	c.Gain, c.SE, c.Known = Average(gain)
	return c
}
