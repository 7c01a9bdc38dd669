package network_test

import (
	"math"
	"strings"
	"testing"

	"underpaint/engine/network"
)

// Input that cannot be used is an error that names the place.

func TestNestedRefuses(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	with := func(change func(n *network.Nested)) network.Nested {
		n := onePocket(fixed(1, .5))
		change(&n)
		return n
	}
	second := func(leaf network.Leaf) network.Nested { return onePocket(fixed(1, .5), leaf) }
	tests := []struct {
		name string
		n    network.Nested
		says string
	}{
		{"no root", network.Nested{}, "root: expected at least one state"},
		{"root NaN", with(func(n *network.Nested) { n.Root = []float64{1, nan} }), "root state 1"},
		{"root negative", with(func(n *network.Nested) { n.Root = []float64{-1} }), "root state 0"},
		{"group without levels", with(func(n *network.Nested) { n.Groups[0].Weights = nil }), "group 0:"},
		{"group all zero", with(func(n *network.Nested) { n.Groups[0].Weights = []float64{0, 0} }), "group 0:"},
		{"pocket infinite", with(func(n *network.Nested) { n.Groups[0].Pockets[0].Weights = []float64{1, inf} }), "group 0, pocket 0:"},
		{"sum infinite", with(func(n *network.Nested) { n.Groups[0].Weights = []float64{1e308, 1e308} }), "group 0:"},
		{"leaf NaN", second(fixed(nan, 1)), "group 0, pocket 0, leaf 1:"},
		{"leaf infinite", second(fixed(1, inf)), "group 0, pocket 0, leaf 1:"},
		{"leaf negative", second(fixed(1, -1)), "group 0, pocket 0, leaf 1:"},
		{"two leaves negative", onePocket(fixed(1, -1), fixed(1, -1)), "group 0, pocket 0, leaf 0:"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			post, err := tt.n.Condition()
			if err == nil || post != nil || !strings.HasPrefix(err.Error(), tt.says) {
				t.Errorf("posterior %v, error %v, want an error that starts %q", post, err, tt.says)
			}
		})
	}
}

func TestNetRefusesVariables(t *testing.T) {
	coin := []float64{.5, .5}
	tests := []struct {
		name, variable string
		levels         int
		parents        []string
		table          []float64
	}{
		{"no name", "", 2, nil, coin},
		{"name taken", "coin", 2, nil, coin},
		{"no levels", "x", 0, nil, nil},
		{"negative levels", "x", -2, nil, coin},
		{"parent unknown", "x", 2, []string{"later"}, []float64{.5, .5, .5, .5}},
		{"its own parent", "x", 2, []string{"x"}, []float64{.5, .5, .5, .5}},
		{"parent twice", "x", 1, []string{"coin", "coin"}, []float64{1, 1, 1, 1}},
		{"table short", "x", 2, []string{"coin"}, coin},
		{"row not 1", "x", 2, nil, []float64{.5, .5 + 2e-9}},
		{"row under 1", "x", 2, nil, []float64{.5, .4}},
		{"chance negative", "x", 2, nil, []float64{-.5, 1.5}},
		{"chance NaN", "x", 2, nil, []float64{math.NaN(), 1}},
		{"far too many cells", "x", 1 << 22, []string{"coin"}, coin},
	}
	for _, tt := range tests {
		n := network.NewNet()
		if err := n.Add("coin", 2, nil, coin); err != nil {
			t.Fatal(err)
		}
		if err := n.Add(tt.variable, tt.levels, tt.parents, tt.table); err == nil {
			t.Errorf("%s: accepted", tt.name)
		}
	}
}

// TestNetNamesTheRow checks that rows are counted from 0 in the order of the table.
func TestNetNamesTheRow(t *testing.T) {
	n := network.NewNet()
	if err := n.Add("die", 3, nil, []float64{.5, .25, .25}); err != nil {
		t.Fatal(err)
	}
	err := n.Add("x", 2, []string{"die"}, []float64{.5, .5, 0, 1, .5, .4})
	if err == nil || !strings.HasSuffix(err.Error(), "in row 2") {
		t.Errorf("the last of three rows adds to .9: error %v, want one that names it", err)
	}
}

func TestNetRefusesEvidence(t *testing.T) {
	n := build(t, burglary)
	for name, evidence := range map[string]map[string][]float64{
		"unknown variable": {"Q": {0, 1}},
		"too few levels":   {"J": {1}},
		"nil":              {"J": nil},
		"NaN":              {"J": {math.NaN(), 1}},
		"negative":         {"J": {-1, 1}},
		"infinite":         {"J": {math.Inf(1), 1}},
	} {
		if post, err := n.Condition(evidence); err == nil || err == network.ErrNoSupport || post != nil {
			t.Errorf("%s: posterior %v, error %v, want an error that names the entry", name, post, err)
		}
	}
}

// A network too entangled for exact elimination is refused, not attempted: 24 coins,
// with a finding on each pair of them, would need 2^24 cells.
func TestNetRefusesTooEntangled(t *testing.T) {
	n := network.NewNet()
	name := func(i int) string { return string(rune('a' + i)) }
	for i := range 24 {
		if err := n.Add(name(i), 2, nil, []float64{.5, .5}); err != nil {
			t.Fatal(err)
		}
	}
	for i := range 24 {
		for j := range i {
			if err := n.Add(name(i)+name(j), 1, []string{name(i), name(j)}, []float64{1, 1, 1, 1}); err != nil {
				t.Fatal(err)
			}
		}
	}
	if _, err := n.Condition(nil); err == nil || !strings.HasPrefix(err.Error(), "network: expected") {
		t.Errorf("error %v, want one that says the network is too entangled", err)
	}
}

func TestJointPanicsOnMistakes(t *testing.T) {
	post, err := build(t, burglary).Condition(nil)
	if err != nil {
		t.Fatal(err)
	}
	for _, names := range [][]string{{"Q"}, {"B", "B"}} {
		func() {
			defer func() {
				if text, _ := recover().(string); !strings.HasPrefix(text, "engine: internal error:") {
					t.Errorf("joint of %v: panic %q", names, text)
				}
			}()
			post.Joint(names...)
		}()
	}
}
