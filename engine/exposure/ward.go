package exposure

import (
	"cmp"
	"math"
	"slices"

	"underpaint/engine/chance"
)

// cluster is a set of histories to be joined into one.
type cluster struct {
	weight  float64
	mean    []float64 // weighted mean of the members' μ on every kind of part
	end     end
	members []int
}

// never is the cost of joining histories that must not be joined.
var never = math.Inf(1)

// readingWeight is the weight of a squared distance in each reading, in the order in
// which probe lists them. The readings with a restoration count less because few cars
// were restored (assumption; the test of joining measures it).
var readingWeight = [Readings]float64{AsItIs: 1, PaintedAgain: 0.5, Renewed: 0.5}

// squares is the weighted sum of squared differences between b and a shifted by move. It
// stops early and returns a value above limit once limit is exceeded.
func squares(a, b []float64, move, limit float64) (sum float64) {
	for ; len(a) >= int(Readings) && len(b) >= int(Readings); a, b = a[Readings:], b[Readings:] {
		for r, weight := range readingWeight {
			d := a[r] + move - b[r]
			sum += float64(weight * float64(d*d))
		}
		if sum > limit {
			break
		}
	}
	return sum
}

// cost is the amount that joining two clusters adds to the sum of weight × squared
// distance from the mean, or some value above limit.
func cost(a, b *cluster, limit float64) float64 {
	if a.end != b.end {
		return never
	}
	factor := a.weight * b.weight / (a.weight + b.weight)
	return factor * squares(a.mean, b.mean, 0, limit/factor)
}

// take adds the members of b to a.
func (a *cluster) take(b *cluster) {
	total := a.weight + b.weight
	for i := range a.mean {
		a.mean[i] += float64((b.mean[i] - a.mean[i]) * (b.weight / total))
	}
	a.weight = total
	a.members = append(a.members, b.members...)
}

// thin joins nearly equal clusters, likeliest first, until at most forWard are left.
// Each cluster joins the first kept one that is near enough.
func thin(all []cluster) []cluster {
	for near := 1e-8; len(all) > forWard && near < 1e4; near *= 4 {
		var kept []cluster
	next:
		for i := range all {
			for k := range kept {
				if cost(&all[i], &kept[k], near) <= near {
					kept[k].take(&all[i])
					continue next
				}
			}
			kept = append(kept, all[i])
		}
		all = kept
	}
	return all
}

// ward repeatedly joins the two clusters that cost least, the earlier two on a tie,
// until at most the given number are left or no two may be joined.
func ward(all []cluster, most int) []cluster {
	all, until := byEnd(all)
	near := make([]int, len(all)) // the cheapest later cluster to join, -1 for none
	price := make([]float64, len(all))
	seek := func(i int) {
		near[i], price[i] = -1, never
		for k := i + 1; k < until[i]; k++ {
			if all[k].members == nil {
				continue
			}
			if c := cost(&all[i], &all[k], price[i]); c < price[i] {
				near[i], price[i] = k, c
			}
		}
	}
	for i := range all {
		seek(i)
	}
	for left := len(all); left > most; left-- {
		best := 0
		for i := range all {
			if price[i] < price[best] {
				best = i
			}
		}
		if price[best] == never {
			break
		}
		gone := near[best]
		all[best].take(&all[gone])
		all[gone].members = nil
		near[gone], price[gone] = -1, never
		for i := range all[:until[best]] {
			if until[i] != until[best] || all[i].members == nil {
				continue
			}
			if i == best || near[i] == best || near[i] == gone {
				seek(i)
			} else if i < best {
				if c := cost(&all[i], &all[best], price[i]); c < price[i] {
					near[i], price[i] = best, c
				}
			}
		}
	}
	return slices.DeleteFunc(all, func(c cluster) bool { return c.members == nil })
}

// byEnd sorts clusters so that those with the same end are next to each other. until[i]
// is the index after the last cluster with the same end as cluster i.
func byEnd(all []cluster) (out []cluster, until []int) {
	slices.SortStableFunc(all, func(a, b cluster) int {
		return cmp.Or(cmp.Compare(a.end.age, b.end.age), cmp.Compare(a.end.climate, b.end.climate))
	})
	until = make([]int, len(all))
	for i := len(all) - 1; i >= 0; i-- {
		until[i] = i + 1
		if i+1 < len(all) && all[i+1].end == all[i].end {
			until[i] = until[i+1]
		}
	}
	return all, until
}

// speaker is the member that represents the cluster: the one whose μ, all shifted by the
// same amount, are nearest to the cluster's mean. seen holds the μ of all histories.
func (c *cluster) speaker(histories []History, seen [][]float64) History {
	if len(c.members) == 1 {
		return histories[c.members[0]]
	}
	best, least, move := 0, never, 0.0
	for _, k := range c.members {
		shift, weights := 0.0, 0.0
		for i := range c.mean {
			weight := readingWeight[i%int(Readings)]
			shift += float64(weight * (c.mean[i] - seen[k][i]))
			weights += weight
		}
		shift /= weights
		if square := squares(seen[k], c.mean, shift, least); square < least {
			best, least, move = k, square, shift
		}
	}
	l := histories[best]
	l.RatesTimes *= chance.Exp(move)
	l.Weight = c.weight
	return l
}
