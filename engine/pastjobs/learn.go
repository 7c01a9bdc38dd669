package pastjobs

import (
	"math"
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/pastjobs/scores"
	"underpaint/engine/rates"
)

// LeastToUse is the smallest number of jobs from which a figure is offered for use.
// With fewer, it would hardly differ from the starting figure (assumption).
const LeastToUse = 3

// Teaching is what the jobs say about the starting figures.
type Teaching struct {
	Rust   []scores.Learnt // by pocket group: shift of the log of the depth
	Hours  []scores.Learnt // by trade that has any, Group is its id: log of the factor
	Spread scores.Spread   // on the spread of the depth of rust
}

// EveryJob tells Learn to leave no job out.
const EveryJob = -1

// Learn combines what all jobs but one say; a negative number leaves none out.
//
// A shift of the depth cannot be observed directly, only steps of damage. So each job's
// steps found, less those expected at the current shift, are divided by the rate at
// which the expectation grows with the shift, and [scores.Learn] pools and shrinks the
// results; a few rounds converge. This is the Gauss-Newton method on the mean squared
// misses, with the prior as one more observation.
func Learn(all []Score, without int) (t Teaching, err error) {
	for _, group := range groupsIn(all) {
		l, err := learnRust(all, without, group)
		if err != nil {
			return t, err
		}
		t.Rust = append(t.Rust, l)
	}
	t.Hours, err = scores.Learn(hoursOf(all, without), scores.TradePriorSD)
	if err != nil {
		return t, err
	}
	slices.SortFunc(t.Hours, func(a, b scores.Learnt) int {
		return slices.Index(car.TradeIDs[:], a.Group) - slices.Index(car.TradeIDs[:], b.Group)
	})
	t.learnSpread(all, without)
	return t, nil
}

// groupsIn lists the pocket groups of which any job has a complete survey, in the order
// of the jobs.
func groupsIn(all []Score) (ids []string) {
	for n := range all {
		for k := range all[n].Rust {
			if id := all[n].Rust[k].Group; !slices.Contains(ids, id) {
				ids = append(ids, id)
			}
		}
	}
	return ids
}

// leastSlope is the slowest growth of the expected steps, per unit of shift and part,
// from which anything can be learned.
const leastSlope = 0.02

func learnRust(all []Score, without int, group string) (scores.Learnt, error) {
	l := scores.Learnt{Group: group, SD: scores.PocketPriorSD}
	for range 6 {
		shift := max(shifts[0], min(shifts[len(shifts)-1], l.Shift))
		var seen []scores.Observation
		for n := range all {
			e := all[n].in(group)
			if n == without || e == nil {
				continue
			}
			mean, slope, variance := e.at(shift)
			if slope < float64(leastSlope*float64(e.Parts)) || variance <= 0 {
				continue
			}
			seen = append(seen, scores.Observation{Group: group, Job: all[n].Name,
				Residual: shift + (e.Found-mean)/slope, Variance: bounded(variance / float64(slope*slope))})
		}
		if len(seen) == 0 {
			return l, nil
		}
		learnt, err := scores.Learn(seen, scores.PocketPriorSD)
		if err != nil {
			return l, err
		}
		l = learnt[0]
	}
	return l, nil
}

func bounded(variance float64) float64 {
	return max(scores.LeastVariance, min(scores.MostVariance, variance))
}

// in returns what a job's survey says about a group; nil = nothing.
func (s *Score) in(group string) *Expected {
	for k := range s.Rust {
		if s.Rust[k].Group == group {
			return &s.Rust[k]
		}
	}
	return nil
}

func hoursOf(all []Score, without int) (seen []scores.Observation) {
	for n := range all {
		if n == without {
			continue
		}
		for _, h := range all[n].Hours {
			seen = append(seen, scores.Observation{Group: car.TradeIDs[h.Trade], Job: all[n].Name, Residual: h.Log, Variance: bounded(h.Variance)})
		}
	}
	return seen
}

// learnSpread compares how far complete surveys were from what was expected, at the
// learned shifts, with how far they should be. Each job gives one miss, because the
// groups of one car share its luck. The spread of a survey grows more slowly than the
// spread of the depth; Widened measures how much.
func (t *Teaching) learnSpread(all []Score, without int) {
	var misses []float64
	grows := 0.0
	for n := range all {
		whole := all[n].All
		if n == without || whole == nil || whole.Variance[unshifted] <= 0 || whole.Widened <= whole.Variance[unshifted] {
			continue
		}
		mean, shift := 0.0, 0.0
		for k := range all[n].Rust {
			e := &all[n].Rust[k]
			m, _, _ := e.at(t.shiftOf(e.Group))
			mean += m
			shift += t.shiftOf(e.Group) / float64(len(all[n].Rust))
		}
		_, _, variance := whole.at(shift)
		misses = append(misses, (whole.Found-mean)/math.Sqrt(variance))
		grows += chance.Log(whole.Widened/whole.Variance[unshifted]) / 2 / chance.Log(widened)
	}
	t.Spread = scores.LearnSpread(misses, scores.PriorJobs)
	if len(misses) == 0 {
		return
	}
	grows = max(0.3, grows/float64(len(misses)))
	for _, f := range []*float64{&t.Spread.Factor, &t.Spread.Low, &t.Spread.High} {
		*f = chance.Exp(chance.Log(*f) / grows)
	}
}

func (t *Teaching) shiftOf(group string) float64 {
	for _, l := range t.Rust {
		if l.Group == group {
			return l.Shift
		}
	}
	return 0
}

// Own returns the figures in the form that a rates file stores: those of at least
// LeastToUse jobs each, to three decimals, within the bounds of the file.
func (t *Teaching) Own(learntOn, jobsCode string) *rates.Own {
	o := rates.NothingLearnt()
	o.LearntOn, o.JobsCode = learntOn, jobsCode
	for _, l := range t.Rust {
		if l.Jobs >= LeastToUse {
			o.Rust = append(o.Rust, rates.OwnRust{Group: l.Group, OwnFigure: figure(chance.Exp(l.Shift), l.Jobs)})
		}
	}
	for _, l := range t.Hours {
		if l.Jobs >= LeastToUse {
			o.Hours[slices.Index(car.TradeIDs[:], l.Group)] = figure(chance.Exp(l.Shift), l.Jobs)
		}
	}
	if t.Spread.Jobs >= scores.LeastJobs {
		o.Spread = figure(t.Spread.Factor, t.Spread.Jobs)
	}
	return o
}

func figure(factor float64, jobs int) rates.OwnFigure {
	return rates.OwnFigure{Factor: max(rates.LeastOwn, min(rates.MostOwn, math.Floor(float64(factor*1000)+0.5)/1000)), Jobs: jobs}
}
