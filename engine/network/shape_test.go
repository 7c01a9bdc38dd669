package network_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"runtime"
	"testing"

	"underpaint/engine/network"
)

// A grid in which each variable depends on its left and upper neighbours has loops
// everywhere, which makes it hard for elimination. Compared with all 2^16 states.
func TestGridEqualsEnumeration(t *testing.T) {
	const side = 4
	var nodes []node
	name := func(i, j int) string { return fmt.Sprint(i, j) }
	for i := range side {
		for j := range side {
			v := node{name: name(i, j), yes: []float64{.3}}
			if i > 0 {
				v.parents, v.yes = append(v.parents, name(i-1, j)), []float64{.2, .6}
			}
			if j > 0 {
				v.parents = append(v.parents, name(i, j-1))
				if v.yes = []float64{.25, .7}; i > 0 {
					v.yes = []float64{.1, .45, .5, .9}
				}
			}
			nodes = append(nodes, v)
		}
	}
	n := build(t, nodes)
	evidence := map[string][]float64{name(3, 3): {0, 1}, name(0, 2): {1, 0}, name(2, 1): {.3, .8}}
	all, joint := network.Enumerate(n, evidence)
	post, err := n.Condition(evidence)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "log evidence", post.LogEvidence(), math.Log(all), 1e-12)
	for v, one := range nodes {
		want := 0.0
		for i, w := range joint {
			if i>>(len(nodes)-1-v)&1 == 1 {
				want += w / all
			}
		}
		near(t, "chance of "+one.name, post.Marginal(one.name)[1], want, 1e-12)
	}
}

// Tables stay as small as the shape allows: a 5 × 5 grid with four levels each can be
// eliminated in tables over at most seven variables, 4^7 cells. Without evidence the
// chances of all states add to 1.
func TestGridOfManyLevels(t *testing.T) {
	const side, levels = 5, 4
	n, r := network.NewNet(), rand.New(rand.NewPCG(5, 5))
	for i := range side * side {
		var parents, table = []string(nil), []float64(nil)
		if i%side > 0 {
			parents = append(parents, fmt.Sprint(i-1))
		}
		if i >= side {
			parents = append(parents, fmt.Sprint(i-side))
		}
		for range []int{1, levels, levels * levels}[len(parents)] {
			table = append(table, chances(r, levels)...)
		}
		if err := n.Add(fmt.Sprint(i), levels, parents, table); err != nil {
			t.Fatal(err)
		}
	}
	post, err := n.Condition(nil)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "log evidence", post.LogEvidence(), 0, 1e-12)
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	post.Marginal("12")
	runtime.ReadMemStats(&after)
	if bytes := after.TotalAlloc - before.TotalAlloc; bytes > 25*2*16*16384 {
		t.Errorf("a marginal took %d bytes, want at most 25 products of 4^7 cells and their sums", bytes)
	}
}

// A chain of 200 links is long but not entangled: the tables keep to four cells, and
// the far end no longer depends on the near one. (A two-state chain that leaves state 0
// with chance .1 and state 1 with .3 has the limit .1 ÷ .4.)
func TestLongChain(t *testing.T) {
	nodes := []node{{"0", nil, []float64{1}}}
	for i := 1; i < 200; i++ {
		nodes = append(nodes, node{fmt.Sprint(i), []string{fmt.Sprint(i - 1)}, []float64{.1, .7}})
	}
	post, err := build(t, nodes).Condition(nil)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "chance at the far end", post.Marginal("199")[1], .25, 1e-12)
	near(t, "chance two links on", post.Marginal("2")[1], .7*.7+.3*.1, 1e-14)
}

// A network and a posterior share no memory with the caller or with each other.
func TestNothingIsShared(t *testing.T) {
	n, table := network.NewNet(), []float64{.25, .75}
	if err := n.Add("first", 2, nil, table); err != nil {
		t.Fatal(err)
	}
	table[0], table[1] = 1, 0
	post, err := n.Condition(nil)
	if err != nil {
		t.Fatal(err)
	}
	if err := n.Add("second", 2, []string{"first"}, []float64{1, 0, 0, 1}); err != nil {
		t.Fatal(err)
	}
	post.Marginal("first")[1] = 7
	near(t, "chance of first", post.Marginal("first")[1], .75, 1e-15)

	nested := onePocket(fixed(1, 3))
	nestedPost := conditioned(t, nested)
	nested.Groups[0].Pockets[0].Weights[0] = 0
	got := 0.0
	nestedPost.Levels(0, 0, func(_, _, q int, w float64) { got += w * float64(q) })
	near(t, "chance of level 1", got, .75, 1e-15)
}
