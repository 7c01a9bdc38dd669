package exposure

import (
	"cmp"
	"math"
	"slices"

	"underpaint/engine/chance"
)

// cluster is a set of histories on the way to becoming one.
type cluster struct {
	weight  float64
	mean    []float64 // of the members' μ on every kind of part, by weight
	end     end
	members []int
}

// never is the cost of joining what must not be joined.
var never = math.Inf(1)

// readingWeight is how much a squared distance counts in each reading, in the
// order probe lists them. Few cars were restored (assumption; measured with the
// test of joining).
var readingWeight = [Readings]float64{AsItIs: 1, PaintedAgain: 0.5, Renewed: 0.5}

// squares is the weighted sum of squared differences between a, moved by one
// amount, and b. It stops early, with something above limit, once limit is passed.
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

// cost is what joining two clusters adds to the sum of weight × squared distance
// from the mean, or something above limit.
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

// thin joins clusters that are all but equal, likeliest first, until forWard or
// fewer are left: each is taken by the first kept one that is near enough.
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

// ward joins the two clusters that cost least, again and again, until at most so
// many are left or no two may be joined. At a tie the earlier two.
func ward(all []cluster, most int) []cluster {
	all, until := byEnd(all)
	near := make([]int, len(all)) // the cheapest later cluster to join with, -1 for none
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

// byEnd puts clusters of one end next to each other and tells, for each, where
// those of its end are over.
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

// speaker is the member that stands for all: the one whose μ, moved by the same
// amount on every kind of part, come nearest to the mean of the cluster. seen are
// the members' μ.
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
