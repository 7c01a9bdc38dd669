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

// Rules of looks on whole bodies: looks at items, at either of two and at whole
// sides, all through the network. Coarse grids: the rules hold on any.

var few = damage.Grids{Car: damage.Grid{Points: 5, Reach: 3}, Group: damage.Grid{Points: 3, Reach: 2}, Pocket: damage.Grid{Points: 3, Reach: 2}}

func history(t testing.TB, place string) []exposure.Level {
	t.Helper()
	levels, err := exposure.Exact([]exposure.Alternative{{Chance: 1, Periods: []exposure.Period{
		{Climate: place, Years: 12, Kept: "driven_all_year"}, {Climate: place, Years: 40, Kept: "garage"}}}})
	if err != nil {
		t.Fatal(err)
	}
	return levels
}

// places are all places of a body at which a look can be made by somebody.
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

// wholeVisit is a body with looks made all over it, and one more look to be made.
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

func (v wholeVisit) model(t *testing.T, levels []exposure.Level, more ...Look) (*damage.Model, damage.Known) {
	t.Helper()
	seen, err := FromLooks(v.body, append(append([]Look{}, v.list...), more...))
	if err != nil {
		t.Fatal(err)
	}
	known := damage.Known{Body: v.body, Levels: levels, Seen: seen.Items, Worst: seen.Worst}
	m, err := damage.New(known, few)
	if err != nil {
		t.Fatal(err)
	}
	return m, known
}

// holed is the chance that the worst of what a look speaks of is rusted through or
// gone. For several items it comes from the evidence: one more likelihood of 1 where
// so and of 1/2 where not has probability (1 + chance)/2.
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
	known.Worst = append(append([]damage.Worst{}, known.Worst...), damage.Worst{Items: at, Likely: [car.Conditions]float64{.5, .5, .5, .5, 1, 1}})
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
	bodies, levels := allBodies(t), history(t, "salt")
	several := map[bool]int{}
	visits := gopter.CombineGens(gen.IntRange(0, len(bodies)-1), gen.SliceOfN(30, gen.IntRange(0, 1<<30))).Map(func(x []any) wholeVisit {
		return buildVisit(bodies[x[0].(int)], x[1].([]int))
	})
	all.Property("a bad result never makes a hole there less likely, a good one never more likely, and the shop says more than a customer", prop.ForAll(
		func(v wholeVisit) bool {
			kind, _ := KindOf(v.more.Look)
			if kind.AnswersTo != OfCondition {
				return true
			}
			several[kind.BySide || strings.Contains(v.more.On, "either")]++
			with := func(result, by string) float64 {
				l := v.more
				l.Result, l.By = result, by
				m, known := v.model(t, levels, l)
				return holed(t, m, known, l)
			}
			m, known := v.model(t, levels)
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
	if several[true] < 3 || several[false] < 3 {
		t.Errorf("looks at one item %d, at several %d: a branch went untested", several[false], several[true])
	}
}

// answered says whether somebody made the look in question already.
func (v wholeVisit) answered(by string) bool {
	for _, l := range v.list {
		if l.Look == v.more.Look && l.On == v.more.On && l.By == by {
			return true
		}
	}
	return false
}

// Whatever can be entered can be counted: every look at either of two items that a
// body allows, and every look at both sides, all at once.
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
		m, known := v.model(t, history(t, "damp"))
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

// Looks at either side go by hand from the rule in the package comment: two bad
// results of one customer, each weighted by .6, the lesser by .4 more.
func TestEitherByHand(t *testing.T) {
	b := load(t, "hardtop_on_frame")
	list := []Look{{"tap", "inner_sill.either", Yes, ByCustomer}, {"fresh_under", "inner_sill.either", Yes, ByCustomer}, {"tap", "inner_sill.left", No, ByCustomer},
		{"gaps", "left", No, ByShop}, {"fresh_under", "body_mount.either_1", Yes, ByCustomer}}
	seen, err := FromLooks(b, list)
	if err != nil {
		t.Fatal(err)
	}
	if len(seen.Worst) != 3 {
		t.Fatalf("%d places, want 3", len(seen.Worst))
	}
	for _, w := range seen.Worst {
		switch b.Items[w.Items[0]].ID {
		case "inner_sill.left":
			if len(w.Items) == 2 {
				near(t, "sound to light", w.Likely[1]/w.Likely[0], math.Pow(.2/.12, .6)*math.Pow(.27/.25, .6*.4), 1e-12)
				near(t, "rusted through to gone", w.Likely[5]/w.Likely[4], math.Pow(.85/.75, .6)*math.Pow(.5/.45, .6*.4), 1e-12)
			}
		case "body_mount.left_1":
			if b.Items[w.Items[1]].ID != "body_mount.right_1" {
				t.Errorf("either_1 is %s as well", b.Items[w.Items[1]].ID)
			}
			near(t, "one look", w.Likely[5]/w.Likely[0], math.Pow(2, .6), 1e-12)
		}
		if len(w.Items) > 2 {
			near(t, "gaps even", w.Likely[5]/w.Likely[0], .35/.85, 1e-12)
		}
	}
	if i := item(t, b, "inner_sill.left"); seen.Items[i] == nil || seen.Items[item(t, b, "inner_sill.right")] != nil {
		t.Error("the look at one item is not that item's alone")
	}
}
