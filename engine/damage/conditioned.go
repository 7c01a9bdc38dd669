package damage

import (
	"underpaint/engine/network"
)

// conditioned is the network of one car conditioned on all evidence, for one state of
// cover.
type conditioned struct {
	*base
	seen      []*Likelihood // by item, nil = no evidence
	nested    network.Nested
	posterior *network.NestedPosterior
	worst     *network.MaxPosterior // nil without max nodes
	rest      *network.Remainder    // for drawing the items that count in them

	layout     maxLayout
	pocketRefs []pocketRef           // by pocket of the body
	alike      []int                 // by item: the first of its part with the same evidence
	densities  map[tabled]*densities // shared by items that are alike
	likely     map[tabled]*likely    // likewise
	sums       []*pocketSums         // by pocket of the body, nil where its levels have to be asked
}

// tabled identifies a table shared by items with the same evidence: the first of them and
// an index of ages.
type tabled struct{ item, age int }

// condition conditions the network. From an earlier conditioning it reuses the messages
// of groups in which nothing has changed and, in the other groups, those of pockets in
// which nothing has changed.
func (m *Model) condition(root []float64, seen []*Likelihood, worst []MaxEvidence, earlier []*conditioned) (*conditioned, error) {
	c := &conditioned{base: m.base, seen: seen, densities: map[tabled]*densities{}, likely: map[tabled]*likely{}}
	if c.seen == nil {
		c.seen = make([]*Likelihood, len(m.Body.Items))
	}
	if err := c.arrange(worst); err != nil {
		return nil, err
	}
	c.alike, c.pocketRefs, c.sums = c.findAlike(), make([]pocketRef, len(m.Body.Pockets)), make([]*pocketSums, len(m.Body.Pockets))
	for _, e := range earlier {
		c.takeTables(e)
	}
	from, same := c.unchanged(earlier)
	c.nested = network.Nested{Root: root, Batch: RepairStates}
	for g := range m.Body.Groups {
		if same[g] {
			c.nested.Groups = append(c.nested.Groups, from.nested.Groups[g])
			c.takePocketRefs(g, from)
		} else {
			c.nested.Groups = append(c.nested.Groups, c.groupOf(g))
		}
	}
	var before *network.NestedPosterior
	if from != nil {
		before = from.posterior
	}
	var err error
	if c.posterior, err = c.nested.ConditionAfter(before, func(g int) bool { return same[g] }); err != nil {
		return nil, err
	}
	return c, c.setMax(from, same)
}

// rootPosterior is the posterior of the root states given all evidence.
func (c *conditioned) rootPosterior() []float64 {
	if c.worst != nil {
		return c.worst.Root()
	}
	return c.posterior.Root()
}

func (c *conditioned) logEvidence() float64 {
	if c.worst != nil {
		return c.worst.LogEvidence()
	}
	return c.posterior.LogEvidence()
}
