package message

import (
	"testing"

	"underpaint/engine/rates"
)

// BenchmarkReply is the cost of saying the range of 20,480 imagined cars, to be
// held against BenchmarkBlock, the cost of imagining 1,024 more.
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
	c, err := DecodeCar([]byte(goodCar))
	if err != nil {
		b.Fatal(err)
	}
	if err := s.Open(c); err != nil {
		b.Fatal(err)
	}
	s.Settle()
	return s
}
