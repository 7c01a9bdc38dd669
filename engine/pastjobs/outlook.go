package pastjobs

import (
	"slices"

	"underpaint/engine/chance"
	"underpaint/engine/damage"
	"underpaint/engine/estimate"
	"underpaint/engine/money"
	"underpaint/engine/pastjobs/scores"
	"underpaint/engine/pricing"
	"underpaint/engine/rates"
)

// outlook is what the figures say about a car by a stage: its odds, conditioned once, and
// its price table without doubt.
type outlook struct {
	model *damage.Model
	table *pricing.Table
	doubt pricing.Doubt
}

func (k *known) at(stage string, r *rates.Rates) (o outlook, err error) {
	if o.model, err = k.model(stage, r); err != nil {
		return o, err
	}
	o.table, err = k.table(k.car, stage, r)
	o.doubt = pricing.DoubtAt(r, stage)
	return o, err
}

// told returns the prices of simulated cars that agree with everything known, in
// increasing order, with the doubt about the figures: a range is read off these.
func (o outlook) told() []int64 { return o.prices(o.table.Doubting(o.doubt)) }

// sure returns them without the doubt, which is what the figures alone say.
func (o outlook) sure() []int64 { return o.prices(o.table) }

func (o outlook) prices(t *pricing.Table) []int64 {
	out := make([]int64, 0, rangeCars)
	estimate.Imagine(o.model, t, scoreSeed, rangeCars, func(_ int, _ *damage.Car, b *pricing.Bill) { out = append(out, int64(b.Total)) })
	slices.Sort(out)
	return out
}

// miss compares what a job's work after the strip came to with what the figures alone say.
// The strip of the job is taken at its mean, because a finished job does not tell it
// apart. ok is false where less than that was paid in all.
func (o outlook) miss(found money.Minor) (m scores.Miss, ok bool) {
	logs, strips := make([]float64, 0, rangeCars), money.Minor(0)
	estimate.Imagine(o.model, o.table, scoreSeed, rangeCars, func(_ int, _ *damage.Car, b *pricing.Bill) {
		logs = append(logs, chance.Log(float64(b.Total-b.Strip)))
		strips += b.Strip
	})
	after := float64(found) - float64(float64(strips)/rangeCars)
	if after <= 0 {
		return m, false
	}
	mean, variance := moments(logs)
	return scores.Miss{Residual: chance.Log(after) - mean, Variance: variance}, true
}
