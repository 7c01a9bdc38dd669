package rates

import (
	"math"
	"slices"
	"strings"
	"testing"
	"time"
)

// TestOverTimeLeftOut: a file that says nothing about prices over time has none, and the
// check code that it had before there was such a member.
func TestOverTimeLeftOut(t *testing.T) {
	for _, c := range []struct {
		sample []byte
		code   string
	}{{Sample(), "10d43 0c88d"}, {SampleUK(), "b4620 84ee9"}} {
		with := decode(t, c.sample)
		without := decode(t, changed(t, c.sample, "prices_over_time", missing))
		if without.OverTime != nil || without.CheckCode() != c.code {
			t.Errorf("left out: %+v, check code %s, before %s", without.OverTime, without.CheckCode(), c.code)
		}
		if with.OverTime == nil || with.CheckCode() == c.code {
			t.Errorf("in the sample: %+v, check code %s", with.OverTime, with.CheckCode())
		}
	}
}

// TestPromises: every kind of promise is read as it is written, and the day from which
// months count is the authorization unless the file says otherwise.
func TestPromises(t *testing.T) {
	for text, want := range map[string]Promise{
		`{"how":"held_months","months":12,"on":["labour"]}`:                                   {How: HeldMonths, Months: 12, From: FromAuthorized, On: []string{OnLabour}},
		`{"how":"held_months","months":60,"from":"strip_begins","on":["materials","labour"]}`: {How: HeldMonths, Months: 60, From: FromBegun, On: []string{OnLabour, OnMaterials}},
		`{"how":"held_until","until":"2026-06-03","on":["materials"]}`:                        {How: HeldUntil, Until: "2026-06-03", On: []string{OnMaterials}},
		`{"how":"held_for_the_whole_job","on":["labour"]}`:                                    {How: HeldThroughout, On: []string{OnLabour}},
		`{"how":"not_held"}`:         {How: NotHeld},
		`{"how":"not_held","on":[]}`: {How: NotHeld},
	} {
		got := decode(t, changed(t, Sample(), "prices_over_time.promise", raw(text))).OverTime.Promise
		if got.How != want.How || got.Months != want.Months || got.From != want.From || got.Until != want.Until || !slices.Equal(got.On, want.On) {
			t.Errorf("%s: read as %+v", text, got)
		}
	}
}

// TestPromiseBesideAWrongDate: where the day of the rates is no date, that alone is the
// fault.
func TestPromiseBesideAWrongDate(t *testing.T) {
	_, faults := Check(changed(t, Sample(), "rates_of", 3, "prices_over_time.promise", raw(`{"how":"held_until","until":"2026-12-31","on":["labour"]}`)))
	if len(faults) != 1 || !strings.HasPrefix(faults[0].Error(), "rates_of:") {
		t.Errorf("%v", faults)
	}
}

// TestSampleRises recomputes what the samples quote. The index of consumer prices for the
// maintenance and repair of motor vehicles, urban wage earners (Bureau of Labor Statistics,
// CWSR0000SETD), stood at 100 on average over 1982 to 1984 and at 440.04 in July 2025, and
// had risen by 7.2 % in twelve months; motor vehicle body work rose by 2.5 % a year from 2006
// to 2016 (the same bureau, quoted in the Auto Care Association's factbook of 2018). Weekly
// earnings in Great Britain rose by 2.3 to 2.9 % (2017), 5.6 to 6.1 % (autumn 2024 to
// February 2025) and 8.1 % (private sector, May to July 2023; Office for National
// Statistics); factory-gate prices by 14.7 % (December 2022) and −1.2 % (2015).
func TestSampleRises(t *testing.T) {
	us, uk := decode(t, Sample()).OverTime, decode(t, SampleUK()).OverTime
	day := func(year int, month time.Month) time.Time { return time.Date(year, month, 1, 0, 0, 0, 0, time.UTC) }
	// The middle of the base period, 1982 to 1984, is the middle of 1983.
	years := day(2025, time.July).Sub(day(1983, time.July)).Hours() / 24 / 365.2425
	longRun := 100 * (math.Pow(440.04/100, 1/years) - 1)
	if math.Abs(longRun-3.6) > 0.05 || math.Abs(us.Labour[1]-longRun) > 0.2 {
		t.Errorf("index: %.2f %% a year over %.1f years; likely in the sample %g", longRun, years, us.Labour[1])
	}
	if us.Labour[0] > 2.5 || us.Labour[0] < 1.5 || math.Abs(us.Labour[2]-7.2) > 0.3 {
		t.Errorf("labour in the US from %g to %g, published 2.5 and 7.2", us.Labour[0], us.Labour[2])
	}
	if low, high := 2.3, 8.1; uk.Labour[0] < low || uk.Labour[0] > 2.9 || uk.Labour[2] > high || uk.Labour[2] < 6.1 {
		t.Errorf("labour in the UK from %g to %g, published %g to %g", uk.Labour[0], uk.Labour[2], low, high)
	}
	if low, high := -1.2, 14.7; uk.Parts[0] < low || uk.Parts[2] > high || uk.Parts != uk.Materials {
		t.Errorf("parts in the UK %v, published %g to %g in single years", uk.Parts, low, high)
	}
}

// TestCalendar compares with Go's own calendar.
func TestCalendar(t *testing.T) {
	first := time.Date(1999, time.December, 30, 0, 0, 0, 0, time.UTC)
	from := first.Format(time.DateOnly)
	for n := range 12000 {
		to := first.AddDate(0, 0, n).Format(time.DateOnly)
		if got, back := DaysBetween(from, to), AfterDays(from, n); got != n || back != to || AfterDays(to, -n) != from {
			t.Fatalf("%d days to %s, by the calendar %d; after them %s", got, to, n, back)
		}
	}
	for n := range 60 {
		// Days up to the 28th are in every month.
		want := time.Date(2026, time.June, 22, 0, 0, 0, 0, time.UTC).AddDate(0, n, 0).Format(time.DateOnly)
		if got := AfterMonths("2026-06-22", n); got != want {
			t.Errorf("%d months: %s, by the calendar %s", n, got, want)
		}
	}
	if a, b := AfterMonths("2027-08-31", 6), AfterMonths("2026-12-31", 2); a != "2028-02-29" || b != "2027-02-28" {
		t.Errorf("the last of a shorter month: %s, %s", a, b)
	}
}
