package chance

import (
	"math"
	"testing"
)

// latin is the randomisation with the given number, which has its own matrices.
func latin(coordinates int, number uint64) *Latin {
	s := NewStream(11, number)
	return NewMatrices(coordinates, &s).Shifted(&s)
}

// everyInterval reports whether exactly one of n numbers falls into every interval of
// length 1/n.
func everyInterval(n int, at func(k int) float64) bool {
	met := make([]bool, n)
	for k := range n {
		i := int(at(k) * float64(n))
		if met[i] {
			return false
		}
		met[i] = true
	}
	return true
}

// TestLatinFillsEveryInterval checks that coordinates are (0, 1)-sequences in base 2
// (H. Niederreiter, Random Number Generation and Quasi-Monte Carlo Methods, SIAM 1992,
// definition 4.2): of 2^k points starting at a multiple of 2^k, one is in every interval
// of length 2^-k of every coordinate; the same holds for replicates. As a control,
// points that are not consecutive fail.
func TestLatinFillsEveryInterval(t *testing.T) {
	const coordinates = 200
	l, out := latin(coordinates, 1), make([]float64, coordinates)
	at := func(n, replicate, k int) float64 { l.At(uint32(n), uint32(replicate), out); return out[k] }
	failed := false
	for k := range coordinates {
		for _, digits := range []int{1, 2, 3, 6, 8} {
			size := 1 << digits
			for _, from := range []int{0, size, 5 * size} {
				replicate := from % MostReplicates
				if !everyInterval(size, func(n int) float64 { return at(from+n, replicate, k) }) {
					t.Fatalf("coordinate %d: two of points %d to %d in one interval of %d", k, from, from+size-1, size)
				}
				if size <= MostReplicates && !everyInterval(size, func(replicate int) float64 { return at(from, replicate, k) }) {
					t.Fatalf("coordinate %d, point %d: two of %d replicates in one interval", k, from, size)
				}
			}
			failed = failed || !everyInterval(size, func(n int) float64 { return at(3*n, 0, k) })
		}
	}
	if !failed {
		t.Error("every third point also passes")
	}
}

// TestLatinIsReached checks that a point does not depend on the previous point, and that
// its first coordinates do not depend on how many follow.
func TestLatinIsReached(t *testing.T) {
	matrices, shift := NewStream(1, 2), NewStream(3, 4)
	few := NewMatrices(7, &matrices).Shifted(&shift)
	matrices, shift = NewStream(1, 2), NewStream(3, 4)
	many := NewMatrices(30, &matrices).Shifted(&shift)
	a, b := make([]float64, 7), make([]float64, 30)
	for _, p := range [][2]uint32{{0, 0}, {5, 3}, {4, 3}, {60000, 7}, {5, 3}, {LatinPoints - 1, 0}, {0, 0}} {
		few.At(p[0], p[1], a)
		anew := *many
		anew.now = append([]uint32(nil), many.now...)
		anew.At(p[0], p[1], b)
		for k, v := range a {
			if v != b[k] {
				t.Errorf("point %d, replicate %d, coordinate %d: %v, directly %v", p[0], p[1], k, v, b[k])
			}
		}
	}
}

// TestEveryLatinPointIsUniform checks that over randomisations each single point is
// uniform in two coordinates jointly. Chi-square with 63 degrees of freedom: 1 in 1,000
// above 103.4 (NIST/SEMATECH e-Handbook, 1.3.6.7.4).
func TestEveryLatinPointIsUniform(t *testing.T) {
	const times = 1 << 13
	out := make([]float64, 2)
	for _, p := range [][2]uint32{{0, 0}, {1, 0}, {100, 3}} {
		var boxes [64]float64
		for j := range uint64(times) {
			latin(2, j).At(p[0], p[1], out)
			boxes[int(out[0]*8)*8+int(out[1]*8)]++
		}
		chi := 0.0
		for _, v := range boxes {
			chi += (v - times/64) * (v - times/64) / (times / 64)
		}
		if chi > 103.4 {
			t.Errorf("point %d: chi-square %.1f over 64 boxes", p[0], chi)
		}
	}
}

// TestSpreadOfLatinMeans checks variances of means over n points. For a sum of
// coordinates the variance is 1/(12 n³) per coordinate (M. Stein, Technometrics 29,
// 1987). For a product of two centred coordinates it is 1/(144 n) with random points and
// 25/16 of that here: the first digits of two coordinates, which carry 9/16 of the
// product's variance, agree twice as often as other digits, because both change with the
// first digit of the point. As a control, the sum has 1/(12 n) with random points.
func TestSpreadOfLatinMeans(t *testing.T) {
	const times, n, coordinates = 2000, 64, 50
	var sum, product, control float64
	out := make([]float64, coordinates)
	random := NewStream(4, 4)
	for j := range uint64(times) {
		l := latin(coordinates, j)
		a, b, c := 0.0, 0.0, 0.0
		for k := range uint32(n) {
			l.At(k, 0, out)
			for _, v := range out {
				a += (v - .5) / n
			}
			b += (out[0] - .5) * (out[1] - .5) / n
			random.Fill(out)
			for _, v := range out {
				c += (v - .5) / n
			}
		}
		sum, product, control = sum+a*a/times, product+b*b/times, control+c*c/times
	}
	within := func(what string, got, want float64) {
		// The variance of that many normal means is within 5 · √(2/times), or 16 %, of the
		// true one; means of products have longer tails.
		if r := got / want; math.Abs(r-1) > .25 {
			t.Errorf("%s: variance %.3g, %.2f times the expected one", what, got, r)
		}
	}
	within("sum", sum, coordinates/(12.0*n*n*n))
	within("product", product, 25.0/16/(144*n))
	within("random sum", control, coordinates/(12.0*n))
}

// TestLatinEnds checks that a point or replicate beyond the last panics.
func TestLatinEnds(t *testing.T) {
	for _, p := range [][2]uint32{{LatinPoints, 0}, {0, MostReplicates}} {
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("point %d, replicate %d: no panic", p[0], p[1])
				}
			}()
			latin(1, 1).At(p[0], p[1], make([]float64, 1))
		}()
	}
}
