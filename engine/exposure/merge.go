package exposure

import (
	"cmp"
	"slices"
	"strconv"

	"underpaint/engine/chance"
)

// cross appends each of the next stretches to each of the lives so far.
func cross(lives []History, next []stretch) (out []History) {
	for _, a := range lives {
		for _, b := range next {
			// Joining changes RatesTimes to keep the mean μ of the lives it joins. Without
			// this reset the change would also affect the years that follow.
			l := a
			l.RatesTimes = 1
			l.Weight = a.Weight * b.chance
			l.Periods = append(append([]Period{}, a.Periods...), b.periods...)
			out = append(out, l)
		}
	}
	return mergeEqual(out)
}

// finish merges equal lives, adds the doubt about their rates, joins them if there are
// too many and puts them in order.
func finish(lives []History) []History {
	lives = mergeEqual(lives)
	if len(lives) > beforeDoubt {
		lives = reduce(lives, probeAll(lives), beforeDoubt, sameEnd)
	}
	doubt := data().doubt
	var out []History
	for _, l := range lives {
		for _, d := range doubt {
			doubted := l
			doubted.Weight *= d.chance
			doubted.RatesTimes *= d.value
			out = append(out, doubted)
		}
	}
	if len(out) > MaxHistories {
		// Doubt shifts every μ of a life by the same amount.
		var seen [][]float64
		for _, mu := range probeAll(lives) {
			for _, d := range doubt {
				seen = append(seen, moved(mu, chance.Log(d.value)))
			}
		}
		out = reduce(out, seen, MaxHistories, sameEnd)
	}
	return inOrder(out)
}

// mergeEqual puts every history in its shortest form and merges equal ones, in order of
// first appearance.
func mergeEqual(histories []History) (out []History) {
	at := map[string]int{}
	for _, l := range histories {
		l.Periods = shortest(l.Periods, l.Made)
		l.LastClimate = ""
		if n := len(l.Periods); n > 0 {
			l.LastClimate = l.Periods[n-1].Climate
		}
		key := l.key()
		if k, ok := at[key]; ok {
			out[k].Weight += l.Weight
		} else if l.Weight > 0 {
			at[key] = len(out)
			out = append(out, l)
		}
	}
	return out
}

// shortest drops empty periods and joins neighbours that are alike, because one period
// of their total length uses up the same paint and metal.
func shortest(periods []Period, made float64) (out []Period) {
	from := made // calendar year in which the last period in out begins
	for _, p := range periods {
		if p.Years <= 0 {
			continue
		}
		if n := len(out) - 1; n >= 0 {
			if last := &out[n]; alike(*last, p, from) {
				last.Years += p.Years
				continue
			}
			from += out[n].Years
		}
		out = append(out, p)
	}
	return out
}

// alike reports whether two neighbouring periods have the same effect, so that they can
// be joined. The first begins in calendar year from. Periods in years with different
// road salt are not alike.
func alike(a, b Period, from float64) bool {
	if a.Climate != b.Climate || a.Use != b.Use {
		return false
	}
	x, y := weatherOf(a, from), weatherOf(b, from+a.Years)
	return x.share == y.share && x.lnSplash == y.lnSplash
}

// key is the content of a history as text.
func (l History) key() string {
	return string(l.appendLife(append(strconv.AppendFloat(nil, l.RatesTimes, 'g', -1, 64), ' ')))
}

// inOrder returns the histories by decreasing weight, then by content.
func inOrder(histories []History) []History {
	out := make([]History, 0, len(histories))
	for _, i := range ranks(histories) {
		out = append(out, histories[i])
	}
	return out
}

// ranks are the indexes of histories by decreasing weight, then by content.
func ranks(histories []History) []int {
	at, keys := make([]int, len(histories)), make([]string, len(histories))
	for i, l := range histories {
		at[i], keys[i] = i, l.key()
	}
	slices.SortFunc(at, func(i, k int) int {
		return cmp.Or(cmp.Compare(histories[k].Weight, histories[i].Weight), cmp.Compare(keys[i], keys[k]))
	})
	return at
}

// moved returns a list of μ, all shifted by the same amount.
func moved(mu []float64, by float64) []float64 {
	out := make([]float64, len(mu))
	for i := range mu {
		out[i] = mu[i] + by
	}
	return out
}
