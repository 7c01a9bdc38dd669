package message

import (
	"testing"

	"underpaint/engine/carfile"
	"underpaint/engine/rates"
	"underpaint/engine/session"
	"underpaint/engine/wording"
)

// BenchmarkReply measures the reply with the range of 20,480 simulated cars. Compare it
// with session's BenchmarkBlock, which simulates 256 more cars.
func BenchmarkReply(b *testing.B) {
	s, err := session.New(rates.Sample())
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
	t, err := wording.For(s.Shop)
	if err != nil {
		b.Fatal(err)
	}
	r := s.Ranges(s.Settle())
	for b.Loop() {
		Encode(1, NewRange(s, t, r))
	}
}
