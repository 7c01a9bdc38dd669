package session

import (
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/rates"
)

// TestPromiseEnds: a promise until a day ends on that day; one of some months ends that
// long after the strip began, which is the day of the survey less the weeks of the strip;
// before there is a survey nobody knows the day; and one without an end has none.
func TestPromiseEnds(t *testing.T) {
	s := opened(t)
	c := decoded(t, seenCar)
	stages, err := s.openStages(c)
	if err != nil {
		t.Fatal(err)
	}
	table := stages.priced()
	day, ok := surveyed(c)
	if !ok {
		t.Fatal("the car has no survey")
	}
	c.StripHours = [car.Trades]float64{25, 50, 25, 25, 50}
	ends := func(c *carfile.Car, p rates.Promise) *PromiseEnd {
		own, r := *table, *table.Rates
		r.OverTime = &rates.OverTime{Promise: p}
		own.Rates = &r
		return promiseEnd(c, &own)
	}
	months := rates.Promise{How: rates.HeldMonths, Months: 12, From: rates.FromBegun}
	// 175 hours at 25 hours a week, the sample's likely figure, are seven weeks.
	if got, want := ends(c, months), rates.AfterMonths(rates.AfterDays(day, -49), 12); got.On != want || !got.About {
		t.Errorf("twelve months from the start: %+v, expected %s", got, want)
	}
	told := c.Cut(carfile.Told)
	authorized := months
	authorized.From = rates.FromAuthorized
	for what, got := range map[string]*PromiseEnd{"before the survey": ends(told, months), "from the authorization": ends(c, authorized)} {
		if got == nil || got.On != "" {
			t.Errorf("%s: %+v, although nobody knows the day", what, got)
		}
	}
	if got := ends(told, rates.Promise{How: rates.HeldUntil, Until: "2027-06-03"}); got.On != "2027-06-03" || got.About {
		t.Errorf("until a day: %+v", got)
	}
	for _, how := range []string{rates.HeldThroughout, rates.NotHeld} {
		if got := ends(c, rates.Promise{How: how}); got != nil {
			t.Errorf("%s: %+v", how, got)
		}
	}
}

// TestHeldLong: prices held for a whole job are worth a word once 1 job in 10 takes more
// than two years, and no other promise is.
func TestHeldLong(t *testing.T) {
	for slow, change := range map[bool]rates.Promise{true: {How: rates.HeldThroughout}, false: {How: rates.NotHeld}} {
		for _, hours := range [][3]float64{{5, 8, 10}, {100, 150, 200}} {
			side := newSide(t, change, hours)
			got := (&RatesComparison{new: side}).HeldLong()
			if want := slow && hours[0] == 5; (got > rates.LongestHeld) != want || !want && got != 0 {
				t.Errorf("%s at %v hours a week: %.0f weeks", change.How, hours, got)
			}
		}
	}
}

// newSide is one car at the sample's rates with another promise and other hours a week.
func newSide(t *testing.T, p rates.Promise, hours [3]float64) *ratesSide {
	t.Helper()
	s := opened(t)
	r := *s.Rates
	over := *r.OverTime
	over.Promise = p
	r.OverTime, r.Time.HoursAWeek = &over, hours
	own, err := Of(&r)
	if err != nil {
		t.Fatal(err)
	}
	side, err := sideOf(own, []*carfile.Car{decoded(t, seenCar)})
	if err != nil {
		t.Fatal(err)
	}
	side.cars[0].run.Begin()
	return side
}
