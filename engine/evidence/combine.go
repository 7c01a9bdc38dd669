package evidence

import (
	"cmp"
	"math"
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/damage"
)

// combine combines all results on one item of a car in one state of cover. Their order
// does not matter.
func combine(results []result, on cover) *damage.Likelihood {
	inOrder(results)
	condition, finding := logCondition(results, on), logFinding(results)
	out := &damage.Likelihood{}
	for k := range out {
		for f := range out[k] {
			for d := range out[k][f] {
				out[k][f][d] = chance.Exp(condition[k] + finding[f][d])
			}
		}
	}
	return out
}

// worstOf combines all results on the worst of several items by the same rule.
func worstOf(results []result, on cover) (out [car.Conditions]float64) {
	inOrder(results)
	condition := logCondition(results, on)
	for k, v := range condition {
		out[k] = chance.Exp(v)
	}
	return out
}

// inOrder sorts results, so that the order of the checks changes nothing.
func inOrder(results []result) {
	slices.SortFunc(results, func(a, b result) int {
		if c := cmp.Compare(a.order, b.order); c != 0 {
			return c
		}
		return cmp.Compare(a.by, b.by)
	})
}

// logCondition combines the checks of condition, scaled so that the largest log
// likelihood is 0.
func logCondition(results []result, on cover) (total [car.Conditions]float64) {
	for _, bad := range []bool{true, false} {
		addSteps(&total, results, bad, on)
	}
	top := slices.Max(total[:])
	for k := range total {
		total[k] -= top
	}
	return total
}

// addSteps adds the bad (or the good) results of checks of condition: on each step
// between neighbouring conditions the largest log ratio counts in full and every further
// one in part. Every result increases each step, so one more bad result cannot lower the
// chance of a hole; a weighted sum of whole log likelihoods would not guarantee that. On
// a freshly covered car the good results that cover can hide are weakened first, and the
// largest is chosen afterwards.
func addSteps(total *[car.Conditions]float64, results []result, bad bool, on cover) {
	further, sum := looks().w.further, 0.0
	for k := 1; k < car.Conditions; k++ {
		largest, all := 0.0, 0.0
		for _, r := range results {
			if r.ofFinding || r.yes != bad {
				continue
			}
			step := r.step(k, on)
			all += step
			if math.Abs(step) > math.Abs(largest) {
				largest = step
			}
		}
		sum += largest + float64(further*(all-largest))
		total[k] += sum
	}
}

// logFinding combines the checks for an earlier repair, good and bad together, scaled so
// that the largest log likelihood is 0. The one with the widest spread counts in full
// (on a tie the first in the data), the rest in part.
func logFinding(results []result) (total [damage.Findings][2]float64) {
	widest, width := -1, -1.0
	for n, r := range results {
		if !r.ofFinding {
			continue
		}
		if low, high := ends(&r.finding); high-low > width {
			widest, width = n, high-low
		}
	}
	for n, r := range results {
		if !r.ofFinding {
			continue
		}
		counts := looks().w.further
		if n == widest {
			counts = 1
		}
		for f := range total {
			for d := range total[f] {
				total[f][d] += float64(counts * r.finding[f][d])
			}
		}
	}
	_, top := ends(&total)
	for f := range total {
		for d := range total[f] {
			total[f][d] -= top
		}
	}
	return total
}

// ends are the least and the greatest log likelihood.
func ends(l *[damage.Findings][2]float64) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for f := range l {
		for _, v := range l[f] {
			low, high = math.Min(low, v), math.Max(high, v)
		}
	}
	return low, high
}

// Joined is the likelihood of two observations of one item whose errors are
// independent, such as a check before the strip and the survey after it, scaled so that
// the largest entry is one. Either may be nil for no evidence; if both are, so is the
// result.
func Joined(a, b *damage.Likelihood) *damage.Likelihood {
	switch {
	case a == nil && b == nil:
		return nil
	case a == nil:
		a = damage.NoEvidence()
	case b == nil:
		b = damage.NoEvidence()
	}
	out, top := &damage.Likelihood{}, 0.0
	for k := range out {
		for f := range out[k] {
			for d := range out[k][f] {
				out[k][f][d] = a[k][f][d] * b[k][f][d]
				top = math.Max(top, out[k][f][d])
			}
		}
	}
	for k := range out {
		for f := range out[k] {
			for d := range out[k][f] {
				out[k][f][d] /= top
			}
		}
	}
	return out
}

func b2i(b bool) int {
	if b {
		return 1
	}
	return 0
}
