package network_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"underpaint/engine/network"
)

// fixed is a leaf that depends on the pocket's level only.
func fixed(likelihood ...float64) network.Leaf {
	return funcLeaf(func(_, _, q int) float64 { return likelihood[q] })
}

func onePocket(leaves ...network.Leaf) network.Nested {
	return network.Nested{Root: []float64{1}, Groups: []network.Group{{
		Weights: []float64{1},
		Pockets: []network.Pocket{{Weights: []float64{1, 1}, Leaves: leaves}},
	}}}
}

func repeat(n int, leaf network.Leaf) (out []network.Leaf) {
	for range n {
		out = append(out, leaf)
	}
	return out
}

// Even far below the smallest float64, the two levels of a pocket keep the right
// ratio. The expected values are sums of logarithms.
func TestLikelihoodsFarBelowTheSmallestFloat(t *testing.T) {
	tests := []struct {
		name   string
		leaves []network.Leaf
		log    float64 // of the evidence, prior ½ each
		second float64 // chance of level 1
	}{
		{"forty leaves of 1e-300", repeat(40, fixed(1e-300, 3e-300)), math.Log(.5) - 12000*math.Ln10 + 40*math.Log(3), 1},
		{"equal at 1e-9000", repeat(30, fixed(1e-300, 1e-300)), -9000 * math.Ln10, .5},
		{"1 to 3 at 1e-900", append(repeat(3, fixed(1e-300, 1e-300)), fixed(1, 3)), math.Log(2) - 900*math.Ln10, .75},
		{"the level that led is overtaken", append(repeat(2, fixed(1e-200, 1)), repeat(3, fixed(1, 1e-300))...), math.Log(.5) - 400*math.Ln10, 0},
		{"smallest float64 of all", repeat(3, fixed(0x1p-1074, 0x1p-1074)), -3 * 1074 * math.Ln2, .5},
		{"densities far above 1", repeat(9, fixed(1e300, 3e300)), math.Log(.5) + 2700*math.Ln10 + math.Log(1+math.Pow(3, 9)), 1 / (1 + math.Pow(3, -9))},
		{"up after down", append(repeat(4, fixed(1e-250, 2e-250)), repeat(4, fixed(1e250, 1e250))...), math.Log(8.5), 16. / 17},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			post, err := onePocket(tt.leaves...).Condition()
			if err != nil {
				t.Fatal(err)
			}
			near(t, "log evidence", post.LogEvidence(), tt.log, 1e-14*math.Abs(tt.log)+1e-13)
			got := 0.0
			post.Levels(0, 0, func(_, _, q int, w float64) { got += w * float64(q) })
			near(t, "chance of level 1", got, tt.second, 1e-12)
		})
	}
}

// A survey that contradicts the prior everywhere. The log-sum-exp worked out in this
// test puts the log evidence near -650 for the whole car.
func TestLogEvidenceNearMinus650(t *testing.T) {
	root := []float64{.2, .5, .3}
	n := network.Nested{Root: root}
	weight := []float64{1, 2, 1}
	like := func(r, p, q int) float64 { return math.Exp(-11 - float64((r-1)*(p-q)) - .25*float64(r+p+q)) }
	for range 11 {
		n.Groups = append(n.Groups, network.Group{Weights: weight, Pockets: []network.Pocket{
			{Weights: weight, Leaves: repeat(6, funcLeaf(like))},
		}})
	}
	want := make([]float64, len(root))
	for r := range root {
		var byGroup []float64
		for p := range weight {
			for q := range weight {
				byGroup = append(byGroup, math.Log(weight[p]*weight[q]/16)+6*math.Log(like(r, p, q)))
			}
		}
		want[r] = math.Log(root[r]) + 11*logSum(byGroup)
	}
	post, err := n.Condition()
	if err != nil {
		t.Fatal(err)
	}
	all := logSum(want)
	if all > -500 || all < -800 {
		t.Fatalf("the example has log evidence %g, which should be near -650", all)
	}
	near(t, "log evidence", post.LogEvidence(), all, 1e-11)
	for r, w := range want {
		near(t, "chance of root state", post.Root()[r], math.Exp(w-all), 1e-11)
	}
}

func logSum(logs []float64) float64 {
	top, sum := math.Inf(-1), 0.0
	for _, v := range logs {
		top = math.Max(top, v)
	}
	for _, v := range logs {
		sum += math.Exp(v - top)
	}
	return top + math.Log(sum)
}

func TestContradictionIsNoSupport(t *testing.T) {
	rootOnly := onePocket()
	rootOnly.Root = []float64{0, 0}
	twoGroups := network.Nested{Root: []float64{1, 1}, Groups: []network.Group{
		{Weights: []float64{1}, Pockets: []network.Pocket{{Weights: []float64{1}, Leaves: []network.Leaf{funcLeaf(func(r, _, _ int) float64 { return float64(r) })}}}},
		{Weights: []float64{1}, Pockets: []network.Pocket{{Weights: []float64{1}, Leaves: []network.Leaf{funcLeaf(func(r, _, _ int) float64 { return float64(1 - r) })}}}},
	}}
	for name, n := range map[string]network.Nested{
		"two leaves of one pocket": onePocket(fixed(1, 0), fixed(0, 1)),
		"a leaf nothing explains":  onePocket(fixed(0, 0)),
		"no root state left":       rootOnly,
		"two groups":               twoGroups,
	} {
		if post, err := n.Condition(); !errors.Is(err, network.ErrNoSupport) || post != nil {
			t.Errorf("%s: posterior %v, error %v, want ErrNoSupport", name, post, err)
		}
	}
	contradiction := map[string][]float64{"T": {0, 1}, "E": {1, 0}}
	if post, err := build(t, chestClinic).Condition(contradiction); !errors.Is(err, network.ErrNoSupport) || post != nil {
		t.Errorf("general network: posterior %v, error %v, want ErrNoSupport", post, err)
	}
}

// The general network too: 200 findings with a chance of 1e-10 or 3e-10 each.
func TestNetFarBelowTheSmallestFloat(t *testing.T) {
	n, evidence := network.NewNet(), map[string][]float64{}
	if err := n.Add("cause", 2, nil, []float64{.5, .5}); err != nil {
		t.Fatal(err)
	}
	for i := range 200 {
		name := "finding " + string(rune('a'+i%26)) + strings.Repeat("'", i/26)
		chance := []float64{1e-10, 3e-10}
		if i%2 == 1 {
			chance = []float64{3e-10, 1e-10}
		}
		if i == 0 {
			chance[1] = 9e-10
		}
		if err := n.Add(name, 2, []string{"cause"}, []float64{chance[0], 1 - chance[0], chance[1], 1 - chance[1]}); err != nil {
			t.Fatal(err)
		}
		evidence[name] = []float64{1, 0}
	}
	post, err := n.Condition(evidence)
	if err != nil {
		t.Fatal(err)
	}
	// 100 ratios of 3 one way and 100 the other way cancel, except that the first is 9,
	// so the odds are 3 to 1.
	near(t, "chance of the cause", post.Marginal("cause")[1], .75, 1e-12)
	near(t, "log evidence", post.LogEvidence(), math.Log(2)-2000*math.Ln10+100*math.Log(3), 1e-10)
}
