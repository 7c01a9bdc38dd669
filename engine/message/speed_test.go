package message

import (
	"os"
	"testing"

	"underpaint/engine/carfile"
	"underpaint/engine/rates"
)

// BenchmarkReply is the cost of saying the range of 20,480 imagined cars, to be
// held against BenchmarkBlock, the cost of imagining 256 more, each in all its turns.
func BenchmarkReply(b *testing.B) {
	s := settledSession(b)
	for b.Loop() {
		s.Reply(1, Settled)
	}
}

func BenchmarkBlock(b *testing.B) {
	s := settledSession(b)
	for b.Loop() {
		b.StopTimer()
		s.job.key = ""
		if err := s.Open(s.job.car); err != nil {
			b.Fatal(err)
		}
		b.StartTimer()
		s.rough()
	}
}

func BenchmarkOpenCar(b *testing.B) {
	s := settledSession(b)
	for b.Loop() {
		s.job.key = ""
		if err := s.Open(s.job.car); err != nil {
			b.Fatal(err)
		}
	}
}

func settledSession(b *testing.B) *Session {
	b.Helper()
	s, err := NewSession(rates.Sample())
	if err != nil {
		b.Fatal(err)
	}
	c, err := carfile.Decode([]byte(goodCar))
	if err != nil {
		b.Fatal(err)
	}
	if err := s.Open(c); err != nil {
		b.Fatal(err)
	}
	s.Settle()
	return s
}

// BenchmarkEntry is the time from one entry of a full survey to the new range in
// the rough: odds conditioned on 91 records and 48 looks, a block of imagined cars.
// BenchmarkTally is what every press costs while the range is hidden.
func BenchmarkEntry(b *testing.B) {
	s, c := surveyedSession(b)
	for b.Loop() {
		s.job = nil
		if err := s.Open(c); err != nil {
			b.Fatal(err)
		}
		s.rough()
	}
}

func BenchmarkTally(b *testing.B) {
	s, c := surveyedSession(b)
	for b.Loop() {
		if _, err := s.tally(1, c); err != nil {
			b.Fatal(err)
		}
	}
}

func surveyedSession(b *testing.B) (*Session, *carfile.Car) {
	b.Helper()
	s, err := NewSession(rates.Sample())
	if err != nil {
		b.Fatal(err)
	}
	text, err := os.ReadFile("../../site/pages/samples/two-door-surveyed.json")
	if err != nil {
		b.Fatal(err)
	}
	c, err := carfile.Decode(text)
	if err != nil {
		b.Fatal(err)
	}
	return s, c
}
