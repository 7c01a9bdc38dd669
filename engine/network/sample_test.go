package network_test

import (
	"testing"

	"gonum.org/v1/gonum/stat/distuv"

	"underpaint/engine/chance"
	"underpaint/engine/network"
)

// Drawn frequencies compared with exact chances by Pearson's chi-square, at the upper
// .001 point for the degrees of freedom (any printed table; gonum confirms it below).
// Seeds are fixed, so a run that passes always passes.

const draws = 200000

// chiSquare compares counts with chances. It pools states whose expected count is below
// 5, and fails if an impossible state was drawn.
func chiSquare(t *testing.T, counts []int, chances []float64, degrees int, critical float64) {
	t.Helper()
	near(t, "critical value", critical, distuv.ChiSquared{K: float64(degrees)}.Quantile(.999), .001)
	n := 0
	for _, c := range counts {
		n += c
	}
	sum, cells, poolWant, poolGot := 0.0, 0, 0.0, 0.0
	add := func(got, want float64) {
		sum += (got - want) * (got - want) / want
		cells++
	}
	for i, p := range chances {
		want := p * float64(n)
		switch {
		case p == 0 && counts[i] > 0:
			t.Errorf("state %d is impossible and was drawn %d times", i, counts[i])
		case want < 5:
			poolWant, poolGot = poolWant+want, poolGot+float64(counts[i])
		default:
			add(float64(counts[i]), want)
		}
	}
	if poolWant > 0 {
		add(poolGot, poolWant)
	}
	if cells-1 != degrees {
		t.Fatalf("%d degrees of freedom, the critical value is for %d", cells-1, degrees)
	}
	t.Logf("chi-square %.1f, critical %.3f at %d degrees of freedom", sum, critical, degrees)
	if !(sum < critical) {
		t.Errorf("chi-square %.3f, want below %.3f", sum, critical)
	}
}

func TestNetSampleFrequencies(t *testing.T) {
	n, evidence := build(t, chestClinic), seen("AD", "")
	all, joint := network.Enumerate(n, evidence)
	for i := range joint {
		joint[i] /= all
	}
	post, err := n.Condition(evidence)
	if err != nil {
		t.Fatal(err)
	}
	s, out, counts := chance.NewStream(1988, 1), map[string]int{}, make([]int, len(joint))
	for range draws {
		post.Sample(&s, out)
		cell := 0
		for _, v := range chestClinic {
			cell = cell*2 + out[v.name]
		}
		counts[cell]++
	}
	chiSquare(t, counts, joint, 30, 59.703)
}

// evidenced is a nested network with a little of everything: a group without evidence,
// a pocket without evidence, soft and hard leaves, weights of zero.
func evidenced() network.Nested {
	like := func(a, b float64) network.Leaf {
		return funcLeaf(func(r, p, q int) float64 { return 1 / (1 + a*float64(r*p) + b*float64((q-1)*(q-1))) })
	}
	never := funcLeaf(func(r, p, q int) float64 { return float64(1 - q%2*(r%2)) })
	return network.Nested{Root: []float64{2, 1, 0, 3}, Groups: []network.Group{
		{Weights: []float64{1, 2, 1}, Pockets: []network.Pocket{
			{Weights: []float64{1, 1, 2}, Leaves: []network.Leaf{like(1, 2), like(.5, 0)}},
			{Weights: []float64{3, 0, 1}},
		}},
		{Weights: []float64{1, 1}, Pockets: []network.Pocket{{Weights: []float64{1, 4}}}},
		{Weights: []float64{5, 1}, Pockets: []network.Pocket{{Weights: []float64{1, 1, 1}, Leaves: []network.Leaf{never}}}},
	}}
}

func TestNestedSampleFrequencies(t *testing.T) {
	tests := []struct {
		g, k, degrees int
		critical      float64
	}{
		{0, 0, 26, 54.052},
		{0, 1, 17, 40.790},
		{1, 0, 11, 31.264},
		{2, 0, 13, 34.528},
	}
	n := evidenced()
	for _, tt := range tests {
		post, err := n.Condition()
		if err != nil {
			t.Fatal(err)
		}
		want := levelsTable(n, post, tt.g, tt.k)
		counts := make([]int, len(want))
		ps, qs := len(n.Groups[tt.g].Weights), len(n.Groups[tt.g].Pockets[tt.k].Weights)
		var d network.NestedDraw
		for s, i := chance.NewStream(7, 3), 0; i < draws; i++ {
			post.Sample(&s, &d)
			counts[(d.Root*ps+d.P[tt.g])*qs+d.Q[tt.g][tt.k]]++
		}
		chiSquare(t, counts, want, tt.degrees, tt.critical)
	}
}

