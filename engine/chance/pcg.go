package chance

import "math/bits"

// pcg is the generator of [Stream]. It gives the same sequence as rand.PCG of
// math/rand/v2 (tested) and is implemented here so that Fill can draw many numbers in
// one call.
type pcg struct{ hi, lo uint64 }

// The multiplier and increment of the 128-bit state and the multiplier of the
// output function are those of O'Neill's PCG library, as math/rand/v2 has them.
const (
	stateTimesHigh = 0x2360ed051fc65da4
	stateTimesLow  = 0x4385df649fccf645
	statePlusHigh  = 0x5851f42d4c957f2d
	statePlusLow   = 0x14057b7ef767814f
	outputTimes    = 0xda942042e4dd58b5

	// Two steps equal one step with the multiplier squared and the increment times
	// (multiplier + 1), modulo 2^128.
	twiceTimesHigh = 0x17bce35bdf69743c
	twiceTimesLow  = 0x529ed9eb20e0ae99
	twicePlusHigh  = 0x4871bec9994273f8
	twicePlusLow   = 0xac1f8a1c3883459a
)

// next returns the next 64 bits.
func (p *pcg) next() uint64 {
	p.hi, p.lo = once(p.hi, p.lo)
	return scramble(p.hi, p.lo)
}

// once and twice return the state one and two steps on.
func once(hi, lo uint64) (uint64, uint64) {
	up, low := bits.Mul64(lo, stateTimesLow)
	low, carry := bits.Add64(low, statePlusLow, 0)
	return up + uint64(hi*stateTimesLow) + uint64(lo*stateTimesHigh) + statePlusHigh + carry, low
}

func twice(hi, lo uint64) (uint64, uint64) {
	up, low := bits.Mul64(lo, twiceTimesLow)
	low, carry := bits.Add64(low, twicePlusLow, 0)
	return up + uint64(hi*twiceTimesLow) + uint64(lo*twiceTimesHigh) + twicePlusHigh + carry, low
}

// scramble is the output function of a state, DXSM ("double xorshift multiply").
func scramble(hi, lo uint64) uint64 {
	hi = uint64((hi ^ hi>>32) * outputTimes)
	return uint64((hi ^ hi>>48) * (lo | 1))
}

// Fill writes the next numbers to dst. They are the same as from len(dst) calls of
// [Stream.Uniform], but it is faster: the state stays in registers, and it computes two
// numbers at a time whose products do not depend on each other.
func (s *Stream) Fill(dst []float64) {
	if s.given != nil {
		n := copy(dst, s.given)
		dst, s.given = dst[n:], s.given[n:]
		if s.prefix && len(s.given) == 0 {
			s.given = nil
		} else if len(dst) > 0 {
			panic("engine: internal error: more uniforms asked than a script has")
		}
	}
	hi, lo := s.pcg.hi, s.pcg.lo
	oddHi, oddLo := once(hi, lo)
	i := 0
	for ; i < len(dst)-1; i += 2 {
		hi, lo = twice(hi, lo)
		dst[i], dst[i+1] = openUniform(scramble(oddHi, oddLo)), openUniform(scramble(hi, lo))
		oddHi, oddLo = twice(oddHi, oddLo)
	}
	if i < len(dst) {
		hi, lo = oddHi, oddLo
		dst[i] = openUniform(scramble(hi, lo))
	}
	s.pcg.hi, s.pcg.lo = hi, lo
}
