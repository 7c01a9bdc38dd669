package pastjobs

import (
	"math"

	"underpaint/engine/carfile"
	"underpaint/engine/chance"
	"underpaint/engine/pastjobs/scores"
	"underpaint/engine/rates"
)

// DoubtTaught is what finished jobs say about the doubt and growth of the figures at one
// stage. It is learnt last, on what the other learned figures leave, so that nothing
// counts twice.
type DoubtTaught struct {
	From    string // the stage: after the survey where enough jobs have one
	Jobs    int
	Was, Is scores.Doubt
}

// LearnDoubt learns from jobs that were worked out again, each by what all the others
// teach. r has the doubt and the growth from which to start.
func LearnDoubt(r *rates.Rates, all []Again) DoubtTaught {
	misses := map[string][]scores.Miss{}
	for _, a := range all {
		for stage, m := range a.misses {
			misses[stage] = append(misses[stage], m)
		}
	}
	out := DoubtTaught{From: carfile.Told}
	if len(misses[carfile.Survey]) >= LeastToUse {
		out.From = carfile.Survey
	}
	out.Jobs = len(misses[out.From])
	out.Was = scores.Doubt{Growth: chance.Log(1 + r.GrowthAllowed(out.From)/100), Shared: r.Doubt.Shared[out.From], Own: r.Doubt.Own[out.From]}
	out.Is = scores.LearnDoubt(out.Was, misses[out.From])
	return out
}

// Own returns what was learnt in the form that a rates file stores, to a tenth of a per
// cent, within the bounds of the file; nil from too few jobs.
func (d DoubtTaught) Own() *rates.OwnDoubt {
	if d.Jobs < LeastToUse {
		return nil
	}
	tenths := func(percent, least, most float64) float64 {
		return max(least, min(most, math.Floor(float64(percent*10)+0.5)/10))
	}
	return &rates.OwnDoubt{
		Growth: tenths(100*(chance.Exp(d.Is.Growth)-1), rates.LeastGrowth, rates.MostGrowth),
		Shared: tenths(100*d.Is.Shared, 100*rates.LeastShared, 100*rates.MostShared) / 100,
		Own:    tenths(100*d.Is.Own, 100*rates.LeastAlone, 100*rates.MostAlone) / 100,
		Jobs:   d.Jobs, From: d.From,
	}
}
