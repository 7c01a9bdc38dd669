package damage

import (
	"underpaint/engine/network"
)

// conditioned is the network of one car with everything seen of it taken in, as it
// counts on a car that is covered or on one that is not.
type conditioned struct {
	*base
	seen      []*Likelihood // by item, nil = nothing
	nested    network.Nested
	posterior *network.NestedPosterior
	worst     *network.MaxPosterior // nil without max nodes
	rest      *network.Remainder    // for drawing what counts in them

	layout     maxLayout
	pocketRefs []pocketRef           // by pocket of the body
	alike      []int                 // by item: the first of its part with the same evidence
	densities  map[tabled]*densities // by what is alike
	likely     map[tabled]*likely    // likewise
}

// tabled names tables that items with the same evidence have in common: the first of
// them and an index of ages.
type tabled struct{ item, age int }

// condition takes everything in. What an earlier conditioning says of groups in which
// nothing has changed is taken from there.
func (m *Model) condition(root []float64, seen []*Likelihood, worst []MaxEvidence, earlier []*conditioned) (*conditioned, error) {
	c := &conditioned{base: m.base, seen: seen, densities: map[tabled]*densities{}, likely: map[tabled]*likely{}}
	if c.seen == nil {
		c.seen = make([]*Likelihood, len(m.Body.Items))
	}
	if err := c.arrange(worst); err != nil {
		return nil, err
	}
	c.alike, c.pocketRefs = c.findAlike(), make([]pocketRef, len(m.Body.Pockets))
	from, same := c.unchanged(earlier)
	c.nested = network.Nested{Root: root, Batch: RepairStates}
	for g := range m.Body.Groups {
		group := network.Group{Weights: m.group}
		if same[g] {
			group.Pockets = from.nested.Groups[g].Pockets
			c.takePocketRefs(g, from)
		} else {
			group.Pockets = c.pocketsOf(g)
		}
		c.nested.Groups = append(c.nested.Groups, group)
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

// unchanged finds the earlier conditioning with the most groups of which the same was
// seen, and says which they are.
func (c *conditioned) unchanged(earlier []*conditioned) (from *conditioned, same []bool) {
	most := 0
	same = make([]bool, len(c.Body.Groups))
	for _, e := range earlier {
		if e.base != c.base {
			continue
		}
		so, n := make([]bool, len(c.Body.Groups)), 0
		for g := range so {
			if so[g] = c.sameGroup(e, g); so[g] {
				n++
			}
		}
		if n > most {
			from, same, most = e, so, n
		}
	}
	return from, same
}

// sameGroup says whether the same was seen of the items of a group, each alone and in
// pairs.
func (c *conditioned) sameGroup(e *conditioned, g int) bool {
	for _, pocket := range c.Body.Groups[g].Pockets {
		if c.layout.partner[pocket] != e.layout.partner[pocket] {
			return false
		}
		for _, i := range c.Body.Pockets[pocket].Items {
			if !sameEvidence(c.seen[i], e.seen[i]) {
				return false
			}
		}
	}
	return c.samePairs(e, g)
}

// takeSpots takes over where the pockets of a group stand.
func (c *conditioned) takePocketRefs(g int, from *conditioned) {
	for _, pocket := range c.Body.Groups[g].Pockets {
		c.pocketRefs[pocket] = from.pocketRefs[pocket]
	}
}

// rootPosterior is that of the root states, with everything taken in.
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
