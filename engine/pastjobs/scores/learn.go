package scores

import (
	"math"

	"underpaint/engine/chance"
)

// Prior spreads: how far a shop's own level may be from the starting figures, as a
// standard deviation on the log scale (assumptions). They are fixed and not estimated,
// because one shop's dozen groups say next to nothing about how shops differ from each
// other.
const (
	PocketPriorSD = 0.30 // depth of rust in a pocket group: two shops in three within a third
	TradePriorSD  = 0.20 // hours of a trade: two shops in three within a fifth
)

// PriorJobs is the number of jobs that the starting spread is worth (assumption).
const PriorJobs = 10

// Observation is one job's residual in one group: ln found − ln expected, with
// the variance that the model gives to such a residual.
type Observation struct {
	Group, Job         string
	Residual, Variance float64
}

// Learnt is what the jobs of a group say about it.
type Learnt struct {
	Group string
	Jobs  int
	// Plain is the mean of the residuals, PlainSE its standard error and Extra the
	// variance between jobs beyond the model's: see Pool.
	Plain, PlainSE, Extra float64
	// Shift is Plain shrunk towards 0, the starting figures; SD is its posterior
	// standard deviation; Share is the weight of the shop's own jobs in it, 0 to 1.
	Shift, SD, Share float64
	// Low and High are the 80 % interval of the shift.
	Low, High float64
}

// Factor returns the shift as a factor on what it shifts, with its 80 % interval.
func (l Learnt) Factor() (factor, low, high float64) {
	return chance.Exp(l.Shift), chance.Exp(l.Low), chance.Exp(l.High)
}

// Learn estimates the shift of every group, in the order in which groups first appear.
// The prior of a shift is normal around 0 with standard deviation priorSD. Pool
// combines the residuals, and the pooled mean y with standard error s becomes
// y·τ²/(τ²+s²) (normal mean with normal prior: A. Gelman and others, Bayesian Data
// Analysis, section 2.5). Groups are treated separately, although their jobs are the
// same cars.
func Learn(all []Observation, priorSD float64) ([]Learnt, error) {
	g, err := observed(all, priorSD)
	if err != nil {
		return nil, err
	}
	out := make([]Learnt, 0, len(g.names))
	for i, name := range g.names {
		out = append(out, shrink(name, g.value[i], g.variance[i], priorSD))
	}
	return out, nil
}

func observed(all []Observation, priorSD float64) (*grouped, error) {
	if !finite(priorSD) || priorSD <= 0 {
		panic("engine: internal error: prior spread must be above zero")
	}
	g := newGrouped()
	for _, o := range all {
		if !finite(o.Residual) {
			return nil, wrong(o.Group, o.Job, "residual must be a finite number")
		}
		if !(o.Variance >= LeastVariance && o.Variance <= MostVariance) {
			return nil, wrong(o.Group, o.Job, "variance of a residual must lie between 1e-6 and 1e6")
		}
		if err := g.add(o.Group, o.Job, o.Residual, o.Variance); err != nil {
			return nil, err
		}
	}
	return g, nil
}

// Bounds on the variance of a residual (assumption: a model that is sure to a
// thousandth, or unsure by a factor e^1000, has gone wrong).
const (
	LeastVariance = 1e-6
	MostVariance  = 1e6
)

// shrink pulls the pooled mean of a group towards 0; without jobs it returns the prior.
func shrink(name string, value, variance []float64, priorSD float64) Learnt {
	l := Learnt{Group: name, Jobs: len(value), SD: priorSD}
	if len(value) > 0 {
		p := Pool(value, variance)
		l.Plain, l.PlainSE, l.Extra = p.Mean, p.SE, p.Extra
		ours, theirs := float64(priorSD*priorSD), float64(p.SE*p.SE)
		l.Share = ours / (ours + theirs)
		l.Shift = float64(l.Share * p.Mean)
		l.SD = float64(math.Sqrt(l.Share) * p.SE)
	}
	half := float64(z90 * l.SD)
	l.Low, l.High = l.Shift-half, l.Shift+half
	return l
}
