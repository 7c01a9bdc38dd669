package chance

import "math/bits"

// Latin is one randomisation of a Latin hypercube that grows (M. D. McKay, R. J.
// Beckman and W. J. Conover, Technometrics 21, 1979): for the many coordinates that
// matter little each, which [Points] has no room for. Every coordinate by itself is
// evenly spread: of 2^k numbers from a multiple of 2^k on, one falls into every
// interval of 2^-k. Over randomisations every point is uniform, so a mean over points
// is unbiased; what one coordinate does by itself hardly shows in its error, and what
// coordinates do together shows about as it does with random points (tested).
//
// Each coordinate is a digital sequence in base 2 moved by a random digital shift. All
// of it is whole-number arithmetic: the same points everywhere. Neighbouring points are
// found fastest.
type Latin struct {
	of           *Matrices
	now          []uint32 // by coordinate: point n in this replicate, in units of 2^-32
	n, replicate uint32
}

// Matrices are those of a Latin hypercube: for each coordinate a random lower
// triangular matrix (J. Matoušek, Journal of Complexity 14, 1998) times a random upper
// triangular one (H. Faure and S. Tezuka, in: Monte Carlo and Quasi-Monte Carlo Methods
// 2000, 2002), both with ones on the diagonal, and such a product for its replicates.
type Matrices struct {
	points     [latinDigits][]uint32 // columns, by digit of the point, then by coordinate
	replicates [replicateDigits][]uint32
}

const (
	latinDigits     = 16
	replicateDigits = 3
	// LatinPoints is how many points there are.
	LatinPoints = 1 << latinDigits
	// MostReplicates is how many replicates each point has.
	MostReplicates = 1 << replicateDigits
)

// NewMatrices draws the matrices of so many coordinates, the same of each however many
// follow.
func NewMatrices(coordinates int, s *Stream) *Matrices {
	m := &Matrices{}
	for c := range m.points {
		m.points[c] = make([]uint32, coordinates)
	}
	for c := range m.replicates {
		m.replicates[c] = make([]uint32, coordinates)
	}
	for k := range coordinates {
		setColumns(m.points[:], k, s)
		setColumns(m.replicates[:], k, s)
	}
	return m
}

// setColumns draws a product of matrices for coordinate k. Row r of a column is its
// bit 31−r.
func setColumns(columns [][]uint32, k int, s *Stream) {
	var lower [latinDigits]uint32
	for c := range columns {
		random := s.Uint64()
		diagonal := uint32(1) << (31 - c)
		lower[c] = diagonal | uint32(random>>32)&(diagonal-1)
		v := lower[c]
		for r, column := range lower[:c] {
			if random>>r&1 == 1 {
				v ^= column
			}
		}
		columns[c][k] = v
	}
}

// Shifted is one randomisation, its shifts taken from the stream.
func (m *Matrices) Shifted(s *Stream) *Latin {
	l := &Latin{of: m, now: make([]uint32, len(m.points[0]))}
	for k := range l.now {
		l.now[k] = uint32(s.Uint64() >> 32)
	}
	return l
}

// At fills in the first coordinates of point n, below LatinPoints, in a replicate below
// MostReplicates: numbers (k + ½)/2^32, strictly between 0 and 1. The first 2^k replicates
// of a point fall one into every interval of 2^-k in each coordinate, and the points of
// each replicate are a Latin hypercube by themselves.
func (l *Latin) At(n, replicate uint32, out []float64) {
	if n >= LatinPoints || replicate >= MostReplicates {
		panic("engine: internal error: a point of a Latin hypercube beyond the last")
	}
	l.move(l.of.points[:], l.n^n)
	l.move(l.of.replicates[:], l.replicate^replicate)
	l.n, l.replicate = n, replicate
	for k, v := range l.now[:len(out)] {
		out[k] = openUniform32(v)
	}
}

// move adds, digit by digit without carry, the columns of the digits that change.
func (l *Latin) move(columns [][]uint32, changed uint32) {
	for ; changed != 0; changed &= changed - 1 {
		for k, v := range columns[bits.TrailingZeros32(changed)] {
			l.now[k] ^= v
		}
	}
}
