//go:build !js

package work

import (
	"math"
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/damage"
)

// conditions are the chances of each condition of item i at every state of the
// shared factors, earlier repairs included.
func (x *exact) conditions(i int) (out []float64) {
	p := x.t.Body.PartOf(i)
	side, own := .20, .25
	if !p.SeenWhenStripped {
		side, own = .10, .35
	}
	steps := []float64{.10, .35, 1, 1.25, 2.5}
	if p.Face == car.Hidden {
		steps[0] = .15
	}
	phi := func(z float64) float64 { return 0.5 * math.Erfc(-z/math.Sqrt2) }
	for _, level := range x.levels {
		mu := level.Mu(p.Rust.M, p.Rust.B, p.Rust.Life, p.Splash, p.MM)
		for _, k := range hermite[9][0] {
			for r := range damage.RepairStates {
				for _, g := range hermite[5][0] {
					for _, q := range hermite[5][0] {
						mean := mu + .85*(math.Sqrt(.40)*k+math.Sqrt(.15)*g+math.Sqrt(side)*q)
						var rust [car.Conditions]float64
						below := 0.0
						for c, step := range steps {
							v := phi((math.Log(step) - mean) / (.85 * math.Sqrt(own)))
							rust[c], below = v-below, v
						}
						rust[5] = 1 - below
						repaired := repairedRust(p, rust, r)
						out = append(out, repaired[:]...)
					}
				}
			}
		}
	}
	return out
}

// repairedRust applies earlier repairs as data/damage.json has them.
func repairedRust(p *car.Part, rust [car.Conditions]float64, r int) (out [car.Conditions]float64) {
	replaced := [car.Conditions]float64{.55, .28, .12, .03, .02, 0}
	holed, knock := [3]float64{.08, .60, .85}[r], 0.0
	outer := p.Face == car.Outer
	if outer {
		knock = [3]float64{.01, .04, .06}[r]
	} else if !slices.Contains([]string{"front_floor", "rear_floor", "seat_pan", "trunk_floor"}, p.ID) {
		holed /= 2
	}
	patch, filler, new := .5, .3, .2
	if r == 2 {
		patch, filler, new = .2, .1, .7
	}
	if !outer {
		patch, filler = patch+filler, 0
	}
	holes := rust[3] + rust[4] + rust[5]
	for c := range out {
		kept := rust[c]
		if c >= 3 {
			kept *= 1 - holed
		}
		out[c] = knock*replaced[c] + (1-knock)*(kept+holes*holed*new*replaced[c])
	}
	out[4] += (1 - knock) * holes * holed * (patch*.65 + filler*.75)
	out[5] += (1 - knock) * holes * holed * (patch*.35 + filler*.25)
	return out
}
