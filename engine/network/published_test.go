package network_test

import (
	"math"
	"testing"

	"underpaint/engine/network"
)

// Published posteriors of four networks that most textbooks use. Where only a rounded
// figure is in print, the exact fraction was worked out from the printed tables with
// rational arithmetic, outside this project.

// node is one variable of a network in a test.
type node struct {
	name    string
	parents []string
	yes     []float64 // chance of level 1 for each row of the parents, level 0 first
}

func build(t testing.TB, nodes []node) *network.Net {
	t.Helper()
	n := network.NewNet()
	for _, v := range nodes {
		var table []float64
		for _, p := range v.yes {
			table = append(table, 1-p, p)
		}
		if err := n.Add(v.name, 2, v.parents, table); err != nil {
			t.Fatal(err)
		}
	}
	return n
}

// chestClinic: S. L. Lauritzen & D. J. Spiegelhalter, "Local computations with
// probabilities on graphical structures and their application to expert systems",
// J. R. Statist. Soc. B 50, 1988; tables as reprinted in the vignette of the R
// package gRain. A visit to Asia, T tuberculosis, S smoking, L lung cancer,
// B bronchitis, E either T or L, X X-ray, D dyspnoea.
var chestClinic = []node{
	{"A", nil, []float64{.01}},
	{"T", []string{"A"}, []float64{.01, .05}},
	{"S", nil, []float64{.5}},
	{"L", []string{"S"}, []float64{.01, .1}},
	{"B", []string{"S"}, []float64{.3, .6}},
	{"E", []string{"T", "L"}, []float64{0, 1, 1, 1}},
	{"X", []string{"E"}, []float64{.05, .98}},
	{"D", []string{"B", "E"}, []float64{.1, .7, .8, .9}},
}

// burglary: S. Russell & P. Norvig, "Artificial Intelligence: A Modern Approach"
// (tables from memory; .284 for B given J and M is printed there).
var burglary = []node{
	{"B", nil, []float64{.001}},
	{"E", nil, []float64{.002}},
	{"A", []string{"B", "E"}, []float64{.001, .29, .94, .95}},
	{"J", []string{"A"}, []float64{.05, .9}},
	{"M", []string{"A"}, []float64{.01, .7}},
}

// sprinkler: K. Murphy, "A brief introduction to graphical models and Bayesian
// networks", 1998 (tables from memory; .430 and .708 are printed there).
var sprinkler = []node{
	{"C", nil, []float64{.5}},
	{"S", []string{"C"}, []float64{.5, .1}},
	{"R", []string{"C"}, []float64{.2, .8}},
	{"W", []string{"S", "R"}, []float64{0, .9, .9, .99}},
}

// wetGrass: the two-cause variant in the source of the R package gRain.
var wetGrass = []node{
	{"R", nil, []float64{.2}},
	{"S", []string{"R"}, []float64{.4, .01}},
	{"G", []string{"S", "R"}, []float64{0, .8, .9, .99}},
}

// fever: a noisy-OR of cold, flu and malaria, which fail to cause it with chance
// .6, .2, .1 (Russell & Norvig, table of the noisy-OR). The priors are an assumption.
var fever = []node{
	{"C", nil, []float64{.1}},
	{"F", nil, []float64{.05}},
	{"M", nil, []float64{.01}},
	{"V", []string{"C", "F", "M"}, []float64{0, .9, .8, .98, .4, .94, .88, .988}},
}

