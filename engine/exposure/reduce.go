package exposure

import "underpaint/engine/chance"

// How histories are joined. The work of the network grows with the number of
// histories, and an answer "not sure" to everything gives some thousands. A history
// matters only through μ of every part in every reading, through the car's age
// (chances of earlier repairs, causes of their own) and through the last climate
// (failed lead joints). So histories of the same age and last climate are joined
// where their μ are nearest on every kind of part, in the order of Ward (J. Am.
// Stat. Assoc. 58, 1963): each step joins the two whose joining adds least to the
// sum of weight × squared distance from the mean. One member then stands for all,
// with their weights added, and with its rates times so much that the mean of μ
// over histories, kinds of part and readings (weighted alike) stays what it was;
// what is lost is of second order and small beside the scatter of a single part
// about μ, of standard deviation .85. The tests measure what it does to chances.

// MaxHistories is the most histories that Histories and Exact return.
const MaxHistories = 120

// Bounds before that, chosen so that joining early costs little (tested) and the
// worst case is quick.
const (
	mostLives   = 40   // alternatives of the earlier places
	beforeDoubt = 300  // lives, before each is doubted
	forWard     = 1200 // histories that Ward's order, quadratic in them, starts from
)

// probes are the kinds of part on which histories are compared: b and paint life in
// years of all parts of the bodies (package car; a test compares), by b, each
// with no, half and full road splash, in every reading. m and the thickness
// shift μ of all histories of an age alike.
var (
	probes = [][2]float64{{.523, 10}, {.575, 8}, {.85, 3}, {.85, 4}, {.85, 5}, {.85, 6}, {.85, 7}}
	splash = [3]float64{0, .5, 1}
)

// probed is how many figures probe appends.
var probed = len(probes) * len(splash) * int(Readings)

// probe appends μ of a history on every kind of part, less what is the same for all.
func (l History) probe(mu []float64) []float64 {
	var room [8]weather
	all := l.weathers(room[:0])
	rates := chance.Log(l.RatesTimes)
	var speeds [len(splash)][]float64
	var last [len(splash)]float64
	for i, p := range probes {
		for s := range splash {
			if i == 0 || p[0] != probes[i-1][0] {
				last[s], speeds[s] = speedsOf(all, p[0], splash[s], speeds[s][:0])
			}
			for _, depth := range l.depths(all, speeds[s], last[s], p[0], p[1]) {
				mu = append(mu, depth+rates)
			}
		}
	}
	return mu
}

// probeAll compares complete lives.
func probeAll(histories []History) [][]float64 {
	out := make([][]float64, len(histories))
	for i, l := range histories {
		out[i] = l.probe(make([]float64, 0, probed))
	}
	return out
}

// probeAhead compares alternatives of the earlier places. What follows is not
// known yet, so two different continuations of the years that are left stand for
// it (assumption): driven, and in a garage.
func probeAhead(histories []History, left float64) [][]float64 {
	out := make([][]float64, len(histories))
	for i, l := range histories {
		out[i] = make([]float64, 0, 2*probed)
		for _, kept := range []string{"driven_all_year", "garage"} {
			next := l
			next.Periods = append(append([]Period{}, l.Periods...), Period{"mild", left, kept, Whole})
			out[i] = next.probe(out[i])
		}
	}
	return out
}

// end is what histories that are joined must have in common.
type end struct {
	climate string
	age     float64
}

func sameEnd(l History) end { return end{l.LastClimate, l.AgeYears} }

// anyEnd is for lives of one age that go on.
func anyEnd(History) end { return end{} }

// reduce joins histories until at most so many are left. It returns more only if
// there are more different ends. seen are the histories' μ on every kind of part.
func reduce(histories []History, seen [][]float64, most int, ending func(History) end) []History {
	if len(histories) <= most {
		return histories
	}
	all := make([]cluster, len(histories))
	for k, i := range ranks(histories) {
		all[k] = cluster{weight: histories[i].Weight, mean: append([]float64{}, seen[i]...), end: ending(histories[i]), members: []int{i}}
	}
	var out []History
	for _, c := range ward(thin(all), most) {
		out = append(out, c.speaker(histories, seen))
	}
	return out
}
