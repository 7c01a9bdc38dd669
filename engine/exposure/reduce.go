package exposure

import "math"

// How levels are joined. The work of the network grows with the number of
// levels, and an answer "not sure" to everything gives some hundreds. A level
// matters only through μ of every part, through the car's age where the chance
// of earlier repairs depends on it, and through the last climate (failed lead
// joints). So levels of the same end (see sameEnd) are joined where their μ are
// nearest on every kind of part, in the order of Ward (J. Am. Stat. Assoc. 58,
// 1963): each step joins the two whose joining adds least to the sum of weight ×
// squared distance from the mean. One member then stands for all, with their
// weights added, and with its rates times so much that the mean of μ over levels
// and kinds of part stays what it was; what is lost is of second order and small
// beside the scatter of a single part about μ, of standard deviation .85. The
// tests measure what it does to chances.

// MaxLevels is the most levels that Levels and Exact return.
const MaxLevels = 120

// Bounds before that, chosen so that joining early costs little (tested) and the
// worst case is quick.
const (
	mostLives   = 40   // alternatives of the earlier places
	beforeDoubt = 300  // lives, before each is doubted
	forWard     = 1200 // levels that Ward's order, quadratic in them, starts from
)

// probes are the kinds of part on which levels are compared: b and paint life in
// years of all parts of the six bodies (package car; a test compares), each with
// no, half and full road splash. m and the thickness shift μ of all levels alike.
var probes = [][2]float64{{.523, 10}, {.575, 8}, {.85, 3}, {.85, 4}, {.85, 5}, {.85, 6}, {.85, 7}}

// probe returns μ of a level on every kind of part, less what is the same for all.
func probe(l Level) []float64 {
	mu := make([]float64, 0, 3*len(probes))
	for _, p := range probes {
		for _, splash := range []float64{0, .5, 1} {
			mu = append(mu, l.Mu(1, p[0], p[1], splash, 1))
		}
	}
	return mu
}

// probeAhead compares alternatives of the earlier places. What follows is not
// known yet, so two different continuations stand for it (assumption): ten years
// of driving, and thirty in a garage.
func probeAhead(l Level) (mu []float64) {
	for _, p := range []Period{{"mild", 10, "driven_all_year"}, {"mild", 30, "garage"}} {
		next := l
		next.Periods = append(append([]Period{}, l.Periods...), p)
		mu = append(mu, probe(next)...)
	}
	return mu
}

// end is what levels that are joined must have in common.
type end struct {
	climate string
	age     float64
}

// sameEnd is the last climate, and the age between 15 and 40 years: outside that
// the chances of earlier repairs do not change with age (package damage).
func sameEnd(l Level) end {
	return end{l.LastClimate, math.Round(max(15, min(40, l.AgeYears))*1e6) / 1e6}
}

// anyEnd is for lives that go on.
func anyEnd(Level) end { return end{} }

// reduce joins levels until at most so many are left. It returns more only if
// there are more different ends.
func reduce(levels []Level, most int, look func(Level) []float64, ending func(Level) end) []Level {
	if len(levels) <= most {
		return levels
	}
	order(levels)
	all := make([]cluster, len(levels))
	for i, l := range levels {
		all[i] = cluster{weight: l.Weight, mean: look(l), end: ending(l), members: []int{i}}
	}
	seen := make([][]float64, len(levels))
	for i := range all {
		seen[i] = append([]float64{}, all[i].mean...)
	}
	var out []Level
	for _, c := range ward(thin(all), most) {
		out = append(out, c.speaker(levels, seen))
	}
	return out
}
