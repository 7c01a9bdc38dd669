package damage

import "slices"

// Finds what a conditioning has in common with an earlier one of the same car, so that it
// can be reused.

// unchanged finds the earlier conditioning that has the same evidence in the most groups,
// and returns which groups those are.
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

// sameGroup reports whether the items of a group have the same evidence, each alone and in
// pairs.
func (c *conditioned) sameGroup(e *conditioned, g int) bool {
	for _, pocket := range c.Body.Groups[g].Pockets {
		if c.layout.partner[pocket] != e.layout.partner[pocket] || !c.samePocket(e, pocket) {
			return false
		}
	}
	return c.samePairs(e, g)
}

// samePocket reports whether the items of a pocket have the same evidence, each alone.
func (c *conditioned) samePocket(e *conditioned, pocket int) bool {
	for _, i := range c.Body.Pockets[pocket].Items {
		if !sameEvidence(c.seen[i], e.seen[i]) {
			return false
		}
	}
	return true
}

// takePocketRefs copies the pocketRefs of a group.
func (c *conditioned) takePocketRefs(g int, from *conditioned) {
	for _, pocket := range c.Body.Groups[g].Pockets {
		c.pocketRefs[pocket] = from.pocketRefs[pocket]
	}
}

// takeTables reuses the tables of items and pockets that had the same evidence earlier.
func (c *conditioned) takeTables(from *conditioned) {
	if from.base != c.base {
		return
	}
	for k := range c.sums {
		if c.sums[k] == nil && c.samePocket(from, k) {
			c.sums[k] = from.sums[k]
		}
	}
	for i := range c.Body.Items {
		if !sameEvidence(c.seen[i], from.seen[i]) {
			continue
		}
		for age := range c.ages {
			was, key := tabled{from.alike[i], age}, tabled{c.alike[i], age}
			if c.likely[key] == nil && from.likely[was] != nil {
				c.likely[key] = from.likely[was]
			}
			if c.densities[key] == nil && from.densities[was] != nil {
				c.densities[key] = from.densities[was]
			}
		}
	}
}

// samePairs reports whether the pairs of a group have the same evidence.
func (m *conditioned) samePairs(e *conditioned, g int) bool {
	of := func(c *conditioned) (out []pair) {
		for _, p := range c.layout.pairs {
			if c.Body.Pockets[c.Body.Items[p.item[0]].Pocket].Group == g {
				p.node = min(p.node, 0) // whether it is a node matters, but not its number
				out = append(out, p)
			}
		}
		return out
	}
	return slices.Equal(of(m), of(e))
}

// samePockets returns a function that reports whether a pocket of the network has the same
// evidence, including that on its items in pairs.
func (m *conditioned) samePockets(e *conditioned) func(g, k int) bool {
	return func(g, k int) bool {
		if !m.samePairs(e, g) {
			return false
		}
		for _, pocket := range m.Body.Groups[g].Pockets {
			if m.pocketRefs[pocket] != e.pocketRefs[pocket] || m.pocketRefs[pocket].pocket == k && !m.samePocket(e, pocket) {
				return false
			}
		}
		return true
	}
}

// sameNodes reports whether the same items count in the same nodes.
func (m *conditioned) sameNodes(e *conditioned) bool {
	sameItems := func(x, y MaxEvidence) bool { return slices.Equal(x.Items, y.Items) }
	return slices.EqualFunc(m.layout.nodes, e.layout.nodes, sameItems) && slices.Equal(m.layout.within, e.layout.within)
}
