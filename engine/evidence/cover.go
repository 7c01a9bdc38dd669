package evidence

import (
	"math"

	"underpaint/engine/chance"
	"underpaint/engine/damage"
)

// cover says whether a car is as it shows or was freshly covered with undercoat or with
// recent or thick paint.
type cover int

const (
	asItShows cover = iota
	freshlyCovered
)

// coverHides reports whether fresh cover could have caused one of the results.
func coverHides(results []result) bool {
	for _, r := range results {
		if r.ifCovered != 1 {
			return true
		}
	}
	return false
}

// freshUndercoat collects the answers of all checks for fresh undercoat. They are a
// single observation of the car, however many parts were checked.
type freshUndercoat struct {
	none, found float64 // the largest weight of anyone who answered so; 0 = nobody
}

// add records one answer.
func (u *freshUndercoat) add(r result) {
	if r.yes {
		u.found = math.Max(u.found, r.counts)
	} else {
		u.none = math.Max(u.none, r.counts)
	}
}

// likelihood is the likelihood of the answers by state of cover. If some people found
// undercoat and others did not, it counts as found: new undercoat on one part is new
// undercoat on the car, and the others checked elsewhere. The weight is then that of
// whoever found it, so that one more "none" is never evidence for cover.
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

// yesIfCovered is ChanceOfYes on a freshly covered simulated car. Cover can only hide a
// bad result, so the chance of a good one is
//
//	P(no | condition) = P(no | sound) · (P(no | condition) / P(no | sound))^times
//
// This gives a good result the same log ratios as in the likelihood for such a car. The
// log ratios of a bad result are smaller than in the likelihood, which counts bad
// results in full.
func (k Kind) yesIfCovered(condition int, f damage.Finding, dent bool) float64 {
	if k.goodIfCovered == 1 {
		return k.ChanceOfYes(condition, f, dent)
	}
	sound := 1 - k.condition[0]
	return 1 - float64(sound*chance.Exp(float64(k.goodIfCovered*chance.Log((1-k.condition[condition])/sound))))
}
