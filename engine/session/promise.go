package session

import (
	"underpaint/engine/carfile"
	"underpaint/engine/estimate"
	"underpaint/engine/pricing"
	"underpaint/engine/rates"
)

// PromiseEnd says when the shop no longer holds its prices for a car.
type PromiseEnd struct {
	Promise *rates.Promise
	On      string // YYYY-MM-DD; "" = not known yet
	About   bool   // On is worked back from the day of the survey, good to some weeks
	Still   estimate.Quantiles
}

// promiseEnd returns when the promise of the shop ends on a car, nil where there is none
// that ends. Months that count from the start of the strip are counted from the day of the
// survey, less the weeks that the strip takes at the likely hours a week.
func promiseEnd(c *carfile.Car, t *pricing.Table) *PromiseEnd {
	if t.Rates.OverTime == nil {
		return nil
	}
	p := &t.Rates.OverTime.Promise
	out := &PromiseEnd{Promise: p}
	switch p.How {
	case rates.HeldUntil:
		out.On = p.Until
	case rates.HeldMonths:
		if day, ok := surveyed(c); ok && p.From == rates.FromBegun {
			begun := rates.AfterDays(day, -int(float64(stripWeeks(c, t)*7)+0.5))
			out.On, out.About = rates.AfterMonths(begun, p.Months), true
		}
	default:
		return nil
	}
	return out
}

// surveyed returns the day of the survey.
func surveyed(c *carfile.Car) (day string, ok bool) {
	for _, s := range c.Stages {
		if s.Stage == carfile.Survey {
			return s.On, true
		}
	}
	return "", false
}

// stripWeeks is how long the strip took, by the hours worked where they are known and by
// the likely hours of the other trades.
func stripWeeks(c *carfile.Car, t *pricing.Table) float64 {
	hours := 0.0
	for trade, h := range t.StripOutlook() {
		if worked := c.StripHours[trade]; worked > 0 {
			hours += worked
		} else {
			hours += h[1]
		}
	}
	return hours / t.Rates.Time.HoursAWeek[1]
}
