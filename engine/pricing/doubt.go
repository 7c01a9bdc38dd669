package pricing

import (
	"math"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/money"
	"underpaint/engine/rates"
)

// Doubt is what the figures themselves may have wrong about one car. Hours and money of
// all work after the strip are multiplied by e^(Growth + SD·z), with one standard normal
// z for each simulated car; the strip and survey has its own price. The zero value
// doubts nothing.
type Doubt struct {
	SD     float64 // standard deviation of the log
	Growth float64 // median of the log: by how much jobs usually grow
}

// WaysStage is the stage of [DoubtAt] at which every way of repair is chosen.
const WaysStage = "ways"

// DoubtAt returns what a shop's rates say about the doubt at a stage, one of
// rates.DoubtStages. What its jobs taught at one stage moves the growth of the others by
// as much, and scales their doubts in proportion.
func DoubtAt(r *rates.Rates, stage string) Doubt {
	shared, own, growth := r.Doubt.Shared[stage], r.Doubt.Own[stage], grown(r.Growth(stage))
	if l := r.Own.Doubt; l != nil {
		shared, own = inProportion(shared, l.Shared, r.Doubt.Shared[l.From]), inProportion(own, l.Own, r.Doubt.Own[l.From])
		growth += grown(l.Growth) - grown(r.Growth(l.From))
	}
	return Doubt{SD: math.Sqrt(float64(shared*shared) + float64(own*own)), Growth: growth}
}

func grown(percent float64) float64 { return chance.Log(1 + percent/100) }

// inProportion scales a doubt as the one at the learnt stage went from was to is.
func inProportion(v, is, was float64) float64 {
	if was == 0 {
		return v
	}
	return float64(v * (is / was))
}

// Doubting returns a copy of the table that doubts its figures so far. A table without
// doubt, and a copy of it with the zero Doubt, give the same bills.
func (t *Table) Doubting(d Doubt) *Table {
	out := *t
	out.doubt = d
	return &out
}

// Doubt is how far the table doubts its figures.
func (t *Table) Doubt() Doubt { return t.doubt }

// factor is what the work of one car is multiplied by. u is a uniform.
func (d Doubt) factor(u float64) float64 {
	if d == (Doubt{}) {
		return 1
	}
	return chance.Exp(d.Growth + float64(d.SD*chance.NormalQuantile(u)))
}

// scaled multiplies the factor of every trade.
func scaled(f [car.Trades]float64, by float64) [car.Trades]float64 {
	for trade := range f {
		f[trade] *= by
	}
	return f
}

// wronged is an amount with what the figures have wrong about this car.
func (b *Bill) wronged(amount money.Minor) money.Minor {
	return wholeMinor(float64(float64(amount) * b.wrong))
}
