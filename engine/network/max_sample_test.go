package network_test

import (
	"encoding/binary"
	"fmt"
	"hash/fnv"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"underpaint/engine/chance"
	"underpaint/engine/network"
)

// drawnMax is a network with two cross-group nodes and one node within the first group.
// Items a and b, in two pockets of that group, are the members of the node within it,
// and each counts in one cross-group node. Item c, in the second group, also counts in
// the first cross-group node.
type drawnMax struct {
	nested  network.Nested
	worst   network.MaxEvidence
	a, b, c jointMember
}

const drawnLevels = 2

func newDrawnMax(sharp bool) drawnMax {
	r := rand.New(rand.NewPCG(7, 7))
	like := func(rs, ps, qs int) network.Leaf {
		leaf := make(tableLeaf, rs)
		for i := range leaf {
			for range ps {
				leaf[i] = append(leaf[i], weights(r, qs))
			}
		}
		return leaf
	}
	d := drawnMax{nested: network.Nested{Root: []float64{2, 3}, Groups: []network.Group{
		{Weights: []float64{1, 2}, Pockets: []network.Pocket{{Weights: []float64{1, 1}, Leaves: []network.Leaf{like(2, 2, 2)}}, {Weights: []float64{2, 1}}}},
		{Weights: []float64{1, 1}, Pockets: []network.Pocket{{Weights: []float64{1, 3}}}},
	}}}
	item := func(g, k int) jointMember {
		return randomMember(r, d.nested, network.Member{Group: g, Pocket: k, Nodes: []int{0}}, drawnLevels)
	}
	d.a, d.b, d.c = item(0, 0), item(0, 1), item(1, 0)
	if sharp {
		sharpen(d.b)
	}
	d.worst = network.MaxEvidence{Levels: drawnLevels, Likely: [][]float64{{1, .3}, {.1, 1}, {1, .05}}, Within: []int{-1, -1, 0}, Members: []network.Member{
		{Group: 0, Pocket: 0, Nodes: []int{0, 2}, Leaf: twice(d.a)}, {Group: 0, Pocket: 1, Nodes: []int{1, 2}, Leaf: twice(d.b)}, {Group: 1, Pocket: 0, Nodes: []int{0}, Leaf: d.c},
	}}
	return d
}

// sharpen makes an item depend strongly on the group's level and hardly on the root, so
// that code which confuses the two fails within few draws.
func sharpen(m jointMember) {
	for r := range m.chance {
		for p := range m.chance[r] {
			for q, row := range m.chance[r][p] {
				likely := .1 + .8*float64(p)
				row[0], row[1] = likely-.02*float64(q+r), 1-likely+.02*float64(q+r)
			}
		}
	}
}

// twice is an item that is a member of two nodes, with the same level in both.
func twice(m jointMember) jointMember {
	out := jointMember{levels: m.levels, dims: 2}
	for _, byGroup := range m.chance {
		var groups [][][]float64
		for _, byPocket := range byGroup {
			var pockets [][]float64
			for _, row := range byPocket {
				both := make([]float64, m.levels*m.levels)
				for k, v := range row {
					both[k*m.levels+k] = v
				}
				pockets = append(pockets, both)
			}
			groups = append(groups, pockets)
		}
		out.chance = append(out.chance, groups)
	}
	return out
}

// Compares the drawn frequencies of every joint state with enumeration. The shared
// nodes are drawn first, then a and b as one unit, which accounts for the evidence on
// the worse of the two, then c.
func TestMaxSampleFrequencies(t *testing.T) {
	maxFrequencies(t, newDrawnMax(false), 220, 290.556)
	maxFrequencies(t, newDrawnMax(true), 250, 324.832)
}

