package network_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"underpaint/engine/network"
)

// Max nodes compared with enumeration: the tests multiply out every joint state of root,
// groups, pockets and members and read the likelihood of the worst level directly. They
// share nothing with the code under test.

func TestMaxEqualsEnumeration(t *testing.T) {
	p, impossible, within, both := properties(t, 400), 0, 0, 0
	p.Property("posterior with max nodes = enumeration", prop.ForAll(func(seed int64, most int) string {
		r := rand.New(rand.NewPCG(uint64(seed), 4))
		n := randomNested(r, most)
		w := randomMax(r, n)
		all := enumerateMax(n, w)
		base, err := n.Condition()
		if all.evidence == 0 {
			impossible++
			return expect(err == network.ErrNoSupport, "impossible evidence gave error %v", err)
		}
		if err != nil {
			return err.Error()
		}
		post, err := base.ConditionMax(w)
		if err != nil {
			return err.Error()
		}
		if slices.Max(w.Within) == 0 {
			within++
		}
		if slices.ContainsFunc(w.Members, func(m network.Member) bool { return len(m.Nodes) > 1 }) {
			both++
		}
		if got := math.Exp(post.LogEvidence()); !(math.Abs(got/all.evidence-1) <= exact) {
			return fmt.Sprintf("evidence %.17g, enumerated %.17g", got, all.evidence)
		}
		if why := differ(post.Root(), all.root, all.evidence); why != "" {
			return "root: " + why
		}
		return sameLevels(n, w, post, all)
	}, gen.Int64(), gen.IntRange(1, 3)))
	p.TestingRun(t)
	if impossible == 0 || within == 0 || both == 0 {
		t.Errorf("impossible %d, within a group %d, in several nodes %d: a branch went untested", impossible, within, both)
	}
}

func sameLevels(n network.Nested, w network.MaxEvidence, post *network.MaxPosterior, all maxStates) string {
	for place, want := range all.pocket {
		var members []int
		var got [][]float64
		for m, one := range w.Members {
			if one.Group == place[0] && one.Pocket == place[1] {
				members, got = append(members, m), append(got, make([]float64, len(all.member[m])))
			}
		}
		ps, qs := len(n.Groups[place[0]].Weights), len(n.Groups[place[0]].Pockets[place[1]].Weights)
		level := make([]float64, len(want))
		post.Levels(place[0], place[1], func(r, p, q int, weight float64, byMember [][]float64) {
			at := (r*ps+p)*qs + q
			level[at] += weight
			for n, m := range members {
				for c, v := range byMember[n] {
					got[n][at*len(byMember[n])+c] += v * w.Members[m].Leaf.(jointMember).chance[r][p][q][c]
				}
			}
		})
		if why := differ(level, want, all.evidence); why != "" {
			return fmt.Sprintf("pocket %v: %s", place, why)
		}
		for n, m := range members {
			if why := differ(got[n], all.member[m], all.evidence); why != "" {
				return fmt.Sprintf("member %d: %s", m, why)
			}
		}
	}
	return ""
}

func TestMaxRefuses(t *testing.T) {
	n := evidenced()
	post, err := n.Condition()
	if err != nil {
		t.Fatal(err)
	}
	r := rand.New(rand.NewPCG(1, 1))
	member := func(g, k int, nodes ...int) network.Member {
		one := network.Member{Group: g, Pocket: k, Nodes: nodes}
		one.Leaf = jointMember{}
		return one
	}
	flat := []float64{1, .5}
	for name, w := range map[string]network.MaxEvidence{
		"four cross-group nodes": {Levels: 2, Likely: [][]float64{flat, flat, flat, flat}, Within: []int{-1, -1, -1, -1}},
		"three in a group":       {Levels: 2, Likely: [][]float64{flat, flat, flat}, Within: []int{1, 1, 1}},
		"no place":               {Levels: 2, Likely: [][]float64{flat}},
		"no such group":          {Levels: 2, Likely: [][]float64{flat}, Within: []int{3}},
		"likelihood of zero":     {Levels: 2, Likely: [][]float64{{1, 0}}, Within: []int{-1}},
		"likelihood too small":   {Levels: 2, Likely: [][]float64{{1, 1e-7}}, Within: []int{-1}},
		"not a number":           {Levels: 2, Likely: [][]float64{{1, math.NaN()}}, Within: []int{-1}},
		"without end":            {Levels: 2, Likely: [][]float64{{1, math.Inf(1)}}, Within: []int{-1}},
		"one likelihood short":   {Levels: 3, Likely: [][]float64{flat}, Within: []int{-1}},
		"no levels":              {Likely: [][]float64{{}}, Within: []int{-1}},
		"member of no node":      {Levels: 2, Likely: [][]float64{flat}, Within: []int{-1}, Members: []network.Member{member(0, 0)}},
		"no such node":           {Levels: 2, Likely: [][]float64{flat}, Within: []int{-1}, Members: []network.Member{member(0, 0, 1)}},
		"nodes twice":            {Levels: 2, Likely: [][]float64{flat}, Within: []int{-1}, Members: []network.Member{member(0, 0, 0, 0)}},
		"no such pocket":         {Levels: 2, Likely: [][]float64{flat}, Within: []int{-1}, Members: []network.Member{member(0, 2, 0)}},
		"member outside a node":  {Levels: 2, Likely: [][]float64{flat}, Within: []int{1}, Members: []network.Member{member(0, 0, 0)}},
	} {
		if got, err := post.ConditionMax(w); err == nil || got != nil {
			t.Errorf("%s: got %v, error %v, want a refusal", name, got, err)
		}
	}
	w := randomMax(r, n)
	if _, err := post.ConditionMax(w); err != nil {
		t.Errorf("usable evidence: %v", err)
	}
	for within, most := range map[int]int{-1: network.MostMaxNodes, 1: network.MostMaxNodesWithin} {
		full := network.MaxEvidence{Levels: 2, Likely: slices.Repeat([][]float64{flat}, most), Within: slices.Repeat([]int{within}, most)}
		if _, err := post.ConditionMax(full); err != nil {
			t.Errorf("the greatest allowed number of nodes, within %d: %v", within, err)
		}
	}
}
