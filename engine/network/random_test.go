package network_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"underpaint/engine/network"
)

// Random networks, small enough to enumerate every joint state: the posterior must
// equal enumeration to 1e-12, and the nested form must equal the same network written
// as a general one.

const exact = 1e-12

func properties(t *testing.T, runs int) *gopter.Properties {
	const seed = 19880501
	t.Logf("gopter seed %d", seed)
	parameters := gopter.DefaultTestParametersWithSeed(seed)
	parameters.MinSuccessfulTests = runs
	return gopter.NewProperties(parameters)
}

// weights draws n weights, each zero with chance .15 but never all zero.
func weights(r *rand.Rand, n int) []float64 {
	out := make([]float64, n)
	for slices.Max(out) == 0 {
		for i := range out {
			if out[i] = r.Float64(); r.Float64() < .15 {
				out[i] = 0
			}
		}
	}
	return out
}

func chances(r *rand.Rand, n int) []float64 {
	out, sum := weights(r, n), 0.0
	for _, v := range out {
		sum += v
	}
	for i := range out {
		out[i] /= sum
	}
	return out
}

type general struct {
	net      *network.Net
	names    []string
	levels   []int
	evidence map[string][]float64
}

// randomNet draws a network of the given size with up to three parents each, and
// evidence, hard or soft, on about half the variables.
func randomNet(r *rand.Rand, variables, most int) general {
	g := general{net: network.NewNet(), evidence: map[string][]float64{}}
	for v := range variables {
		name, levels, rows := fmt.Sprint("v", v), 1+r.IntN(most), 1
		var parents []string
		for _, p := range r.Perm(v)[:r.IntN(min(v, 3)+1)] {
			parents, rows = append(parents, g.names[p]), rows*g.levels[p]
		}
		var table []float64
		for range rows {
			table = append(table, chances(r, levels)...)
		}
		if err := g.net.Add(name, levels, parents, table); err != nil {
			panic(err)
		}
		g.names, g.levels = append(g.names, name), append(g.levels, levels)
		if r.IntN(2) == 0 {
			g.evidence[name] = weights(r, levels)
		}
	}
	return g
}

// marginal sums all variables except a and b (which may be the same) out of a full joint
// table.
func (g general) marginal(joint []float64, a, b int) []float64 {
	out := make([]float64, g.levels[a]*g.levels[b])
	if a == b {
		out = out[:g.levels[a]]
	}
	for i, w := range joint {
		state := make([]int, len(g.levels))
		for v, rest := len(g.levels)-1, i; v >= 0; v-- {
			state[v], rest = rest%g.levels[v], rest/g.levels[v]
		}
		if a == b {
			out[state[a]] += w
		} else {
			out[state[a]*g.levels[b]+state[b]] += w
		}
	}
	return out
}

func TestNetEqualsEnumeration(t *testing.T) {
	p, impossible := properties(t, 400), 0
	p.Property("posterior = enumeration", prop.ForAll(func(seed int64, variables, most int) string {
		r := rand.New(rand.NewPCG(uint64(seed), 1))
		g := randomNet(r, variables, most)
		evidence, joint := network.Enumerate(g.net, g.evidence)
		post, err := g.net.Condition(g.evidence)
		if evidence == 0 {
			impossible++
			return expect(err == network.ErrNoSupport, "impossible evidence gave error %v", err)
		}
		if err != nil {
			return err.Error()
		}
		if got := math.Exp(post.LogEvidence()); !(math.Abs(got/evidence-1) <= exact) {
			return fmt.Sprintf("evidence %.17g, enumerated %.17g", got, evidence)
		}
		for a := range g.names {
			b := r.IntN(len(g.names))
			got := post.Marginal(g.names[a])
			if a != b {
				got = post.Joint(g.names[a], g.names[b])
			}
			if why := differ(got, g.marginal(joint, a, b), evidence); why != "" {
				return g.names[a] + " " + g.names[b] + ": " + why
			}
		}
		return ""
	}, gen.Int64(), gen.IntRange(1, 7), gen.IntRange(1, 3)))
	p.TestingRun(t)
	if impossible == 0 {
		t.Error("no random network had impossible evidence: that branch went untested")
	}
}

func expect(ok bool, format string, args ...any) string {
	if ok {
		return ""
	}
	return fmt.Sprintf(format, args...)
}

// differ compares chances with unnormalised weights that add to total.
func differ(got, weights []float64, total float64) string {
	if len(got) != len(weights) {
		return fmt.Sprintf("%d chances, want %d", len(got), len(weights))
	}
	for i, w := range weights {
		if !(math.Abs(got[i]-w/total) <= exact) {
			return fmt.Sprintf("chance %d is %.17g, enumerated %.17g", i, got[i], w/total)
		}
	}
	return ""
}

func TestNestedEqualsEnumerationAndNet(t *testing.T) {
	p, impossible := properties(t, 400), 0
	p.Property("nested = enumeration = general", prop.ForAll(func(seed int64, most int) string {
		n := randomNested(rand.New(rand.NewPCG(uint64(seed), 2)), most)
		post, err := n.Condition()
		all := enumerateNested(n)
		if all.evidence == 0 {
			impossible++
			return expect(err == network.ErrNoSupport && post == nil, "impossible evidence gave %v, error %v", post, err)
		}
		if err != nil {
			return err.Error()
		}
		if got := math.Exp(post.LogEvidence()); !(math.Abs(got/all.evidence-1) <= exact) {
			return fmt.Sprintf("evidence %.17g, enumerated %.17g", got, all.evidence)
		}
		if why := differ(post.Root(), all.root, all.evidence); why != "" {
			return "root: " + why
		}
		net, seen := asNet(n)
		same, err := net.Condition(seen)
		if err != nil {
			return err.Error()
		}
		scale := 0.0
		for _, w := range n.Root {
			scale += w
		}
		if got := same.LogEvidence() + math.Log(scale); !(math.Abs(got-post.LogEvidence()) <= exact*max(1, math.Abs(got))) {
			return fmt.Sprintf("log evidence %.17g, as a general network %.17g", post.LogEvidence(), got)
		}
		for g := range n.Groups {
			for k := range n.Groups[g].Pockets {
				got := levelsTable(n, post, g, k)
				if why := differ(got, all.levels[g][k], all.evidence); why != "" {
					return fmt.Sprintf("group %d pocket %d: %s", g, k, why)
				}
				if why := differ(got, same.Joint("root", groupName(g), pocketName(g, k)), 1); why != "" {
					return fmt.Sprintf("group %d pocket %d as a general network: %s", g, k, why)
				}
			}
		}
		return ""
	}, gen.Int64(), gen.IntRange(1, 3)))
	p.TestingRun(t)
	if impossible == 0 {
		t.Error("no random network had impossible evidence: that branch went untested")
	}
}
