package network_test

import (
	"hash/fnv"
	"math"
	"testing"

	"underpaint/engine/chance"
	"underpaint/engine/network"
)

// A survey of a whole car: 675 root states, 11 groups of 15 levels, 15 pockets of
// 19 levels with 4 leaves each. Every leaf is a table in one variable, as in the model.

const (
	surveyRoot, surveyP, surveyQ = 675, 15, 19
	surveyPockets, surveyLeaves  = 15, 60
)

type surveyLeaf struct {
	shift float64
	at    []float64 // likelihood at steps of 1/8 from -16
	asked *int
}

var _ network.Leaf = surveyLeaf{}

func (l surveyLeaf) Multiply(r, p int, dst []float64) {
	*l.asked++
	base := l.shift + .54*(float64(r%25)*.58-7) + .33*(float64(p)*.71-5) + .02*float64(r/25)
	for q := range dst {
		x := 8 * (base + .38*(float64(q)*.56-5) + 16)
		n := int(x)
		w := x - float64(n)
		dst[q] *= float64((1-w)*l.at[n]) + float64(w*l.at[n+1])
	}
}

// survey builds the network. All leaves count in asked how often they are asked.
func survey(asked *int) network.Nested {
	even := func(n int, reach float64) (out []float64) {
		for i := range n {
			x := reach * (2*float64(i)/float64(n-1) - 1)
			out = append(out, chance.Exp(-x*x/2))
		}
		return out
	}
	at := make([][]float64, 3)
	for kind := range at {
		for i := range 257 {
			x := float64(i)/8 - 16
			v := .85 * chance.NormalCDF(2*(x-float64(kind))) * chance.NormalCDF(2*(float64(kind)+1.5-x))
			at[kind] = append(at[kind], v+.0005)
		}
	}
	n := network.Nested{}
	car := even(25, 7)
	for r := range surveyRoot {
		n.Root = append(n.Root, car[r%25]*float64(1+r/25%3))
	}
	pockets := []int{2, 2, 1, 1, 2, 1, 1, 2, 1, 1, 1}
	for g, count := range pockets {
		group := network.Group{Weights: even(surveyP, 5)}
		for range count {
			pocket := network.Pocket{Weights: even(surveyQ, 5)}
			for i := range surveyLeaves / surveyPockets {
				pocket.Leaves = append(pocket.Leaves, surveyLeaf{.3*float64(g%4) - .2*float64(i), at[(g+i)%3], asked})
			}
			group.Pockets = append(group.Pockets, pocket)
		}
		n.Groups = append(n.Groups, group)
	}
	return n
}

func conditioned(t testing.TB, n network.Nested) *network.NestedPosterior {
	t.Helper()
	post, err := n.Condition()
	if err != nil {
		t.Fatal(err)
	}
	return post
}

// This bounds the cost of conditioning without a clock: each leaf is asked once per root
// state and group level, and none is asked where there is no evidence.
func TestConditioningAsksEachLeafOnce(t *testing.T) {
	asked := 0
	n := survey(&asked)
	conditioned(t, n)
	if want := surveyRoot * surveyP * surveyLeaves; asked != want {
		t.Errorf("leaves were asked %d times, want %d", asked, want)
	}
	n.Root = append([]float64(nil), n.Root...)
	for r := 1; r < len(n.Root); r++ {
		n.Root[r] = 0
	}
	asked = 0
	conditioned(t, n)
	if want := surveyP * surveyLeaves; asked != want {
		t.Errorf("with one root state possible leaves were asked %d times, want %d", asked, want)
	}
}

// For a network the size of a car, the posterior rows are numbers and add to 1.
func TestSurveyPosteriorAddsToOne(t *testing.T) {
	asked := 0
	post := conditioned(t, survey(&asked))
	sum := 0.0
	for _, w := range post.Root() {
		sum += w
	}
	near(t, "sum over the root", sum, 1, 1e-13)
	sum = 0
	root := make([]float64, surveyRoot)
	post.Levels(4, 1, func(r, _, _ int, w float64) { sum, root[r] = sum+w, root[r]+w })
	near(t, "sum over a pocket", sum, 1, 1e-10)
	for r, w := range post.Root() {
		near(t, "root from a pocket", root[r], w, 1e-12)
	}
}

