package evidence

import (
	"math"
	"strings"
	"testing"

	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"underpaint/engine/car"
	"underpaint/engine/damage"
	"underpaint/engine/exposure"
)

// Rules for checks on whole bodies, worked out through the network: checks on items, on
// either of two items and on whole sides. The grids are coarse, because the rules hold
// on any grid.

var few = damage.Grids{Car: damage.Grid{Points: 5, Low: -3, High: 3}, Group: damage.Grid{Points: 3, Low: -2, High: 2}, Pocket: damage.Grid{Points: 3, Low: -2, High: 2}}

func history(t testing.TB, place string) []exposure.History {
	t.Helper()
	histories, err := exposure.Exact([]exposure.Alternative{{Chance: 1, Periods: []exposure.Period{
		{Climate: place, Years: 12, Kept: "driven_all_year"}, {Climate: place, Years: 40, Kept: "garage"}}}}, exposure.Asked{Year: 2026})
	if err != nil {
		t.Fatal(err)
	}
	return histories
}

// places are all places of a body where the given person can make a check.
func places(b *car.Body, k Kind, by string) (out []string) {
	if k.BySide {
		return []string{"left", "right"}
	}
	for _, i := range Items(b, k.ID) {
		id := b.Items[i].ID
		out = append(out, id)
		if at := strings.LastIndexByte(id, '.'); by == ByCustomer && k.AnswersTo == OfCondition && strings.Contains(id[at:], "left") {
			out = append(out, id[:at]+strings.Replace(id[at:], "left", "either", 1))
		}
	}
	return out
}

// wholeVisit is a body with checks made all over it, and one more check to make.
type wholeVisit struct {
	body *car.Body
	list []Look
	more Look
}

// build makes a visit of numbers: three for each look.
func buildVisit(b *car.Body, numbers []int) (v wholeVisit) {
	v.body = b
	taken := map[Look]bool{}
	kinds := Kinds()
	for n := 0; n+3 <= len(numbers); n += 3 {
		k := kinds[numbers[n]%len(kinds)]
		by := ByShop
		if k.CustomerCan && numbers[n+2]%2 == 0 {
			by = ByCustomer
		}
		at := places(b, k, by)
		if len(at) == 0 {
			continue
		}
		l := Look{k.ID, at[numbers[n+1]%len(at)], [...]string{Yes, No, CouldNot}[numbers[n+2]/2%3], by}
		same := l
		same.Result = ""
		if taken[same] {
			continue
		}
		taken[same] = true
		v.list = append(v.list, l)
	}
	if last := len(v.list) - 1; last >= 0 {
		v.list, v.more = v.list[:last], v.list[last]
	}
	return v
}

func (v wholeVisit) model(t *testing.T, histories []exposure.History, on cover, more ...Look) (*damage.Model, damage.Known) {
	t.Helper()
	seen, err := FromLooks(v.body, append(append([]Look{}, v.list...), more...))
	if err != nil {
		t.Fatal(err)
	}
	known := damage.Known{Body: v.body, Histories: histories, Seen: seen.Items, Worst: seen.Worst}
	if on == freshlyCovered && seen.CoveredItems != nil {
		known.Seen, known.Worst = seen.CoveredItems, seen.CoveredWorst
	}
	m, err := damage.New(known, few)
	if err != nil {
		t.Fatal(err)
	}
	return m, known
}

// holed is the chance that the worst item a check is evidence on is rusted through or
// gone. For several items it comes from the evidence: an additional likelihood of 1 if
// so and 1/2 if not has probability (1 + chance)/2.
func holed(t *testing.T, m *damage.Model, known damage.Known, l Look) float64 {
	t.Helper()
	kind, at, err := check(known.Body, 0, l)
	if err != nil {
		t.Fatal(err)
	}
	chances := m.Chances()
	for i, c := range chances {
		for _, v := range append(append(c.Condition[:], c.Finding[:]...), c.Dent) {
			if !(v >= 0 && v <= 1+1e-9) {
				t.Fatalf("%s: chance %v", known.Body.Items[i].ID, v)
			}
		}
	}
	if !kind.BySide && len(at) == 1 {
		return chances[at[0]].Holed()
	}
	known.Worst = append(append([]damage.MaxEvidence{}, known.Worst...), damage.MaxEvidence{Items: at, Likely: [car.Conditions]float64{.5, .5, .5, .5, 1, 1}})
	more, err := damage.New(known, few)
	if err != nil {
		t.Fatal(err)
	}
	return 2*math.Exp(more.LogEvidence()-m.LogEvidence()) - 1
}

