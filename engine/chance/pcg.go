package chance

import "math/bits"

// pcg is the generator of [Stream], the same sequence as rand.PCG of math/rand/v2
// (tested), written here so that many numbers can be drawn in one go.
type pcg struct{ hi, lo uint64 }

// The multiplier and increment of the 128-bit state and the multiplier of the
// output function are those of O'Neill's PCG library, as math/rand/v2 has them.
const (
	stateTimesHigh = 2549297995355413924
	stateTimesLow  = 4865540595714422341
	statePlusHigh  = 6364136223846793005
	statePlusLow   = 1442695040888963407
	outputTimes    = 0xda942042e4dd58b5
)

// next returns the next 64 bits.
func (p *pcg) next() uint64 {
	hi, lo := bits.Mul64(p.lo, stateTimesLow)
	hi += uint64(p.hi*stateTimesLow) + uint64(p.lo*stateTimesHigh)
	lo, carry := bits.Add64(lo, statePlusLow, 0)
	hi += statePlusHigh + carry
	p.hi, p.lo = hi, lo
	return scramble(hi, lo)
}

// scramble is the output function of a state, DXSM ("double xorshift multiply").
func scramble(hi, lo uint64) uint64 {
	hi = uint64((hi ^ hi>>32) * outputTimes)
	return uint64((hi ^ hi>>48) * (lo | 1))
}

// Fill writes the next numbers to dst, the same as as many calls of [Stream.Uniform]
// but faster, for the state stays in registers.
func (s *Stream) Fill(dst []float64) {
	for len(dst) > 0 && s.script != nil {
		dst[0] = s.Uniform()
		dst = dst[1:]
	}
	hi, lo := s.pcg.hi, s.pcg.lo
	for i := range dst {
		up, low := bits.Mul64(lo, stateTimesLow)
		up += uint64(hi*stateTimesLow) + uint64(lo*stateTimesHigh)
		sum, carry := bits.Add64(low, statePlusLow, 0)
		hi, lo = up+statePlusHigh+carry, sum
		dst[i] = openUniform(scramble(hi, lo))
	}
	s.pcg.hi, s.pcg.lo = hi, lo
}
