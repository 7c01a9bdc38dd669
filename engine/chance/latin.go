package chance

import "math/bits"

// Latin is one randomisation of an extensible Latin hypercube (M. D. McKay, R. J.
// Beckman and W. J. Conover, Technometrics 21, 1979). It serves the many coordinates
// that each matter little, for which [Points] has no room. Every single coordinate is
// evenly spread: of 2^k numbers starting at a multiple of 2^k, exactly one falls into
// every interval of length 2^-k. Over randomisations every point is uniform, so a mean
// over points is unbiased. The effect of single coordinates hardly adds to the error of
// a mean; the effect of their interactions adds about as much as with random points
// (tested).
//
// Each coordinate is a digital sequence in base 2 with a random digital shift. The
// arithmetic uses whole numbers only, so the points are the same everywhere. Moving to
// a neighbouring point is fastest.
type Latin struct {
	of           *Matrices
	now          []uint32 // by coordinate: point n in this replicate, in units of 2^-32
	n, replicate uint32
}

// Matrices are the generating matrices of a Latin hypercube. For each coordinate they
// are a random lower triangular matrix (J. Matoušek, Journal of Complexity 14, 1998)
// times a random upper triangular one (H. Faure and S. Tezuka, in: Monte Carlo and
// Quasi-Monte Carlo Methods 2000, 2002), both with ones on the diagonal, and another
// such product for the replicates.
type Matrices struct {
	points     [latinDigits][]uint32 // columns, by digit of the point, then by coordinate
	replicates [replicateDigits][]uint32
}

const (
	latinDigits     = 16
	replicateDigits = 3
	// LatinPoints is the number of points.
	LatinPoints = 1 << latinDigits
	// MostReplicates is the number of replicates of each point.
	MostReplicates = 1 << replicateDigits
)

// NewMatrices draws the matrices of the given number of coordinates. Those of the first
// coordinates do not depend on how many follow.
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

// setColumns draws the product of matrices for coordinate k. Row r of a column is its
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

// Shifted returns one randomisation, with shifts drawn from the stream.
func (m *Matrices) Shifted(s *Stream) *Latin {
	l := &Latin{of: m, now: make([]uint32, len(m.points[0]))}
	for k := range l.now {
		l.now[k] = uint32(s.Uint64() >> 32)
	}
	return l
}

// At writes the first len(out) coordinates of point n in a replicate: numbers
// (k + ½)/2^32, strictly between 0 and 1. In each coordinate, exactly one of the first
// 2^k replicates of a point falls into every interval of length 2^-k, and the points of
// each replicate alone are a Latin hypercube. It panics unless n is below LatinPoints
// and replicate below MostReplicates.
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

// move adds the columns of the digits that change, without carry.
func (l *Latin) move(columns [][]uint32, changed uint32) {
	for ; changed != 0; changed &= changed - 1 {
		for k, v := range columns[bits.TrailingZeros32(changed)] {
			l.now[k] ^= v
		}
	}
}