func TestWholeBodies(t *testing.T) {
	parameters := gopter.DefaultTestParametersWithSeed(seed)
	parameters.MinSuccessfulTests = 25
	all := gopter.NewProperties(parameters)
	bodies, histories := allBodies(t), history(t, "salt")
	several, hidden := map[bool]int{}, 0
	visits := gopter.CombineGens(gen.IntRange(0, len(bodies)-1), gen.SliceOfN(30, gen.IntRange(0, 1<<30))).Map(func(x []any) wholeVisit {
		return buildVisit(bodies[x[0].(int)], x[1].([]int))
	})
	all.Property("a bad result never makes a hole there less likely, a good one never more likely, and the shop says more than a customer, on a car in either state of cover", prop.ForAll(
		func(v wholeVisit) bool {
			kind, _ := KindOf(v.more.Look)
			if kind.AnswersTo != OfCondition {
				return true
			}
			several[kind.BySide || strings.Contains(v.more.On, "either")]++
			on := cover(len(v.list) % 2) // both states come up about equally often
			if on == freshlyCovered && hiddenTimes[kind.ID] > 0 {
				hidden++
			}
			with := func(result, by string) float64 {
				l := v.more
				l.Result, l.By = result, by
				m, known := v.model(t, histories, on, l)
				return holed(t, m, known, l)
			}
			m, known := v.model(t, histories, on)
			none := holed(t, m, known, v.more)
			bad, good := with(Yes, v.more.By), with(No, v.more.By)
			if !(bad >= none-1e-9 && good <= none+1e-9 && bad > good+1e-6) {
				return false
			}
			by := ByCustomer
			if v.more.By == ByCustomer {
				by = ByShop
			}
			if kind.ID == sellersWord || !kind.CustomerCan || strings.Contains(v.more.On, "either") || v.answered(by) {
				return true
			}
			otherBad, otherGood := with(Yes, by), with(No, by)
			if by == ByCustomer {
				return otherBad <= bad+1e-9 && otherGood >= good-1e-9
			}
			return bad <= otherBad+1e-9 && good >= otherGood-1e-9
		}, visits))
	all.TestingRun(t)
	if several[true] < 3 || several[false] < 3 || hidden < 3 {
		t.Errorf("checks on one item %d, on several %d, on a covered car %d: a branch went untested", several[false], several[true], hidden)
	}
}

// answered reports whether the given person has already made the check in question.
func (v wholeVisit) answered(by string) bool {
	for _, l := range v.list {
		if l.Look == v.more.Look && l.On == v.more.On && l.By == by {
			return true
		}
	}
	return false
}

// Every valid input can be worked out: every check on either of two items that a body
// allows, and every check of both sides, all at once.
func TestEverythingAtOnce(t *testing.T) {
	for _, b := range allBodies(t) {
		var list []Look
		pairs := map[string]bool{}
		for _, k := range Kinds() {
			by := ByCustomer
			if !k.CustomerCan {
				by = ByShop
			}
			for _, on := range places(b, k, by) {
				if either := strings.Contains(on, "either"); either || k.BySide {
					list = append(list, Look{k.ID, on, [...]string{Yes, No}[len(list)%2], by})
					pairs[on] = pairs[on] || either
				}
			}
		}
		v := wholeVisit{body: b, list: list}
		m, known := v.model(t, history(t, "damp"), freshlyCovered)
		if len(known.Worst) != len(pairs) || len(pairs) < 20 {
			t.Errorf("%s: %d places, %d likelihoods", b.ID, len(pairs), len(known.Worst))
		}
		for i, c := range m.Chances() {
			sum := 0.0
			for _, v := range c.Condition {
				sum += v
			}
			near(t, b.Items[i].ID, sum, 1, 1e-7)
		}
	}
}