func maxFrequencies(t *testing.T, d drawnMax, free int, critical float64) {
	t.Helper()
	base, err := d.nested.Condition()
	if err != nil {
		t.Fatal(err)
	}
	post, err := base.ConditionMax(d.worst)
	if err != nil {
		t.Fatal(err)
	}
	all := enumerateMax(d.nested, d.worst)
	var names []string
	for name := range all.all {
		names = append(names, name)
	}
	slices.Sort(names)
	want, index, counts := make([]float64, len(names)), map[string]int{}, make([]int, len(names))
	for i, name := range names {
		want[i], index[name] = all.all[name]/all.evidence, i
	}
	rest := post.Remainder([][]int{{0, 1}, {0}})
	s := chance.NewStream(31, 2)
	var n network.NestedDraw
	for range draws {
		post.Sample(&s, &n)
		a, b, c := d.drawItems(rest, &n, &s)
		name := fmt.Sprint(n.Root, n.P[0], n.Q[0][0], n.Q[0][1], n.P[1], n.Q[1][0], a*drawnLevels+a, b*drawnLevels+b, c)
		i, possible := index[name]
		if !possible {
			t.Fatalf("drew %s, which is impossible", name)
		}
		counts[i]++
	}
	chiSquare(t, counts, want, free, critical)
}

// drawItems draws a and b together and then c.
func (d drawnMax) drawItems(rest *network.Remainder, n *network.NestedDraw, s *chance.Stream) (a, b, c int) {
	pa, pb := d.a.chance[n.Root][n.P[0]][n.Q[0][0]], d.b.chance[n.Root][n.P[0]][n.Q[0][1]]
	pc := d.c.chance[n.Root][n.P[1]][n.Q[1][0]]
	pair := make([]float64, drawnLevels*drawnLevels)
	within, sum := make([]float64, len(pair)), 0.0
	for x := range pa {
		for y := range pb {
			pair[x*drawnLevels+y] = pa[x] * pb[y] * d.worst.Likely[2][max(x, y)]
			sum += pair[x*drawnLevels+y]
		}
	}
	for limit := range within {
		for j, v := range pair {
			if j/drawnLevels <= limit/drawnLevels && j%drawnLevels <= limit%drawnLevels {
				within[limit] += v / sum
			}
		}
	}
	rest.Start([][]float64{within, {pc[0], pc[0] + pc[1]}})
	allow := make([]float64, len(pair))
	rest.Allow(0, allow)
	j := weighted(pair, allow, s.Uniform())
	rest.Drawn(0, j)
	rest.Allow(1, allow[:drawnLevels])
	c = weighted(pc, allow[:drawnLevels], s.Uniform())
	return j / drawnLevels, j % drawnLevels, c
}

func weighted(p, allow []float64, u float64) int {
	sum := 0.0
	for i := range p {
		sum += p[i] * allow[i]
	}
	u *= sum
	last := 0
	for i := range p {
		if v := p[i] * allow[i]; v > 0 {
			last = i
			if u < v {
				return i
			}
			u -= v
		}
	}
	return last
}

// Max nodes do not change how many uniforms a draw takes, and a likelihood that is the
// same at every level changes no draw.
func TestMaxTakesTheSameUniforms(t *testing.T) {
	d := newDrawnMax(false)
	base, err := d.nested.Condition()
	if err != nil {
		t.Fatal(err)
	}
	post, err := base.ConditionMax(d.worst)
	if err != nil {
		t.Fatal(err)
	}
	for s := range d.worst.Likely {
		d.worst.Likely[s] = []float64{.25, .25}
	}
	idle, err := base.ConditionMax(d.worst)
	if err != nil {
		t.Fatal(err)
	}
	sa, sb, sc := chance.NewStream(5, 1), chance.NewStream(5, 1), chance.NewStream(5, 1)
	var a, b, c network.NestedDraw
	moved := 0
	for i := range 2000 {
		base.Sample(&sa, &a)
		post.Sample(&sb, &b)
		idle.Sample(&sc, &c)
		if drawHash(a) != drawHash(b) {
			moved++
		}
		if drawHash(a) != drawHash(c) {
			t.Fatalf("draw %d: %+v, but %+v with a flat likelihood", i, a, c)
		}
	}
	if x, y, z := sa.Uint64(), sb.Uint64(), sc.Uint64(); x != y || x != z {
		t.Error("the streams are no longer in step")
	}
	if moved == 0 || moved == 2000 {
		t.Errorf("max nodes changed %d of 2000 draws: too few to test anything", moved)
	}
}

