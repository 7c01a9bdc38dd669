package scores

// grouped holds one value and one variance per job in each group. Groups are in the
// order in which they first appear, so that no result depends on a map's order.
type grouped struct {
	names           []string
	jobs            [][]string
	value, variance [][]float64
	at              map[string]int
	seen            map[[2]string]bool
}

func newGrouped() *grouped {
	return &grouped{at: map[string]int{}, seen: map[[2]string]bool{}}
}

func (g *grouped) add(group, job string, value, variance float64) error {
	key := [2]string{group, job}
	if g.seen[key] {
		return wrong(group, job, "must appear once in a group; merge its figures first")
	}
	g.seen[key] = true
	i, known := g.at[group]
	if !known {
		i = len(g.names)
		g.at[group] = i
		g.names = append(g.names, group)
		g.jobs = append(g.jobs, nil)
		g.value = append(g.value, nil)
		g.variance = append(g.variance, nil)
	}
	g.jobs[i] = append(g.jobs[i], job)
	g.value[i] = append(g.value[i], value)
	g.variance[i] = append(g.variance[i], variance)
	return nil
}
