package exposure

import "underpaint/engine/chance"

// How histories are joined. The work of the network grows with the number of histories,
// and "not sure" to every question gives thousands. A history matters only through the μ
// of every part in every reading, the car's age (which sets the chances of earlier
// repairs and of causes other than rust from exposure) and the last climate (failed lead
// joints). So histories of the same age and last climate are joined where their μ are
// closest over all kinds of part, by Ward's method (J. Am. Stat. Assoc. 58, 1963): each
// step joins the two whose joining adds least to the sum of weight × squared distance
// from the mean. One member then represents the joined histories and takes their total
// weight. Its rates are scaled so that the mean of μ over histories, kinds of part and
// readings (with the same weights) does not change. The remaining error is of second
// order and small compared with the scatter of a single part about μ, which has standard
// deviation .85. The tests measure the effect on chances.

// MaxHistories is the largest number of histories that Histories and Exact return.
const MaxHistories = 120

// Earlier limits, chosen so that joining early costs little (tested) and the worst case
// is quick.
const (
	mostLives   = 40   // alternatives of the earlier places
	beforeDoubt = 300  // lives, before the doubt about rates multiplies them
	forWard     = 1200 // histories at the start of Ward's method, which is quadratic in them
)

// probes are the kinds of part on which histories are compared: b and paint life in
// years of all parts of the bodies (package car; a test checks this), sorted by b. Each
// is taken with no, half and full road splash, in every reading. m and the thickness are
// left out because they shift μ by the same amount in all histories of an age.
var (
	probes = [][2]float64{{.523, 10}, {.575, 8}, {.85, 3}, {.85, 4}, {.85, 5}, {.85, 6}, {.85, 7}}
	splash = [3]float64{0, .5, 1}
)

// probed is the number of values that probe appends.
var probed = len(probes) * len(splash) * int(Readings)

// probe appends μ of a history on every kind of part, without the terms that are the
// same for all histories.
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

// probeAll probes complete lives.
func probeAll(histories []History) [][]float64 {
	out := make([][]float64, len(histories))
	for i, l := range histories {
		out[i] = l.probe(make([]float64, 0, probed))
	}
	return out
}

// probeAhead probes alternatives of the earlier places. The rest of the life is not
// known yet, so two different continuations of the remaining years represent it
// (assumption): driven, and in a garage.
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

// end is what histories must have in common to be joined.
type end struct {
	climate string
	age     float64
}

func sameEnd(l History) end { return end{l.LastClimate, l.AgeYears} }

// anyEnd lets any lives be joined. It is for incomplete lives of the same age.
func anyEnd(History) end { return end{} }

// reduce joins histories until at most the given number are left, or more if there are
// more different ends. seen holds the histories' μ on every kind of part.
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
