//go:build !js

package pricing

import (
	"encoding/json"
	"math"
	"os"
	"slices"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/damage"
	"underpaint/engine/exposure"
)

// sided holds the points and weights of a pocket's factor. One pocket in fourteen has a
// leak of its own.
var sided = func() (out [2][]float64) {
	for n, at := range hermite[5][0] {
		out[0], out[1] = append(out[0], at, at+2.5), append(out[1], .93*hermite[5][1][n], .07*hermite[5][1][n])
	}
	return out
}()

// chances are the probabilities of the conditions.
type chances [car.Conditions]float64

// ownCauses reads the probability of a cause of its own by part. Everything else about
// damage is written out below as it was published.
func ownCauses(t *testing.T) map[string]float64 {
	t.Helper()
	var file struct {
		Own struct {
			ByPart map[string]float64 `json:"chance_by_part"`
		} `json:"own_cause"`
	}
	text, err := os.ReadFile("../damage/data/damage.json")
	if err == nil {
		err = json.Unmarshal(text, &file)
	}
	if err != nil || file.Own.ByPart["roof_skin"] != .005 {
		t.Fatal("no chances of a cause of its own", err)
	}
	return file.Own.ByPart
}

// conditions returns the probabilities of each condition of item i in every state of
// the shared factors, earlier repairs included.
func (x *exact) conditions(i int) (out []float64) {
	p := x.t.Body.PartOf(i)
	share := [4]float64{.40, .15, .20, .25}
	switch {
	case p.ID == "battery_tray":
		share = [4]float64{.15, .10, .10, .65}
	case !p.SeenWhenStripped:
		share = [4]float64{.40, .15, .10, .35}
	}
	for l := range x.histories {
		history := &x.histories[l]
		mu := history.Medians(p.Rust.M, p.Rust.B, p.Rust.Life, p.Splash, p.MM)
		for _, k := range hermite[9][0] {
			for r := range damage.RepairStates {
				for _, g := range hermite[5][0] {
					for _, q := range sided[0] {
						luck := .85 * (math.Sqrt(share[0])*k + math.Sqrt(share[1])*g + math.Sqrt(share[2])*q)
						one := x.repaired(p, r, func(reading exposure.Reading, years float64) chances {
							return x.caused(p, rustAt(p, mu[reading]+luck, .85*math.Sqrt(share[3])), years)
						}, history)
						out = append(out, one[:]...)
					}
				}
			}
		}
	}
	return out
}

// rustAt returns the probabilities of rust around a mean of the log depth.
func rustAt(p *car.Part, mean, own float64) (out chances) {
	steps := []float64{.10, .35, 1, 1.25, 2.5}
	if p.Face == car.Hidden {
		steps[0] = .15
	}
	below := 0.0
	for c, step := range steps {
		v := 0.5 * math.Erfc(-(math.Log(step)-mean)/own/math.Sqrt2)
		out[c], below = v-below, v
	}
	out[5] = 1 - below
	return out
}

// caused lets a cause of the part's own make the condition worse, or luck of its own
// make it better.
func (x *exact) caused(p *car.Part, rust chances, years float64) (out chances) {
	cause, spared := chances{0, 0, .37, .18, .32, .13}, .02
	if p.ID == "battery_tray" {
		cause, spared = chances{0, 0, .20, .15, .35, .30}, .20
	}
	own := x.own[p.ID] * min(1.2, years/50)
	for k, v := range rust {
		out[k] += v * (1 - own - spared)
		for c, w := range cause {
			out[max(k, c)] += v * own * w
		}
	}
	out[0] += spared * .60
	out[1] += spared * .40
	return out
}

// repaired applies earlier repairs; rust gives the probabilities before them.
func (x *exact) repaired(p *car.Part, r int, rust func(exposure.Reading, float64) chances, history *exposure.History) (out chances) {
	knocked := chances{.55, .28, .12, .03, .02, 0}
	first := p.Face == car.Outer || slices.Contains([]string{"front_floor", "rear_floor", "seat_pan", "trunk_floor"}, p.ID)
	switch r {
	case 2:
		out = mended(p, first, .85, [3]float64{.40, .35, .25}, rust(exposure.PaintedAgain, history.AgeYears))
	case 3:
		missed := .30
		if first {
			missed = .12
		}
		reached := rust(exposure.Renewed, history.WorkYearsAgo)
		for k, v := range mended(p, first, .08, [3]float64{.50, .30, .20}, rust(exposure.AsItIs, history.AgeYears)) {
			out[k] = missed*v + (1-missed)*reached[k]
		}
	default:
		out = mended(p, first, [2]float64{.08, .60}[r], [3]float64{.50, .30, .20}, rust(exposure.AsItIs, history.AgeYears))
	}
	if p.Face == car.Outer {
		knock := [damage.RepairStates]float64{.01, .04, .06, .03}[r]
		for k := range out {
			out[k] = (1-knock)*out[k] + knock*knocked[k]
		}
	}
	return out
}

// mended repairs holes with probability q: by a patch, with filler, or properly.
func mended(p *car.Part, first bool, q float64, kinds [3]float64, rust chances) (out chances) {
	if !first {
		q /= 2
	}
	then := [3]chances{{0, 0, 0, 0, .65, .35}, {0, 0, 0, 0, .75, .25}, {.55, .28, .12, .03, .02, 0}}
	if p.Face != car.Outer {
		kinds[0], kinds[1] = kinds[0]+kinds[1], 0
	}
	holes := rust[3] + rust[4] + rust[5]
	for k := range out {
		out[k] = rust[k]
		if k >= 3 {
			out[k] *= 1 - q
		}
		for n, share := range kinds {
			out[k] += holes * q * share * then[n][k]
		}
	}
	return out
}
