package pastjobs

import (
	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/damage"
	"underpaint/engine/estimate"
	"underpaint/engine/pastjobs/scores"
	"underpaint/engine/pricing"
	"underpaint/engine/rates"
)

// hours compares the hours worked with those expected after the survey, on the starting
// figures. The hours worked include those of the strip, so the latter do not count as
// known beforehand.
func (k *known) hours(job *Job, r *rates.Rates) ([]HoursMiss, error) {
	if job.Hours == [car.Trades]float64{} || job.More[ChangesAgreed] > 0 {
		return nil, nil // nobody can tell the hours of agreed changes from the rest
	}
	c := *k.car
	c.StripHours = [car.Trades]float64{}
	stage, plain := c.LastStage(), r.With(nil)
	m, err := k.model(stage, plain) // the odds of rust do not depend on strip hours
	if err != nil {
		return nil, err
	}
	t, err := k.table(&c, stage, plain)
	if err != nil {
		return nil, err
	}
	var logs [car.Trades][]float64
	estimate.Imagine(m, t, scoreSeed, hoursCars, func(_ int, _ *damage.Car, b *pricing.Bill) {
		for trade := range logs {
			if h := b.StripHours[trade] + b.AfterHours[trade]; h > 0 {
				logs[trade] = append(logs[trade], chance.Log(float64(h)/1000))
			}
		}
	})
	var out []HoursMiss
	for trade, h := range job.Hours {
		// A trade with work in only a few of the cars has no level to compare with.
		if h > 0 && len(logs[trade]) > hoursCars*9/10 {
			mean, variance := moments(logs[trade])
			out = append(out, HoursMiss{car.Trade(trade), chance.Log(h) - mean, max(variance, scores.LeastVariance)})
		}
	}
	return out, nil
}

func moments(v []float64) (mean, variance float64) {
	for _, x := range v {
		mean += x
	}
	mean /= float64(len(v))
	for _, x := range v {
		variance += float64((x - mean) * (x - mean))
	}
	return mean, variance / float64(len(v)-1)
}
