package evidence

import (
	"reflect"
	"testing"

	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"underpaint/engine/car"
	"underpaint/engine/damage"
)

func TestProperties(t *testing.T) {
	parameters := gopter.DefaultTestParametersWithSeed(seed)
	parameters.MinSuccessfulTests = 300
	if *slow {
		parameters.MinSuccessfulTests = 1200
	} else {
		t.Log("not run without -slow: nine hundred visits more")
	}
	all := gopter.NewProperties(parameters)
	visits := genVisit(allBodies(t))
	all.Property("a bad result never makes any condition or worse less likely, a good one never more likely", prop.ForAll(
		func(v visit) bool {
			for n, s := range v.slots() {
				if s.kind.AnswersTo != OfCondition {
					continue
				}
				for _, on := range bothCovers {
					none := v.atLeast(t, v.looks(with(v.answers, n, 0)), on)
					bad := v.atLeast(t, v.looks(with(v.answers, n, 1)), on)
					good := v.atLeast(t, v.looks(with(v.answers, n, 2)), on)
					if !worse(bad, none) || !worse(none, good) {
						return false
					}
				}
			}
			return true
		}, visits))
	all.Property("a customer or a seller never outweighs the shop", prop.ForAll(
		func(v visit) bool {
			for n, s := range v.slots() {
				if s.kind.AnswersTo != OfCondition || s.by == ByShop || s.kind.ID == sellersWord {
					continue
				}
				byShop := n - int(witnessOf(s.by)) // the shop's slot comes first
				nobody := with(with(v.answers, n, 0), byShop, 0)
				for answer := 1; answer <= 2; answer++ {
					for _, on := range bothCovers {
						other := v.atLeast(t, v.looks(with(nobody, n, answer)), on)
						shop := v.atLeast(t, v.looks(with(nobody, byShop, answer)), on)
						if answer == 1 && !worse(shop, other) || answer == 2 && !worse(other, shop) {
							return false
						}
					}
				}
			}
			return true
		}, visits))
	all.Property("there is a version for a covered car where something good can be hidden, and good results never count for more in it", prop.ForAll(
		func(v visit) bool {
			list, hidden := v.looks(v.answers), false
			for _, l := range list {
				hidden = hidden || l.Result == No && hiddenTimes[l.Look] > 0
			}
			seen, err := FromLooks(v.body, list)
			if err != nil || (seen.CoveredItems != nil) != hidden {
				return false
			}
			if !hidden {
				return true
			}
			shows, covered := seen.Items[v.item], seen.CoveredItems[v.item]
			if sane(t, covered); *shows == *covered {
				return false
			}
			for k := 1; k < car.Conditions; k++ {
				if !(covered[k][0][0]/covered[k-1][0][0] >= shows[k][0][0]/shows[k-1][0][0]*(1-1e-12)) {
					return false
				}
			}
			return worse(v.atLeast(t, list, freshlyCovered), v.atLeast(t, list, asItShows))
		}, visits))
	all.Property("the order of the looks changes no digit, could not look changes nothing, no entry is zero", prop.ForAll(
		func(v visit) bool {
			list := v.looks(v.answers)
			var back, tried []Look
			for n := range list {
				l := list[len(list)-1-n]
				back = append(back, l)
				if l.Result != CouldNot {
					tried = append(tried, l)
				}
			}
			a, err := FromLooks(v.body, list)
			b, err2 := FromLooks(v.body, back)
			c, err3 := FromLooks(v.body, tried)
			if err != nil || err2 != nil || err3 != nil {
				return false
			}
			if len(tried) > 0 {
				sane(t, a.Items[v.item])
			}
			return reflect.DeepEqual(a, b) && reflect.DeepEqual(a, c)
		}, visits))
	all.Property("joined with the survey nothing is zero and the survey's own ratios are kept", prop.ForAll(
		func(v visit, condition, finding int) bool {
			seen, err := FromLooks(v.body, v.looks(v.answers))
			read, err2 := Reading(v.body.PartOf(v.item), SurveyEntry{Condition: car.ConditionIDs[condition], Finding: damage.FindingIDs[finding]})
			if err != nil || err2 != nil {
				return false
			}
			j, looks := Joined(seen.Items[v.item], read), seen.Items[v.item]
			sane(t, j)
			if looks == nil {
				looks = damage.NoEvidence()
			}
			got := j[5][1][1] / j[0][0][0] * (looks[0][0][0] / looks[5][1][1])
			want := read[5][1][1] / read[0][0][0]
			return got > want*(1-1e-12) && got < want*(1+1e-12)
		}, visits, gen.IntRange(0, car.Conditions-1), gen.IntRange(0, int(damage.Findings)-1)))
	all.TestingRun(t)
}

// However many checks there are, likelihoods stay far from the limits of float64: every
// check on every item, all bad, all good, and with a survey that contradicts them.
func TestExtremes(t *testing.T) {
	for _, b := range allBodies(t) {
		for i := range b.Items {
			v := visit{body: b, item: i}
			for answer := 1; answer <= 2; answer++ {
				answers := make([]int, slotsMost)
				for n := range answers {
					answers[n] = answer
				}
				list := v.looks(answers)
				read, err := Reading(b.PartOf(i), SurveyEntry{Condition: car.ConditionIDs[5*(answer-1)]})
				if err != nil {
					t.Fatal(err)
				}
				for _, on := range bothCovers {
					l := v.seen(t, list, on)
					sane(t, l)
					sane(t, Joined(l, read))
					for k := range l {
						if l[k][0][0] < 1e-30 {
							t.Errorf("%s: %g", b.Items[i].ID, l[k][0][0])
						}
					}
				}
			}
		}
	}
}