// After warm-up a draw with max nodes allocates nothing.
func TestMaxSampleAllocatesNothing(t *testing.T) {
	d := newDrawnMax(false)
	base, err := d.nested.Condition()
	if err != nil {
		t.Fatal(err)
	}
	post, err := base.ConditionMax(d.worst)
	if err != nil {
		t.Fatal(err)
	}
	s := chance.NewStream(3, 3)
	var n network.NestedDraw
	for range 1000 {
		post.Sample(&s, &n)
	}
	if got := testing.AllocsPerRun(1000, func() { post.Sample(&s, &n) }); got != 0 {
		t.Errorf("%v allocations a draw, want none", got)
	}
}

// A pocket of two nodes is drawn like two pockets. If its weights are products and each
// leaf depends on one node only, equal streams give equal levels.
func TestPocketOfTwoNodesIsDrawnAsTwo(t *testing.T) {
	first := funcLeaf(func(r, p, q int) float64 { return 1 / float64(1+r+q*p) })
	second := funcLeaf(func(r, p, q int) float64 { return 1 / float64(1+r*q+p) })
	x, y := []float64{1, 0, 2}, []float64{3, 1}
	apart := network.Nested{Root: []float64{1, 2}, Groups: []network.Group{{Weights: []float64{1, 1}, Pockets: []network.Pocket{
		{Weights: x, Leaves: []network.Leaf{first}}, {Weights: y, Leaves: []network.Leaf{second}},
	}}}}
	joint := network.Pocket{Inner: len(y), Leaves: []network.Leaf{funcLeaf(func(r, p, q int) float64 {
		return first(r, p, q/len(y)) * second(r, p, q%len(y))
	})}}
	for _, v := range x {
		for _, w := range y {
			joint.Weights = append(joint.Weights, v*w)
		}
	}
	as := apart
	as.Groups = []network.Group{{Weights: []float64{1, 1}, Pockets: []network.Pocket{joint}}}
	a, b := conditioned(t, apart), conditioned(t, as)
	near(t, "log evidence", b.LogEvidence(), a.LogEvidence(), 1e-14)
	sa, sb := chance.NewStream(4, 4), chance.NewStream(4, 4)
	var da, db network.NestedDraw
	for i := range 5000 {
		a.Sample(&sa, &da)
		b.Sample(&sb, &db)
		if da.Root != db.Root || da.P[0] != db.P[0] || da.Q[0][0] != db.Q[0][0]/len(y) || da.Q[0][1] != db.Q[0][0]%len(y) {
			t.Fatalf("draw %d: %+v as two pockets, %+v as one", i, da, db)
		}
	}
	as.Groups[0].Pockets[0].Inner = 4
	if _, err := as.Condition(); err == nil {
		t.Error("accepted six weights for pairs, with four levels of the second node")
	}
}

// Every build gives the same bits, as for the network without max nodes.
func TestMaxSameBits(t *testing.T) {
	d := newDrawnMax(false)
	base, err := d.nested.Condition()
	if err != nil {
		t.Fatal(err)
	}
	post, err := base.ConditionMax(d.worst)
	if err != nil {
		t.Fatal(err)
	}
	h := fnv.New64a()
	write := func(v uint64) { h.Write(binary.LittleEndian.AppendUint64(nil, v)) }
	write(math.Float64bits(post.LogEvidence()))
	for g := range d.nested.Groups {
		post.Levels(g, 0, func(_, _, _ int, w float64, by [][]float64) {
			write(math.Float64bits(w))
			for _, v := range by[0] {
				write(math.Float64bits(v))
			}
		})
	}
	var n network.NestedDraw
	for s, i := chance.NewStream(6, 6), 0; i < 500; i++ {
		post.Sample(&s, &n)
		write(drawHash(n))
	}
	const recorded = 0xd9ac75f45b2c418b
	if h.Sum64() != recorded {
		t.Errorf("bits hash to %#x, recorded %#x", h.Sum64(), uint64(recorded))
	}
}
