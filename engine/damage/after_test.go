package damage

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/chance"
)

// entries are what was seen, entry by entry: of single items, now and then something
// else where there was something already, with a side or a pair in some of them, and
// with cover that hides some of it.
func entries(t *testing.T, b *car.Body, r *rand.Rand, n int) (out []Known) {
	t.Helper()
	known := Known{Body: b, Histories: salted(t), EarlierWork: "not_sure", Seen: make([]*Likelihood, len(b.Items))}
	for step := range n {
		next := known
		next.Seen = append([]*Likelihood{}, known.Seen...)
		next.Seen[r.IntN(len(b.Items))] = randomLikelihood(r)
		if step > 2 {
			next.Worst = []MaxEvidence{onSide(b, car.Left, gapBad), either(t, b, "drip_rail.left", "drip_rail.right", holeSeen)}
		}
		if step > 4 {
			next.Worst = append(next.Worst, either(t, b, "outer_sill.left", "outer_sill.right", gapGood))
		}
		if step > 5 {
			next.Cover.Seen = append([]*Likelihood{}, next.Seen...)
			next.Cover.Seen[3], next.Cover.Seen[20] = randomLikelihood(r), randomLikelihood(r)
		}
		known = next
		out = append(out, known)
	}
	return out
}

// TestAnEntryAfterAnother: taken from the model before, everything is as from nothing,
// to the bit: chances, evidence, and cars drawn.
func TestAnEntryAfterAnother(t *testing.T) {
	b := body(t, "two_door_unitary")
	r := rand.New(rand.NewPCG(3, 9))
	var last *Model
	kept := 0
	for step, known := range entries(t, b, r, 10) {
		whole, err := New(known, coarse)
		if err != nil {
			t.Fatal(err)
		}
		after, err := NewAfter(known, coarse, last)
		if err != nil {
			t.Fatal(err)
		}
		if a, b := whole.LogEvidence(), after.LogEvidence(); a != b {
			t.Errorf("step %d: log evidence %v from nothing, %v after another", step, a, b)
		}
		if last != nil && after.base == last.base {
			kept++
		}
		want := whole.Chances()
		for i, c := range after.Chances() {
			if c != want[i] {
				t.Fatalf("step %d, %s: %v from nothing, %v after another", step, b.Items[i].ID, want[i], c)
			}
		}
		x, y := whole.NewCar(), after.NewCar()
		for n := range 200 {
			sx, sy := chance.NewStream(1, uint64(n)), chance.NewStream(1, uint64(n))
			whole.Draw(&sx, x)
			after.Draw(&sy, y)
			for i := range x.Condition {
				if x.Condition[i] != y.Condition[i] || x.Finding[i] != y.Finding[i] || x.OwnCause[i] != y.OwnCause[i] {
					t.Fatalf("step %d: cars differ", step)
				}
			}
		}
		last = after
	}
	if kept < 9 {
		t.Errorf("only %d models built on the one before", kept)
	}
}

// TestOnlyTheTouchedGroupIsWorkedOut: after one more entry all groups but one are taken
// over.
func TestOnlyTheTouchedGroupIsWorkedOut(t *testing.T) {
	b := body(t, "two_door_unitary")
	known := Known{Body: b, Histories: salted(t), Seen: make([]*Likelihood, len(b.Items))}
	r := rand.New(rand.NewPCG(3, 10))
	for i := range known.Seen {
		known.Seen[i] = randomLikelihood(r)
	}
	first, err := New(known, coarse)
	if err != nil {
		t.Fatal(err)
	}
	known.Seen = append([]*Likelihood{}, known.Seen...)
	known.Seen[5] = randomLikelihood(r)
	next, err := NewAfter(known, coarse, first)
	if err != nil {
		t.Fatal(err)
	}
	_, same := next.given[0].unchanged(first.given)
	fresh := 0
	for _, s := range same {
		fresh += b2i(!s)
	}
	if fresh != 1 {
		t.Errorf("%d groups are worked out anew", fresh)
	}
}

