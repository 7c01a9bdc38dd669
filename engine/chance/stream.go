package chance

import "math"

// Stream is a reproducible sequence of random numbers: the PCG-DXSM generator of
// math/rand/v2 (M. O'Neill, "PCG: a family of simple fast space-efficient
// statistically good algorithms for random number generation", 2014; 128 bits of
// state). It is a small value; a copy continues independently from the same position.
// The zero Stream is NewStream(0, 0).
type Stream struct {
	pcg    pcg
	given  []float64
	prefix bool // the generator continues where the given numbers end
}

// FixedStream is a stream that gives the numbers of a list one after another and panics
// beyond its end. It serves to find out the result for given numbers. It has no bits, so
// do not call Uint64.
func FixedStream(uniforms []float64) Stream { return Stream{given: uniforms} }

// StreamWithPrefix is a stream that gives the numbers of a list, which is not copied,
// and then continues as NewStream(seed, index).
func StreamWithPrefix(first []float64, seed, index uint64) Stream {
	s := NewStream(seed, index)
	if len(first) > 0 {
		s.given, s.prefix = first, true
	}
	return s
}

// NewStream returns the same sequence as rand.NewPCG(seed, index). Neighbouring seeds
// and neighbouring indexes give sequences that appear independent (tested). Seeds that
// differ only in their upper 20 bits or so do not, so hash such seeds first.
func NewStream(seed, index uint64) Stream {
	return Stream{pcg: pcg{seed, index}}
}

// Uint64 returns the next 64 random bits.
func (s *Stream) Uint64() uint64 {
	return s.pcg.next()
}

// Uniform returns the next number strictly between 0 and 1: (k + ½)/2^52, where k is the
// upper 52 bits of Uint64. Every such number is exact, and so is 1 minus it. With one
// bit more the largest would round to 1.
func (s *Stream) Uniform() float64 {
	if s.given != nil {
		return s.nextGiven()
	}
	return openUniform(s.pcg.next())
}

func (s *Stream) nextGiven() float64 {
	next := s.given[0]
	s.given = s.given[1:]
	if s.prefix && len(s.given) == 0 {
		s.given = nil
	}
	return next
}

// openUniform32 is (x + ½)/2^32, strictly between 0 and 1.
func openUniform32(x uint32) float64 { return float64((float64(x) + 0.5) * 0x1p-32) }

// openUniform reads the upper bits as a number in [1, 2) and subtracts 1 − 2^-53.
func openUniform(bits uint64) float64 {
	return math.Float64frombits(0x3ff<<52|bits>>12) - (1 - 0x1p-53)
}