// After warm-up a draw allocates nothing, and the number of rows kept stays bounded.
func TestSampleAllocatesNothing(t *testing.T) {
	asked := 0
	post := conditioned(t, survey(&asked))
	s := chance.NewStream(3, 3)
	var d network.NestedDraw
	warm := func() { post.Sample(&s, &d) }
	for range 50000 {
		warm()
	}
	if n := testing.AllocsPerRun(5000, warm); n != 0 {
		t.Errorf("%v allocations a draw, want none", n)
	}
	if post.Slots() > 1<<16 {
		t.Errorf("%d rows kept, want at most %d", post.Slots(), 1<<16)
	}
	net, err := build(t, chestClinic).Condition(seen("AD", ""))
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]int{}
	if n := testing.AllocsPerRun(1000, func() { net.Sample(&s, out) }); n != 0 {
		t.Errorf("general: %v allocations a draw, want none", n)
	}
}

// Rows that are dropped and worked out again are the same rows, so draws from a
// posterior that has been used for long equal those from a fresh one.
func TestDrawsDoNotDependOnWhatWasKept(t *testing.T) {
	asked := 0
	n := survey(&asked)
	used, fresh := conditioned(t, n), conditioned(t, n)
	var a, b network.NestedDraw
	for s, i := chance.NewStream(8, 8), 0; i < 20000; i++ {
		used.Sample(&s, &a)
	}
	sa, sb := chance.NewStream(9, 9), chance.NewStream(9, 9)
	for i := range 5000 {
		used.Sample(&sa, &a)
		fresh.Sample(&sb, &b)
		if drawHash(a) != drawHash(b) {
			t.Fatalf("draw %d: %+v from the used posterior, %+v from a fresh one", i, a, b)
		}
	}
}

func drawHash(d network.NestedDraw) uint64 {
	h := fnv.New64a()
	h.Write([]byte{byte(d.Root), byte(d.Root >> 8)})
	for g, p := range d.P {
		h.Write([]byte{byte(p)})
		for _, q := range d.Q[g] {
			h.Write([]byte{byte(q)})
		}
	}
	return h.Sum64()
}

// Every build gives the same bits: these values were recorded on amd64 and the test
// also runs as WebAssembly. They change only if the arithmetic does.
func TestSameBitsOnEveryBuild(t *testing.T) {
	asked := 0
	post := conditioned(t, survey(&asked))
	h := fnv.New64a()
	write := func(v uint64) {
		for i := range 8 {
			h.Write([]byte{byte(v >> (8 * i))})
		}
	}
	write(math.Float64bits(post.LogEvidence()))
	for _, w := range post.Root() {
		write(math.Float64bits(w))
	}
	post.Levels(0, 1, func(_, _, _ int, w float64) { write(math.Float64bits(w)) })
	var d network.NestedDraw
	for s, i := chance.NewStream(6, 6), 0; i < 1000; i++ {
		post.Sample(&s, &d)
		write(drawHash(d))
	}
	const recorded = 0x13deccefee62ec28
	if h.Sum64() != recorded {
		t.Errorf("bits hash to %#x, recorded %#x", h.Sum64(), uint64(recorded))
	}
}

func BenchmarkConditionSurvey(b *testing.B) {
	asked := 0
	n := survey(&asked)
	for b.Loop() {
		conditioned(b, n)
	}
}

func BenchmarkSampleSurvey(b *testing.B) {
	asked := 0
	post := conditioned(b, survey(&asked))
	s := chance.NewStream(1, 1)
	var d network.NestedDraw
	b.ReportAllocs()
	for b.Loop() {
		post.Sample(&s, &d)
	}
}

func BenchmarkLevelsSurvey(b *testing.B) {
	asked := 0
	post := conditioned(b, survey(&asked))
	sum := 0.0
	for b.Loop() {
		post.Levels(4, 1, func(_, _, _ int, w float64) { sum += w })
	}
}

func BenchmarkConditionChestClinic(b *testing.B) {
	n := build(b, chestClinic)
	for b.Loop() {
		if _, err := n.Condition(map[string][]float64{"A": {0, 1}, "D": {0, 1}}); err != nil {
			b.Fatal(err)
		}
	}
}
