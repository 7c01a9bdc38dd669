package scores

import (
	"math"

	"underpaint/engine/chance"
)

// tails returns P(B ≤ k) and P(B ≥ k) for B the number of hits in n tries with
// probability p. It multiplies terms up and down from the most likely count and divides
// by their sum, so it needs no logarithm or factorial.
func tails(k, n int, p float64) (atMost, atLeast float64) {
	if p <= 0 || p >= 1 {
		return certain(k, n, p)
	}
	mode := min(int(math.Floor(float64(float64(n+1)*p))), n)
	odds := p / (1 - p)
	var all float64
	count := func(i int, w float64) {
		all += w
		if i <= k {
			atMost += w
		}
		if i >= k {
			atLeast += w
		}
	}
	count(mode, 1)
	for i, w := mode, 1.0; i < n && w > 0; i++ {
		w = float64(w * (float64(n-i) / float64(i+1)) * odds)
		count(i+1, w)
	}
	for i, w := mode, 1.0; i > 0 && w > 0; i-- {
		w = float64(w*(float64(i)/float64(n-i+1))) / odds
		count(i-1, w)
	}
	return atMost / all, atLeast / all
}

// certain is tails for a probability of 0 or 1.
func certain(k, n int, p float64) (atMost, atLeast float64) {
	hits := 0
	if p >= 1 {
		hits = n
	}
	if hits <= k {
		atMost = 1
	}
	if hits >= k {
		atLeast = 1
	}
	return atMost, atLeast
}

func checkCount(hits, n int, confidence float64) {
	if n < 1 || hits < 0 || hits > n || !(confidence > 0 && confidence < 1) {
		panic("engine: internal error: interval of a share without tries, hits or confidence")
	}
}

// Wilson returns the score interval of a share after hits hits in n tries (E. B.
// Wilson, J. Amer. Statist. Assoc. 22, 1927; method 3 of R. G. Newcombe, "Two-sided
// confidence intervals for the single proportion", Statistics in Medicine 17, 1998).
// confidence is a level such as .95.
func Wilson(hits, n int, confidence float64) (low, high float64) {
	checkCount(hits, n, confidence)
	z := chance.NormalQuantile(float64((1 + confidence) / 2))
	zz := float64(z * z)
	k, m := float64(hits), float64(n)
	centre := k + float64(zz/2)
	half := float64(z * math.Sqrt(float64(k*(m-k))/m+float64(zz/4)))
	if hits > 0 {
		low = (centre - half) / (m + zz)
	}
	high = 1
	if hits < n {
		high = (centre + half) / (m + zz)
	}
	return low, high
}

// ClopperPearson returns the exact interval of a share after hits hits in n tries. It
// never covers less often than it claims (C. J. Clopper and E. S. Pearson, Biometrika
// 26, 1934; method 5 of Newcombe 1998).
func ClopperPearson(hits, n int, confidence float64) (low, high float64) {
	checkCount(hits, n, confidence)
	tail := float64((1 - confidence) / 2)
	if hits > 0 {
		low = solve(func(p float64) bool { _, up := tails(hits, n, p); return up < tail })
	}
	high = 1
	if hits < n {
		high = solve(func(p float64) bool { down, _ := tails(hits, n, p); return down > tail })
	}
	return low, high
}

// solve bisects (0, 1) for the point where below becomes false.
func solve(below func(p float64) bool) float64 {
	a, b := 0.0, 1.0
	for {
		p := a + float64((b-a)/2)
		if p <= a || p >= b {
			return p
		}
		if below(p) {
			a = p
		} else {
			b = p
		}
	}
}

// HitLimits returns the fewest and the most hits in n tries that agree with a
// probability, two-sided: each tail beyond them has at most half the level.
func HitLimits(n int, chanceOfHit, level float64) (fewest, most int) {
	checkCount(0, n, level)
	for half := float64(level / 2); ; fewest++ {
		if down, _ := tails(fewest, n, chanceOfHit); down > half || fewest == n {
			break
		}
	}
	return fewest, mostHits(n, chanceOfHit, float64(level/2))
}

// mostHits is the largest count such that as many hits or more have a probability above
// tail.
func mostHits(n int, chanceOfHit, tail float64) int {
	for most := n; ; most-- {
		if _, up := tails(most, n, chanceOfHit); up > tail || most == 0 {
			return most
		}
	}
}
