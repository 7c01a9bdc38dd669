package network

import (
	"errors"
	"slices"
	"strconv"
)

// Net is a small discrete Bayesian network of any shape, built parents first.
type Net struct {
	variables []variable
	index     map[string]int
}

type variable struct {
	name    string
	levels  int
	parents []int
	table   []float64
}

const (
	mostCells = 1 << 22 // in one table; 64 MB
	rowSlack  = 1e-9    // a row may differ from 1 by this much, to allow for thirds typed by hand
)

// NewNet returns a network without variables.
func NewNet() *Net { return &Net{index: map[string]int{}} }

// Add adds a variable with levels 0 to levels-1. Its parents must have been added
// before, so the network has no cycle. The table holds the conditional chances
// row-major: parents in the order given, the variable's own levels last. Each row adds
// to 1. An error names the variable and what was expected.
func (n *Net) Add(name string, levels int, parents []string, table []float64) error {
	complain := func(expected string) error {
		return errors.New("variable " + strconv.Quote(name) + ": expected " + expected)
	}
	if _, taken := n.index[name]; taken || name == "" {
		return complain("a name that is not empty and not already taken")
	}
	if levels < 1 || levels > mostCells {
		return complain("1 to " + strconv.Itoa(mostCells) + " levels")
	}
	v := variable{name: name, levels: levels, table: slices.Clone(table)}
	cells := levels
	for _, parent := range parents {
		i, known := n.index[parent]
		if !known || slices.Contains(v.parents, i) {
			return complain("parents added before it, each named once, not " + strconv.Quote(parent))
		}
		v.parents = append(v.parents, i)
		if cells *= n.variables[i].levels; cells > mostCells {
			return complain("a table of at most " + strconv.Itoa(mostCells) + " cells")
		}
	}
	if len(table) != cells {
		return complain("a table of " + strconv.Itoa(cells) + " cells, not " + strconv.Itoa(len(table)))
	}
	for at := 0; at < cells; at += levels {
		if !addsToOne(table[at : at+levels]) {
			return complain("chances that add to 1 in row " + strconv.Itoa(at/levels))
		}
	}
	n.index[name] = len(n.variables)
	n.variables = append(n.variables, v)
	return nil
}

func addsToOne(row []float64) bool {
	sum := 0.0
	for _, v := range row {
		if !usable(v) {
			return false
		}
		sum += v
	}
	return sum >= 1-rowSlack && sum <= 1+rowSlack
}

// Condition conditions the network on evidence: for each variable named, the likelihood
// of the evidence at each of its levels (1 and 0 when the level itself was observed).
// The error is [ErrNoSupport], or names the entry that cannot be used. Variables added
// to the network later do not affect the posterior.
func (n *Net) Condition(likelihood map[string][]float64) (*Posterior, error) {
	if err := n.check(likelihood); err != nil {
		return nil, err
	}
	post := &Posterior{variables: n.variables, index: make(map[string]int, len(n.index))}
	for i, v := range n.variables {
		post.index[v.name] = i
		post.factors = append(post.factors, n.factor(i, likelihood[v.name]))
	}
	order, ok := post.order(nil)
	if !ok {
		return nil, errors.New("network: expected one that can be eliminated in tables of at most " + strconv.Itoa(mostCells) + " cells")
	}
	post.evidence = post.eliminate(order)
	if post.evidence.zero() {
		return nil, ErrNoSupport
	}
	post.state, post.uniform = make([]int, len(n.variables)), make([]float64, len(n.variables))
	return post, nil
}

// check validates the evidence in the order of the variables, so that the same evidence
// always gives the same error.
func (n *Net) check(likelihood map[string][]float64) error {
	known := 0
	for _, v := range n.variables {
		l, given := likelihood[v.name]
		if !given {
			continue
		}
		known++
		if len(l) != v.levels || slices.ContainsFunc(l, func(x float64) bool { return !usable(x) }) {
			return errors.New("evidence on " + strconv.Quote(v.name) + ": expected " + strconv.Itoa(v.levels) + " likelihoods, finite and not negative")
		}
	}
	if known == len(likelihood) {
		return nil
	}
	var strangers []string
	for name := range likelihood {
		if _, ok := n.index[name]; !ok {
			strangers = append(strangers, name)
		}
	}
	return errors.New("evidence on " + strconv.Quote(slices.Min(strangers)) + ": expected a variable of the network")
}

// factor is the table of variable i times the likelihood of the evidence on it.
func (n *Net) factor(i int, likelihood []float64) factor {
	v := &n.variables[i]
	f := factor{scope: append(slices.Clone(v.parents), i), cells: make([]extFloat, len(v.table))}
	for at, chance := range v.table {
		f.cells[at] = toExt(chance)
		if likelihood != nil {
			f.cells[at] = f.cells[at].times(toExt(likelihood[at%v.levels]))
		}
	}
	return f
}
