package session

import (
	"math"
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/estimate"
	"underpaint/engine/evidence"
)

// VarianceShares holds what makes a range wide and what could make it worse.
type VarianceShares struct {
	State       State
	Done, Of    int // walks
	Body        *car.Body
	Known       bool            // there is some variance to split
	Shares      []VarianceShare // those of 2% or more, at most twelve, the largest first
	Rest        float64
	RestPercent int
	WorstSE     float64     // the largest standard error of a share
	Worse       []WorsePart // the parts that cost most extra in the most expensive fifth of cars
}

// VarianceShare is one input of the calculation with its share of the variance.
type VarianceShare struct {
	Input   int // numbered as in package estimate
	Share   float64
	Percent int // rounded so that all add up to 100
}

// WorsePart is a part that could make it worse, and how to find out about it.
type WorsePart struct {
	estimate.PartCost
	Part      *car.Part
	Closed    bool          // it is in a closed box and shows only when that is opened
	Bare      bool          // the metal is bare already
	Check     evidence.Kind // the check that tells most, if Checkable
	Checkable bool
}

// VarianceShares splits the width of the range of a car with one body into its causes.
// Each further call adds more walks.
func (s *Session) VarianceShares(c *carfile.Car) (VarianceShares, error) {
	if s.variance == nil || s.variance.key != string(c.Text()) {
		stages, now, err := s.openNow(c)
		if err != nil {
			return VarianceShares{}, err
		}
		s.variance = newVarianceShares(stages, now)
	}
	j := s.variance
	out := VarianceShares{State: j.step(), Done: j.shares.Walks(), Of: allWalks, Body: j.stages.body}
	out.share(j.shares)
	out.Worse = j.worseParts()
	return out, nil
}

// mostShares is how many causes a reader can take in with the rest (assumption: twelve).
const mostShares = 11

// share lists the largest shares and adds up the rest.
func (v *VarianceShares) share(shares *estimate.Shares) {
	all, variance := shares.Shares()
	order := upTo(len(all))
	sortByFloat(order, func(k int) float64 { return -all[k].Share })
	n := 0
	for n < min(len(order), mostShares) && all[order[n]].Share >= 0.02 {
		n++
	}
	rest, shown := 1.0, make([]float64, n+1)
	for k := range n {
		shown[k] = all[order[k]].Share
		rest -= shown[k]
		v.WorstSE = math.Max(v.WorstSE, all[order[k]].SE)
	}
	shown[n] = math.Max(0, rest)
	whole := WholePercents(shown)
	for k := range n {
		v.Shares = append(v.Shares, VarianceShare{order[k], shown[k], whole[k]})
	}
	v.Rest, v.RestPercent, v.Known = shown[n], whole[n], variance > 0
}

// worseParts returns the parts that cost most extra in the most expensive fifth of cars.
func (j *varianceShares) worseParts() (out []WorsePart) {
	list := slices.Clone(j.worse)
	sortByFloat(list, func(p estimate.PartCost) float64 { return -(p.Dearest - p.All) })
	for _, cost := range list[:min(len(list), mostWorse)] {
		if cost.Dearest <= cost.All {
			break
		}
		p := &j.stages.body.Parts[cost.Part]
		one := WorsePart{PartCost: cost, Part: p, Closed: !p.SeenWhenStripped, Bare: j.stages.car.Begun(carfile.Survey)}
		one.Check, one.Checkable = evidence.BestLook(j.stages.body, p.Items[0])
		out = append(out, one)
	}
	return out
}