func TestPublishedPosteriors(t *testing.T) {
	tests := []struct {
		net      string
		nodes    []node
		yes, no  string // variables observed at 1 and at 0, one letter each
		evidence float64
		want     map[string]float64
		within   float64
	}{
		{"chest clinic", chestClinic, "", "", 1, map[string]float64{"T": .0104, "L": .055, "B": .45}, 1e-12},
		{"chest clinic", chestClinic, "AD", "", 36011. / 8e6, map[string]float64{"T": 3160. / 36011, "L": 3584. / 36011, "B": 146097. / 180055}, 1e-12},
		{"chest clinic", chestClinic, "X", "", .11029004, map[string]float64{"T": .0924108832, "L": .4887114013, "B": .5063261560}, 1e-10},
		{"chest clinic", chestClinic, "D", "", .4359706, map[string]float64{"T": .0188453075, "L": .1027592228, "B": .8339673363}, 1e-10},
		{"chest clinic", chestClinic, "XD", "", .0706701044, map[string]float64{"T": .1139333254, "L": .6212527967, "B": .6818685385}, 1e-10},
		{"chest clinic", chestClinic, "ADX", "", .0009882268, map[string]float64{"T": .3917117200, "L": .4442705078, "B": .6288217760}, 1e-10},
		{"chest clinic", chestClinic, "AD", "X", .0035131483, map[string]float64{"T": .0022486953, "L": .0025504190, "B": .8627607730}, 1e-10},
		{"chest clinic", chestClinic, "SX", "", .0758524, map[string]float64{"T": .0671831082, "L": .6459914255, "B": .6}, 1e-10},
		{"chest clinic", chestClinic, "ADX", "S", .0002944667, map[string]float64{"T": .6323294566, "L": .1264658913, "B": .4589601373}, 1e-10},
		{"burglary", burglary, "JM", "", .0020841002, map[string]float64{"B": .2841718354, "E": .1760668384, "A": .7606920389}, 1e-10},
		{"burglary", burglary, "J", "", .0521389757, map[string]float64{"B": .0162837299}, 1e-10},
		{"burglary", burglary, "A", "", .002516442, map[string]float64{"B": .3735512283}, 1e-10},
		{"burglary", burglary, "AE", "", .00058132, map[string]float64{"B": .0032684236}, 1e-10},
		{"burglary", burglary, "JMA", "BE", .00062811126, map[string]float64{"A": 1, "B": 0}, 1e-12},
		{"sprinkler", sprinkler, "W", "", .6471, map[string]float64{"S": 309. / 719, "R": 509. / 719}, 1e-12},
		{"sprinkler", sprinkler, "WR", "", .4581, map[string]float64{"S": .1944990177}, 1e-10},
		{"wet grass", wetGrass, "G", "", .44838, map[string]float64{"R": 891. / 2491}, 1e-12},
		{"fever", fever, "V", "", .0866944, map[string]float64{"C": .4950538904, "F": .4670013288, "M": .1047172597}, 1e-10},
		{"fever", fever, "VF", "", .0404864, map[string]float64{"C": .1088118479, "M": .0121127095}, 1e-10},
	}
	for _, tt := range tests {
		t.Run(tt.net+" "+tt.yes+" not "+tt.no, func(t *testing.T) {
			post, err := build(t, tt.nodes).Condition(seen(tt.yes, tt.no))
			if err != nil {
				t.Fatal(err)
			}
			near(t, "chance of the evidence", math.Exp(post.LogEvidence()), tt.evidence, tt.within)
			for name, want := range tt.want {
				near(t, "chance of "+name, post.Marginal(name)[1], want, tt.within)
			}
		})
	}
}

// seen is the evidence that the variables in yes are at level 1 and those in no at
// level 0, one letter each.
func seen(yes, no string) map[string][]float64 {
	out := map[string][]float64{}
	for _, v := range yes {
		out[string(v)] = []float64{0, 1}
	}
	for _, v := range no {
		out[string(v)] = []float64{1, 0}
	}
	return out
}

func near(t testing.TB, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s = %.15g, want %.15g within %g", what, got, want, within)
	}
}

// Findings that are not made yet cannot change the mean. Over the four outcomes of X-ray
// and dyspnoea the chance of lung cancer averages to the prior .055, and the remaining
// variance averages to .4848538155 of the prior's (laws of total probability and total
// variance; figures by rational arithmetic).
func TestFindingsConserveTheMeanAndNarrow(t *testing.T) {
	n := build(t, chestClinic)
	mean, left := 0.0, 0.0
	for _, outcome := range [][2]string{{"XD", ""}, {"X", "D"}, {"D", "X"}, {"", "XD"}} {
		post, err := n.Condition(seen(outcome[0], outcome[1]))
		if err != nil {
			t.Fatal(err)
		}
		chance, l := math.Exp(post.LogEvidence()), post.Marginal("L")[1]
		mean += chance * l
		left += chance * l * (1 - l)
	}
	near(t, "mean of the posteriors", mean, .055, 1e-12)
	near(t, "variance left", left/(.055*.945), .4848538155, 1e-10)
}

// The joint of burglary and alarm given both calls, compared with the definition.
// P(B, A | J, M) by hand is .001 (.002·.95 + .998·.94)·.9·.7 ÷ .0020841002.
func TestJointOfAPair(t *testing.T) {
	post, err := build(t, burglary).Condition(seen("JM", ""))
	if err != nil {
		t.Fatal(err)
	}
	evidence := math.Exp(post.LogEvidence())
	ab, ba := post.Joint("A", "B"), post.Joint("B", "A")
	near(t, "P(A, B)", ab[3], .001*(.002*.95+.998*.94)*.9*.7/evidence, 1e-14)
	near(t, "P(not A, B)", ab[1], .001*(.002*.05+.998*.06)*.05*.01/evidence, 1e-14)
	if ab[1] != ba[2] || ab[2] != ba[1] {
		t.Errorf("joint of A, B is %v and of B, A %v: one is not the transpose of the other", ab, ba)
	}
}
