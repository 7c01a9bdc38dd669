package session

import (
	"testing"
	"time"

	"underpaint/engine/carfile"
)

// BenchmarkBlock measures simulating 256 cars, each with all its replicates.
func BenchmarkBlock(b *testing.B) {
	s := settledSession(b)
	for b.Loop() {
		b.StopTimer()
		s.car.key = ""
		if err := s.Open(s.car.car); err != nil {
			b.Fatal(err)
		}
		b.StartTimer()
		s.Step()
	}
}

func BenchmarkOpenCar(b *testing.B) {
	s := settledSession(b)
	for b.Loop() {
		s.car.key = ""
		if err := s.Open(s.car.car); err != nil {
			b.Fatal(err)
		}
	}
}

func settledSession(b *testing.B) *Session {
	b.Helper()
	s := opened(b)
	if err := s.Open(decoded(b, goodCar)); err != nil {
		b.Fatal(err)
	}
	s.Settle()
	return s
}

// BenchmarkEntry measures the time from one entry of a full survey to the new rough
// range: odds conditioned on 91 records and 48 checks, and one block of simulated cars.
// BenchmarkTally measures what every press costs while the range is hidden.
func BenchmarkEntry(b *testing.B) {
	s, c := surveyedSession(b)
	for b.Loop() {
		s.car, s.models = nil, models{}
		if err := s.Open(c); err != nil {
			b.Fatal(err)
		}
		s.Rough()
	}
}

func BenchmarkTally(b *testing.B) {
	s, c := surveyedSession(b)
	for b.Loop() {
		if _, err := s.Tally(c); err != nil {
			b.Fatal(err)
		}
	}
}

func surveyedSession(b *testing.B) (*Session, *carfile.Car) {
	b.Helper()
	return opened(b), decoded(b, fileText("../../site/pages/samples/two-door-surveyed.json"))
}

// BenchmarkEntryAfter measures the same after an earlier entry: one record of the survey
// changes, each time of another part, and the rest of the model stays.
func BenchmarkEntryAfter(b *testing.B) {
	s, c := surveyedSession(b)
	if err := s.Open(c); err != nil {
		b.Fatal(err)
	}
	s.Rough()
	n := 0
	for b.Loop() {
		n += 7
		if err := s.Open(otherwise(c, n)); err != nil {
			b.Fatal(err)
		}
		s.Rough()
	}
}

// BenchmarkEntrySettled goes on from there until the range is settled.
func BenchmarkEntrySettled(b *testing.B) {
	s, c := surveyedSession(b)
	if err := s.Open(c); err != nil {
		b.Fatal(err)
	}
	n := 0
	for b.Loop() {
		n += 7
		if err := s.Open(otherwise(c, n)); err != nil {
			b.Fatal(err)
		}
		s.Settle()
	}
}

// BenchmarkEntryOfNothing measures an entry as a share of the same range from nothing, in
// the same run. Each entry adds to the ones before it, as in a survey.
func BenchmarkEntryOfNothing(b *testing.B) {
	s, c := surveyedSession(b)
	if err := s.Open(c); err != nil {
		b.Fatal(err)
	}
	s.Rough()
	n, entries, nothing := 0, time.Duration(0), time.Duration(0)
	rough := func() time.Duration {
		before := b.Elapsed()
		if err := s.Open(c); err != nil {
			b.Fatal(err)
		}
		s.Rough()
		return b.Elapsed() - before
	}
	for b.Loop() {
		n += 7
		c = otherwise(c, n)
		entries += rough()
		kept := s.models
		s.car, s.models = nil, models{}
		nothing += rough()
		s.models = kept
	}
	b.ReportMetric(float64(entries.Microseconds())/1000/float64(b.N), "ms/entry")
	b.ReportMetric(float64(nothing.Microseconds())/1000/float64(b.N), "ms/nothing")
	b.ReportMetric(float64(entries)/float64(nothing), "entry/nothing")
}

// otherwise returns the car with one record of its survey changed.
func otherwise(c *carfile.Car, n int) *carfile.Car {
	out := *c
	out.Survey = append([]carfile.Record{}, c.Survey...)
	r := &out.Survey[n%len(out.Survey)]
	if r.Condition == "light_pitting" {
		r.Condition = "sound"
	} else if r.Condition != "" {
		r.Condition = "light_pitting"
	}
	return &out
}
