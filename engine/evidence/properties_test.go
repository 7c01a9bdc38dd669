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

// seed makes every run the same; gopter prints it when a property fails.
const seed = 20261125

// visit is what three people found at one item, and what was believed before.
type visit struct {
	body    *car.Body
	item    int
	answers []int // by slot: 0 no look, 1 yes, 2 no, 3 could not
	prior   damage.Likelihood
}

// slot is one look by one person.
type slot struct {
	kind Kind
	by   string
}

func (v visit) slots() (out []slot) {
	for _, k := range Kinds() {
		for _, part := range k.Parts {
			if part == v.body.PartOf(v.item).ID && !k.BySide {
				out = append(out, slot{k, ByShop})
				if k.CustomerCan {
					out = append(out, slot{k, ByCustomer}, slot{k, BySeller})
				}
			}
		}
	}
	return out
}

func (v visit) looks(answers []int) (list []Look) {
	for n, s := range v.slots() {
		if a := answers[n]; a > 0 {
			list = append(list, Look{s.kind.ID, v.body.Items[v.item].ID, [...]string{"", Yes, No, CouldNot}[a], s.by})
		}
	}
	return list
}

// seen is what looks at the one item say of it.
func (v visit) seen(t *testing.T, list []Look, on cover) *damage.Likelihood {
	t.Helper()
	seen, err := FromLooks(v.body, list)
	if err != nil {
		t.Fatal(err)
	}
	if on == freshlyCovered && seen.CoveredItems != nil {
		return seen.CoveredItems[v.item]
	}
	return seen.Items[v.item]
}

// atLeast is the chance of each condition or worse after the looks, from the
// prior by direct summation.
func (v visit) atLeast(t *testing.T, list []Look, on cover) (p [car.Conditions]float64) {
	l := v.seen(t, list, on)
	if l == nil {
		l = damage.NoEvidence()
	}
	sum := 0.0
	for k := range l {
		for f := range l[k] {
			for d := range l[k][f] {
				w := v.prior[k][f][d] * l[k][f][d]
				sum += w
				for c := 0; c <= k; c++ {
					p[c] += w
				}
			}
		}
	}
	for c := range p {
		p[c] /= sum
	}
	return p
}

// with returns the answers with one more, or changed.
func with(answers []int, n, answer int) []int {
	out := append([]int{}, answers...)
	out[n] = answer
	return out
}

// worse says that every chance of p is at least that of q, rounding aside.
func worse(p, q [car.Conditions]float64) bool {
	for c := range p {
		if !(p[c] >= q[c]-1e-12) {
			return false
		}
	}
	return true
}

// slotsMost is above the number of looks that one item can have, three times.
const slotsMost = 40

func genVisit(bodies []*car.Body) gopter.Gen {
	return gopter.CombineGens(gen.IntRange(0, len(bodies)-1), gen.IntRange(0, 1<<30), gen.SliceOfN(slotsMost, gen.IntRange(0, 5)),
		gen.SliceOfN(car.Conditions*int(damage.Findings)*2, gen.Float64Range(-.5, 1))).Map(func(x []any) visit {
		v := visit{body: bodies[x[0].(int)], answers: x[2].([]int)}
		v.item = x[1].(int) % len(v.body.Items)
		for n := range v.answers {
			v.answers[n] %= 4 // 4 and 5 become no look and yes
		}
		for n, w := range x[3].([]float64) {
			if w > 0 { // a third of the prior is ruled out
				v.prior[n/8][n/2%4][n%2] = w * w * w
			}
		}
		v.prior[x[1].(int)%car.Conditions][0][0] += 1e-3 // never nothing at all
		return v
	})
}

func allBodies(t *testing.T) (out []*car.Body) {
	for _, id := range car.BodyIDs {
		out = append(out, load(t, id))
	}
	return out
}

var bothCovers = []cover{asItShows, freshlyCovered}

func TestProperties(t *testing.T) {
	parameters := gopter.DefaultTestParametersWithSeed(seed)
	parameters.MinSuccessfulTests = 3000
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
	all.Property("cover never makes good results count for more, and no bad one count for less", prop.ForAll(
		func(v visit) bool {
			shows, covered := v.seen(t, v.looks(v.answers), asItShows), v.seen(t, v.looks(v.answers), freshlyCovered)
			if shows == nil {
				return covered == nil
			}
			hidden := false
			for n, s := range v.slots() {
				hidden = hidden || v.answers[n] == 2 && hiddenTimes[s.kind.ID] > 0
			}
			if shared := shows == covered; shared == hidden {
				return false
			}
			sane(t, covered)
			for k := 1; k < car.Conditions; k++ {
				if !(covered[k][0][0]/covered[k-1][0][0] >= shows[k][0][0]/shows[k-1][0][0]*(1-1e-12)) {
					return false
				}
			}
			return worse(v.atLeast(t, v.looks(v.answers), freshlyCovered), v.atLeast(t, v.looks(v.answers), asItShows))
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

// No car, however often looked at, comes near the end of the number range: every
// look at every item, all bad, all good, and against a survey that contradicts.
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
