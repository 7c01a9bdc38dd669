package damage

import (
	"math"
	"math/rand/v2"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/exposure"
)

// Every chance of a small network against a sum over all joint states of its shared
// factors, without messages: two groups, three pockets, four items of which two are in
// one pocket, one is a closed box and one a battery tray. The tables are read alike, so
// that the two differ by rounding alone.

const bruteTolerance = 1e-12

// smallBody keeps some items of the two-door.
func smallBody(t *testing.T) *car.Body {
	t.Helper()
	whole := body(t, "two_door_unitary")
	out := &car.Body{ID: "small"}
	at := func(id string, group, pocket int) {
		i, ok := whole.ItemNamed(id)
		if !ok {
			t.Fatalf("no %s", id)
		}
		part := *whole.PartOf(i)
		part.Group = group
		for len(out.Groups) <= group {
			out.Groups = append(out.Groups, car.Group{})
		}
		for len(out.Pockets) <= pocket {
			out.Pockets = append(out.Pockets, car.Pocket{Group: group})
			out.Groups[group].Pockets = append(out.Groups[group].Pockets, len(out.Pockets)-1)
		}
		out.Parts = append(out.Parts, part)
		out.Items = append(out.Items, car.Item{ID: id, Part: len(out.Parts) - 1, Pocket: pocket})
		out.Pockets[pocket].Items = append(out.Pockets[pocket].Items, len(out.Items)-1)
	}
	at("outer_sill.left", 0, 0)
	at("inner_sill.left", 0, 0)
	at("front_floor.left", 0, 1)
	at("battery_tray.whole", 1, 2)
	return out
}

// bruteHistories are two histories of different ages.
func bruteHistories(t *testing.T) (out []exposure.History) {
	t.Helper()
	for n, years := range []float64{30, 42} {
		l, err := exposure.Exact([]exposure.Alternative{{Chance: 1, Periods: []exposure.Period{{Climate: "mild", Years: years, Kept: "garage"}}}}, exposure.Asked{Year: 2026, WorkedIn: 2001})
		if err != nil {
			t.Fatal(err)
		}
		l[0].Weight = []float64{0.3, 0.7}[n]
		out = append(out, l[0])
	}
	return out
}

func randomLikelihood(r *rand.Rand) *Likelihood {
	l := NoEvidence()
	for k := range l {
		for f := range l[k] {
			for d := range l[k][f] {
				l[k][f][d] = math.Pow(10, -4*r.Float64())
			}
		}
	}
	return l
}

// brute sums over all joint states of one conditioning.
func brute(m *Model, v int) (root []float64, chances []Chances, evidence float64) {
	c := m.given[v]
	root, chances = make([]float64, len(c.nested.Root)), make([]Chances, len(m.Body.Items))
	pockets, groups := len(m.Body.Pockets), len(m.Body.Groups)
	state := make([]int, groups+pockets)
	var visit func(at, r int, w float64)
	visit = func(at, r int, w float64) {
		if at < len(state) {
			weights := m.group
			if at >= groups {
				weights = m.pocket
			}
			for n, p := range weights {
				state[at] = n
				visit(at+1, r, w*p)
			}
			return
		}
		level, k, repair := m.split(r)
		joints := make([]Likelihood, len(m.Body.Items))
		for i := range joints {
			pocket := m.Body.Items[i].Pocket
			class := m.class[i]
			luck := m.carTerm[class][k] + m.groupTerm[class][state[m.Body.Pockets[pocket].Group]] + m.sideTerm[class][state[groups+pocket]]
			joints[i] = c.jointAt(i, level, repair, luck)
			sum := 0.0
			for _, p := range joints[i].conditions() {
				sum += p
			}
			w *= sum
			joints[i].normalise()
		}
		root[r] += w
		evidence += w
		for i := range joints {
			one := joints[i].chances()
			chances[i].addTimes(&one, w)
		}
	}
	for r, w := range c.nested.Root {
		visit(0, r, w)
	}
	for r := range root {
		root[r] /= evidence
	}
	for i := range chances {
		one := chances[i]
		chances[i] = Chances{}
		chances[i].addTimes(&one, 1/evidence)
	}
	return root, chances, evidence
}