// Two pockets of one group depend on each other only through root and group level. The
// draws must have the right joint distribution of both pockets, not only the right
// distribution of each.
func TestNestedSampleKeepsPocketsTogether(t *testing.T) {
	same := funcLeaf(func(_, p, q int) float64 { return float64(1 - (p^q)&1) }) // pocket level = group level
	n := network.Nested{Root: []float64{1}, Groups: []network.Group{{Weights: []float64{1, 3}, Pockets: []network.Pocket{
		{Weights: []float64{1, 1}, Leaves: []network.Leaf{same}}, {Weights: []float64{1, 1}, Leaves: []network.Leaf{same}},
	}}}}
	post, err := n.Condition()
	if err != nil {
		t.Fatal(err)
	}
	var d network.NestedDraw
	s, ones := chance.NewStream(5, 5), 0
	for range draws {
		post.Sample(&s, &d)
		if d.Q[0][0] != d.P[0] || d.Q[0][1] != d.P[0] {
			t.Fatalf("drew group level %d with pockets %v, which must be equal", d.P[0], d.Q[0])
		}
		ones += d.P[0]
	}
	// Binomial, 5 standard errors.
	near(t, "share of level 1", float64(ones)/draws, .75, .0049)
}

// A draw takes one uniform for the root, one per group and one per pocket, with or
// without evidence. A draw from a general network takes one per variable.
func TestSampleTakesOneUniformPerNode(t *testing.T) {
	after := func(uniforms int) uint64 {
		s := chance.NewStream(11, 4)
		for range uniforms {
			s.Uniform()
		}
		return s.Uint64()
	}
	bare := evidenced()
	bare.Groups[0].Pockets[0].Leaves, bare.Groups[2].Pockets[0].Leaves = nil, nil
	for name, n := range map[string]network.Nested{"evidence": evidenced(), "no evidence": bare} {
		post, err := n.Condition()
		if err != nil {
			t.Fatal(err)
		}
		s := chance.NewStream(11, 4)
		post.Sample(&s, &network.NestedDraw{})
		if s.Uint64() != after(1+3+4) {
			t.Errorf("nested, %s: a draw did not take 8 uniforms", name)
		}
	}
	post, err := build(t, chestClinic).Condition(seen("AD", ""))
	if err != nil {
		t.Fatal(err)
	}
	s := chance.NewStream(11, 4)
	post.Sample(&s, map[string]int{})
	if s.Uint64() != after(8) {
		t.Error("general: a draw did not take 8 uniforms")
	}
}

// Evidence on one group leaves the draws of the others unchanged where the root is the
// same (common random numbers).
func TestEqualStreamsDifferOnlyWhereEvidenceDoes(t *testing.T) {
	with := evidenced()
	without := evidenced()
	without.Groups[0].Pockets[0].Leaves = nil
	a, errA := with.Condition()
	b, errB := without.Condition()
	if errA != nil || errB != nil {
		t.Fatal(errA, errB)
	}
	sa, sb := chance.NewStream(2, 9), chance.NewStream(2, 9)
	var da, db network.NestedDraw
	sameRoot, moved := 0, 0
	for range 5000 {
		a.Sample(&sa, &da)
		b.Sample(&sb, &db)
		if da.Q[0][0] != db.Q[0][0] {
			moved++
		}
		if da.Root != db.Root {
			continue
		}
		sameRoot++
		if da.P[1] != db.P[1] || da.Q[1][0] != db.Q[1][0] || da.P[2] != db.P[2] || da.Q[2][0] != db.Q[2][0] || da.Q[0][1] != db.Q[0][1] {
			t.Fatalf("other nodes changed: %+v and %+v", da, db)
		}
	}
	if sameRoot < 2500 || moved == 0 {
		t.Errorf("the root is equal in %d of 5000 draws and evidence changed %d: too few to test anything", sameRoot, moved)
	}
}

// Sample reshapes a draw that was made for another network.
func TestSampleReshapesTheDraw(t *testing.T) {
	n := evidenced()
	post, err := n.Condition()
	if err != nil {
		t.Fatal(err)
	}
	d := network.NestedDraw{P: make([]int, 3), Q: [][]int{{0}, {0}, {0}}}
	s := chance.NewStream(1, 1)
	post.Sample(&s, &d)
	if len(d.Q[0]) != 2 {
		t.Errorf("pockets of group 0: %d, want 2", len(d.Q[0]))
	}
}
