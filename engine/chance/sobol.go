package chance

import (
	_ "embed"
	"math/bits"
	"strconv"
	"strings"
	"sync"
)

// Points are scrambled Sobol points: a sequence that fills a cube more evenly than
// random numbers do, randomised so that every single point is uniform and a mean over
// points is unbiased.
//
// The sequence is that of I. M. Sobol (1967) with the direction numbers of S. Joe and
// F. Y. Kuo (SIAM J. Sci. Comput. 30, 2008). Each coordinate is scrambled independently
// by nested uniform scrambling (A. B. Owen, 1995). The permutations come from hashing,
// after B. Burley, "Practical hash-based Owen scrambling", Journal of Computer Graphics
// Techniques 9(4), 2020. The arithmetic uses whole numbers only, so the points are the
// same everywhere.
type Points struct {
	seeds []uint32 // by coordinate
}

// MostDimensions is the largest number of coordinates of a point.
const MostDimensions = 96

// NewPoints returns one randomisation of points with the given number of coordinates, at
// most MostDimensions. It draws the scrambles from the stream.
func NewPoints(dimensions int, s *Stream) Points {
	p := Points{seeds: make([]uint32, dimensions)}
	for k := range p.seeds {
		p.seeds[k] = uint32(s.Uint64() >> 32)
	}
	return p
}

// At writes point n to out, one number (k + ½)/2^32 strictly between 0 and 1 for each
// coordinate.
func (p *Points) At(n uint32, out []float64) {
	directions := sobolDirections()
	for d, seed := range p.seeds {
		out[d] = openUniform32(scrambled(unscrambled(n, &directions[d]), seed))
	}
}

// unscrambled is a coordinate of point n, in units of 2^-32.
func unscrambled(n uint32, directions *[32]uint32) (x uint32) {
	for rest := n ^ n>>1; rest != 0; rest &= rest - 1 { // the Gray code of n
		x ^= directions[bits.TrailingZeros32(rest)]
	}
	return x
}

// scrambled permutes the halves of [0, 1), then the halves of each half, and so on down
// the bits. Each permutation depends on the seed and the bits above. The steps are those
// of Burley's scramble in the order and with the constants of N. Vegdahl, "Building a
// better LK hash" (2021). With Burley's own, points are placed too regularly within
// their intervals for the spread between randomisations to show the error of a mean.
func scrambled(x, seed uint32) uint32 {
	x = bits.Reverse32(x)
	x ^= uint32(x * 0x3d20adea)
	x += seed
	x = uint32(x * (seed>>16 | 1))
	x ^= uint32(x * 0x05526c56)
	x ^= uint32(x * 0x53a22864)
	return bits.Reverse32(x)
}

//go:embed data/sobol.txt
var sobolText []byte

// sobolDirections are the direction numbers by dimension and bit, starting with the
// lowest bit of the counter.
var sobolDirections = sync.OnceValue(func() *[MostDimensions][32]uint32 {
	var out [MostDimensions][32]uint32
	for k := range out[0] {
		out[0][k] = 1 << (31 - k)
	}
	for line := range strings.Lines(string(sobolText)) {
		if f := strings.Fields(line); f[0] != "#" {
			d := wholeNumber(f[0])
			out[d-1] = directionNumbers(wholeNumber(f[2]), f[3:])
		}
	}
	return &out
})

// directionNumbers continues the initial numbers m by the recurrence of the primitive
// polynomial whose inner coefficients are the bits of a (Joe and Kuo, section 2).
func directionNumbers(a int, m []string) (v [32]uint32) {
	s := len(m)
	for k := range v {
		if k < s {
			v[k] = uint32(wholeNumber(m[k])) << (31 - k)
			continue
		}
		v[k] = v[k-s] ^ v[k-s]>>s
		for j := 1; j < s; j++ {
			if a>>(s-1-j)&1 == 1 {
				v[k] ^= v[k-j]
			}
		}
	}
	return v
}

// wholeNumber reads a number of the embedded table. The tests read the whole table, so a
// panic means a damaged build.
func wholeNumber(text string) int {
	n, err := strconv.Atoi(text)
	if err != nil {
		panic("engine: internal error: the table of direction numbers: " + err.Error())
	}
	return n
}
