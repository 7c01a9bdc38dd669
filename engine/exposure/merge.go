package exposure

import (
	"cmp"
	"slices"
	"strconv"

	"underpaint/engine/chance"
)

// cross puts each of the next stretches after each of the lives so far.
func cross(lives []History, next []stretch) (out []History) {
	for _, a := range lives {
		for _, b := range next {
			// Rates moved to keep the mean of lives that were joined would move those
			// of the years that follow as well.
			l := a
			l.RatesTimes = 1
			l.Weight = a.Weight * b.chance
			l.Periods = append(append([]Period{}, a.Periods...), b.periods...)
			out = append(out, l)
		}
	}
	return mergeEqual(out)
}

// finish merges, doubts, joins and orders complete lives.
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
		// Doubt moves every μ of a life by one amount.
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

// mergeEqual writes every history in its shortest form and makes equal ones one.
// The order is that of first appearance.
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

// shortest drops empty periods and joins neighbours of the same kind, for which
// paint and metal are used up as by one period of their length. Neighbours in
// years of unlike road salt are not of the same kind.
func shortest(periods []Period, made float64) (out []Period) {
	from := made // of the last period in out
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

// alike tells whether two neighbours, the first beginning in a calendar year,
// are one longer period.
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

// inOrder returns the histories by falling weight, then by content.
func inOrder(histories []History) []History {
	out := make([]History, 0, len(histories))
	for _, i := range ranks(histories) {
		out = append(out, histories[i])
	}
	return out
}

// ranks are the indexes of histories by falling weight, then by content.
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

// moved is a list of μ, all moved by one amount.
func moved(mu []float64, by float64) []float64 {
	out := make([]float64, len(mu))
	for i := range mu {
		out[i] = mu[i] + by
	}
	return out
}
