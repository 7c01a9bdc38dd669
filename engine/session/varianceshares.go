package session

import (
	"underpaint/engine/estimate"
)

// We work out what makes a range wide on walks, one slice at a time (assumption: with
// 3200 walks the largest share is accurate to about 2 percentage points).
const (
	walksOfSlice = 80
	allWalks     = 3200
	mostCars     = 2048
	mostWorse    = 5
)

// varianceShares holds a car and the split of its range so far.
type varianceShares struct {
	key    string
	stages *stageRanges
	shares *estimate.Shares
	worse  []estimate.PartCost
}

func newVarianceShares(stages *stageRanges, now *stageRun) *varianceShares {
	return &varianceShares{key: stages.key, stages: stages, shares: estimate.NewShares(now.model, stages.priced(), Seed)}
}

// step adds a slice of walks or, once all are done, finds the parts that could make it
// worse.
func (j *varianceShares) step() State {
	_, now := j.stages.lastTwo()
	if j.shares.Walks() < allWalks {
		j.shares.Add(walksOfSlice)
	} else if j.worse == nil {
		j.worse = estimate.Dearest(now.model, j.stages.priced(), Seed, mostCars)
	}
	if j.worse != nil {
		return Settled
	}
	return Refining
}
