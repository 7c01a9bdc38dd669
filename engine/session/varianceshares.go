package session

import (
	"underpaint/engine/estimate"
)

// What makes a range wide is worked out on walks, a slice at a time (assumption:
// 3200 leave the largest share good to about two in a hundred).
const (
	walksOfSlice = 80
	allWalks     = 3200
	mostCars     = 2048
	mostWorse    = 5
)

// varianceShares is a car whose range is being taken apart.
type varianceShares struct {
	key    string
	stages *stageRanges
	shares *estimate.Shares
	worse  []estimate.PartCost
}

func newVarianceShares(stages *stageRanges, now *stageRun) *varianceShares {
	return &varianceShares{key: stages.key, stages: stages, shares: estimate.NewShares(now.model, stages.priced(), Seed)}
}

// step goes on with more walks, and at last with the parts that could make it worse.
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
