package evidence

import (
	"testing"

	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"

	"underpaint/engine/car"
	"underpaint/engine/damage"
)

// seed makes every run the same. gopter prints it if a property fails.
const seed = 20261125

// visit is the answers of three people on one item, and its prior.
type visit struct {
	body    *car.Body
	item    int
	answers []int // by slot: 0 no check, 1 yes, 2 no, 3 couldn't check
	prior   damage.Likelihood
}

// slot is one check by one person.
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

// seen is the likelihood of the checks on the one item.
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

// atLeast is the chance of each condition or worse after the checks, worked out from the
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

// with returns the answers with one added or changed.
func with(answers []int, n, answer int) []int {
	out := append([]int{}, answers...)
	out[n] = answer
	return out
}

// worse reports whether every chance in p is at least that in q, apart from rounding.
func worse(p, q [car.Conditions]float64) bool {
	for c := range p {
		if !(p[c] >= q[c]-1e-12) {
			return false
		}
	}
	return true
}

// slotsMost is more than three times the number of checks that one item can have.
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
		v.prior[x[1].(int)%car.Conditions][0][0] += 1e-3 // never all zero
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
