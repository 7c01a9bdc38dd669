package chance

import (
	"math"
	"testing"
)

// latin is a randomisation by number, with matrices of its own.
func latin(coordinates int, number uint64) *Latin {
	s := NewStream(11, number)
	return NewMatrices(coordinates, &s).Shifted(&s)
}

// everyInterval says whether n numbers fall one into every interval of 1/n.
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

// TestLatinFillsEveryInterval: (0, 1)-sequences in base 2 (H. Niederreiter, Random
// Number Generation and Quasi-Monte Carlo Methods, SIAM 1992, definition 4.2): of 2^k
// points from a multiple of 2^k on, one lies in every interval of 2^-k of every
// coordinate; the same of replicates. Points not in a row do not.
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
					t.Fatalf("coordinate %d, point %d: two of %d turns in one interval", k, from, size)
				}
			}
			failed = failed || !everyInterval(size, func(n int) float64 { return at(3*n, 0, k) })
		}
	}
	if !failed {
		t.Error("every third point passes too")
	}
}

// TestLatinIsReached: a point is the same wherever one comes from, and its first
// coordinates are those of more.
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
				t.Errorf("point %d, turn %d, coordinate %d: %v, straight %v", p[0], p[1], k, v, b[k])
			}
		}
	}
}

// TestEveryLatinPointIsUniform: over randomisations each single point is uniform in
// two coordinates together. Chi-square with 63 degrees of freedom: 1 in 1,000 above
// 103.4 (NIST/SEMATECH e-Handbook, 1.3.6.7.4).
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

// TestSpreadOfLatinMeans: the mean of n points of a sum of coordinates has variance
// 1/(12 n³) a coordinate (M. Stein, Technometrics 29, 1987). That of a product of two of
// them about their means has 1/(144 n) of random points and 25/16 of it here: the first
// digits of two coordinates, 9/16 of the variance of the product, go together twice as
// often as others, for both change with the first digit of the point. Of random points
// the sum has 1/(12 n): the control.
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
		// A variance from so many normal means is within 5 · √(2/times) of its own, 16 %;
		// means of products have longer tails.
		if r := got / want; math.Abs(r-1) > .25 {
			t.Errorf("%s: variance %.3g, %.2f of what it should be", what, got, r)
		}
	}
	within("sum", sum, coordinates/(12.0*n*n*n))
	within("product", product, 25.0/16/(144*n))
	within("random sum", control, coordinates/(12.0*n))
}

// TestLatinEnds: there is an end, and it is said.
func TestLatinEnds(t *testing.T) {
	for _, p := range [][2]uint32{{LatinPoints, 0}, {0, MostReplicates}} {
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("point %d, turn %d: given", p[0], p[1])
				}
			}()
			latin(1, 1).At(p[0], p[1], make([]float64, 1))
		}()
	}
}
