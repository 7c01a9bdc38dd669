package evidence

import (
	"math"

	"underpaint/engine/chance"
	"underpaint/engine/damage"
)

// cover says whether a car is as it shows or was freshly covered: undercoat, recent
// or thick paint.
type cover int

const (
	asItShows cover = iota
	freshlyCovered
)

// coverHides says whether fresh cover could have brought about one of the results.
func coverHides(results []result) bool {
	for _, r := range results {
		if r.ifCovered != 1 {
			return true
		}
	}
	return false
}

// freshUndercoat gathers the answers of all looks for fresh undercoat. They are one
// piece of news of the car, however many parts it was looked for at.
type freshUndercoat struct {
	none, found float64 // the greatest weight with which somebody said so; 0 = nobody
}

// add takes in one answer.
func (u *freshUndercoat) add(r result) {
	if r.yes {
		u.found = math.Max(u.found, r.counts)
	} else {
		u.none = math.Max(u.none, r.counts)
	}
}

// likelihood is what the answers say of the cover. Where some found undercoat and
// others none, it was found: new undercoat on one part is new undercoat on the car,
// and the others looked elsewhere. It then counts by who found it, so that one more
// "none" never speaks for cover.
func (u freshUndercoat) likelihood() (out [2]float64) {
	for v, p := range looks().fresh {
		counts := u.found
		if u.found == 0 {
			counts, p = u.none, 1-p
		}
		out[v] = chance.Exp(float64(counts * chance.Log(p)))
	}
	return out
}

// yesIfCovered is ChanceOfYes at a freshly covered car as it is imagined. What cover
// can hide is a bad result, so the chance of a good one is
//
//	P(no | condition) = P(no | sound) · (P(no | condition) / P(no | sound))^times
//
// with which the log ratios of a good result are those that the likelihood has
// there. Those of a bad result are weaker than the likelihood has them, which takes
// bad results whole.
func (k Kind) yesIfCovered(condition int, f damage.Finding, dent bool) float64 {
	if k.goodIfCovered == 1 {
		return k.ChanceOfYes(condition, f, dent)
	}
	sound := 1 - k.condition[0]
	return 1 - float64(sound*chance.Exp(float64(k.goodIfCovered*chance.Log((1-k.condition[condition])/sound))))
}