// TestOnlyTheTouchedPocketIsWorkedOut: in the group of one more entry the sums of all
// pockets but one are taken over, and a car that may be covered makes no others where
// cover changes nothing of what was seen.
func TestOnlyTheTouchedPocketIsWorkedOut(t *testing.T) {
	b := body(t, "two_door_unitary")
	known := Known{Body: b, Histories: salted(t), Seen: make([]*Likelihood, len(b.Items))}
	r := rand.New(rand.NewPCG(3, 12))
	for i := range known.Seen {
		known.Seen[i] = randomLikelihood(r)
	}
	known.Worst = []MaxEvidence{onSide(b, car.Left, gapBad), onSide(b, car.Right, gapGood)}
	const hidden = 3
	entered := known.Worst[0].Items[4] // counts in a side
	known.Cover.Seen = append([]*Likelihood{}, known.Seen...)
	known.Cover.Seen[hidden] = randomLikelihood(r)
	first, err := New(known, coarse)
	if err != nil {
		t.Fatal(err)
	}
	differ := func(x, y *conditioned) (pockets []int) {
		for k := range x.sums {
			if x.sums[k] != y.sums[k] {
				pockets = append(pockets, k)
			}
		}
		return pockets
	}
	of := func(i int) []int { return []int{b.Items[i].Pocket} }
	if got := differ(first.given[0], first.given[1]); !slices.Equal(got, of(hidden)) {
		t.Errorf("pockets %v are worked out twice, expected %v", got, of(hidden))
	}
	known.Seen, known.Cover.Seen = append([]*Likelihood{}, known.Seen...), append([]*Likelihood{}, known.Cover.Seen...)
	known.Seen[entered] = randomLikelihood(r)
	known.Cover.Seen[entered] = known.Seen[entered]
	next, err := NewAfter(known, coarse, first)
	if err != nil {
		t.Fatal(err)
	}
	whole, err := New(known, coarse)
	if err != nil {
		t.Fatal(err)
	}
	for v, c := range next.given {
		if got := differ(first.given[v], c); !slices.Equal(got, of(entered)) {
			t.Errorf("pockets %v are worked out anew, expected %v", got, of(entered))
		}
		if !slices.Equal(c.rootPosterior(), whole.given[v].rootPosterior()) {
			t.Errorf("conditioning %d: root states are not as from nothing", v)
		}
	}
}

// TestSumsOfPockets holds the tabulated sums over a pocket's levels to asking every
// leaf at every state, after a survey of everything.
func TestSumsOfPockets(t *testing.T) {
	for _, id := range []string{"two_door_unitary", "pickup"} {
		b := body(t, id)
		r := rand.New(rand.NewPCG(3, 11))
		known := Known{Body: b, Histories: salted(t), Seen: make([]*Likelihood, len(b.Items))}
		for i := range known.Seen {
			known.Seen[i] = randomLikelihood(r)
			if i%4 == 0 { // nearly a fact, as a record of bare metal is
				for k := range known.Seen[i] {
					if k != i%6 {
						known.Seen[i][k] = [Findings][2]float64{{1e-6, 1e-6}, {1e-6, 1e-6}, {1e-6, 1e-6}, {1e-6, 1e-6}}
					}
				}
			}
		}
		each := StandardGrids
		each.LeafByLeaf = true
		quick, err := New(known, StandardGrids)
		if err != nil {
			t.Fatal(err)
		}
		slow, err := New(known, each)
		if err != nil {
			t.Fatal(err)
		}
		near(t, id+" log evidence", quick.LogEvidence(), slow.LogEvidence(), 1e-5)
		worst, want := 0.0, slow.Chances()
		for i, c := range quick.Chances() {
			for k, p := range c.Condition {
				worst = math.Max(worst, math.Abs(p-want[i].Condition[k]))
			}
		}
		if worst > 2e-7 || worst == 0 {
			t.Errorf("%s: a chance moves by %.3g", id, worst)
		}
		t.Logf("%s: largest move of a chance %.3g", id, worst)
	}
}