func TestSmallNetworkAgainstAllStates(t *testing.T) {
	b, histories := smallBody(t), bruteHistories(t)
	grids := Grids{Car: Grid{3, -2, 2}, Group: Grid{3, -2, 2}, Pocket: Grid{4, -2, 4}, LeafByLeaf: true}
	r := rand.New(rand.NewPCG(7, 1))
	for range 3 {
		known := Known{Body: b, Histories: histories, EarlierWork: "stripped_and_restored", Seen: make([]*Likelihood, len(b.Items)),
			Cover: Cover{Answer: "not_sure", Fresh: [2]float64{0.04, 0.70}, Seen: make([]*Likelihood, len(b.Items))}}
		for i := range known.Seen {
			known.Seen[i], known.Cover.Seen[i] = randomLikelihood(r), randomLikelihood(r)
		}
		m, err := New(known, grids)
		if err != nil {
			t.Fatal(err)
		}
		got, state := m.Chances(), m.RepairState()
		var want []Chances
		var wantState [RepairStates]float64
		for v, weight := range []float64{1 - m.Covered(), m.Covered()} {
			root, chances, evidence := brute(m, v)
			near(t, "log evidence", m.given[v].logEvidence(), math.Log(evidence), bruteTolerance*10)
			if want == nil {
				want = make([]Chances, len(chances))
			}
			for i := range chances {
				want[i].addTimes(&chances[i], weight)
			}
			for n, p := range root {
				wantState[n%RepairStates] += weight * p
			}
		}
		for i := range want {
			for k := range want[i].Condition {
				exactly(t, b.Items[i].ID+" "+car.ConditionIDs[k], got[i].Condition[k], want[i].Condition[k])
			}
			for f := range want[i].Finding {
				exactly(t, b.Items[i].ID+" "+FindingIDs[f], got[i].Finding[f], want[i].Finding[f])
			}
			exactly(t, b.Items[i].ID+" dent", got[i].Dent, want[i].Dent)
		}
		for n, p := range wantState {
			exactly(t, RepairStateIDs[n], state[n], p)
		}
	}
}

// exactly allows for rounding, and for reading the same table at places that differ by
// it.
func exactly(t *testing.T, what string, got, want float64) {
	t.Helper()
	if !(math.Abs(got-want) < bruteTolerance) {
		t.Errorf("%s: got %.16f, want %.16f", what, got, want)
	}
}

// TestCoverIsSettledByAnswers: the chance of cover is worked out here from the figures
// of the data file, state by state, and does not move with what else is seen.
func TestCoverIsSettledByAnswers(t *testing.T) {
	b, histories := smallBody(t), bruteHistories(t)
	// Chances by repair state at 30 and 42 years, straight between 15 and 40.
	young, old := [4]float64{.70, .28, .013, .007}, [4]float64{.36, .45, .12, .07}
	answer, cover := [4]float64{.02, .05, .50, .80}, [4]float64{.04, .12, .25, .12}
	all, covered := 0.0, 0.0
	for n, share := range []float64{15.0 / 25, 1} {
		for r := range young {
			w := []float64{.3, .7}[n] * (young[r] + share*(old[r]-young[r])) * answer[r]
			all += w * ((1-cover[r])*.04 + cover[r]*.70)
			covered += w * cover[r] * .70
		}
	}
	known := Known{Body: b, Histories: histories, EarlierWork: "stripped_and_restored", Cover: Cover{Answer: "yes"}}
	m, err := New(known, coarse)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "covered", m.Covered(), covered/all, 1e-12)
	r := rand.New(rand.NewPCG(7, 2))
	known.Seen, known.Cover.Seen = make([]*Likelihood, len(b.Items)), make([]*Likelihood, len(b.Items))
	for i := range known.Seen {
		known.Seen[i], known.Cover.Seen[i] = randomLikelihood(r), randomLikelihood(r)
	}
	seen, err := New(known, coarse)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "covered, with looks", seen.Covered(), m.Covered(), 0)
	if len(seen.given) != 2 {
		t.Errorf("%d conditionings: the comparison says nothing", len(seen.given))
	}
}

// TestCoverThatHidesNothingMakesNoJump: where what was seen counts alike on a covered
// car, both conditionings are one.
func TestCoverThatHidesNothingMakesNoJump(t *testing.T) {
	b, histories, r := smallBody(t), bruteHistories(t), rand.New(rand.NewPCG(7, 3))
	known := Known{Body: b, Histories: histories, Seen: make([]*Likelihood, len(b.Items))}
	for i := range known.Seen {
		known.Seen[i] = randomLikelihood(r)
	}
	one, err := New(known, coarse)
	if err != nil {
		t.Fatal(err)
	}
	known.Cover.Seen = known.Seen
	two, err := New(known, coarse)
	if err != nil {
		t.Fatal(err)
	}
	if len(one.given) != 1 || len(two.given) != 2 {
		t.Fatalf("%d and %d conditionings", len(one.given), len(two.given))
	}
	a := one.Chances()
	for i, c := range two.Chances() {
		for k, p := range c.Condition {
			near(t, b.Items[i].ID, p, a[i].Condition[k], 1e-14)
		}
	}
}
