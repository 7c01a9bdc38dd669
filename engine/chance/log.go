package chance

import "math"

// Log reduces its argument to x = 2ᵏ·m with √½ ≤ m < √2 and uses
//
//	f = m − 1,  s = f/(2+f),  ln m = 2·atanh(s) = f − s·(f − R),
//	R = s²·G(s²)
//
// in which f is exact and the rounding of s matters little. G(z) = Σ 2zⁱ/(2i+3) is
// replaced by its Chebyshev fit of degree 7 on 0 ≤ z ≤ tanh²(ln(2)/4), computed for
// this package with 60-digit arithmetic; the error of R/s² · s² is below 2^-63. The
// tests compare with a reference that uses a different method.

const (
	g0 = 0.66666666666666666465
	g1 = 0.40000000000000877606
	g2 = 0.28571428570803230015
	g3 = 0.22222222391800469329
	g4 = 0.181817956308847532
	g5 = 0.15386240205813477879
	g6 = 0.13268759668560612686
	g7 = 0.13086767009948173713

	sqrtHalfBits  = 0x3fe6a09e667f3bcd // of the float64 nearest √½
	leastNormal   = 0x0010000000000000 // bits of the smallest normal number
	infinityBits  = 0x7ff0000000000000
	subnormalLift = 0x1p54
)

// Log returns the natural logarithm of x, within 1 unit in the last place.
// Log(0) is -Inf, Log(+Inf) is +Inf; negative arguments and NaN give NaN.
func Log(x float64) float64 {
	bits := math.Float64bits(x)
	if bits-leastNormal >= infinityBits-leastNormal {
		return logExtreme(x)
	}
	return logNormal(bits, 0)
}

// logNormal returns ln(x) + extra·ln 2 for the normal positive number with these bits.
func logNormal(bits uint64, extra int64) float64 {
	exponent := int64(bits-sqrtHalfBits) >> 52
	f := math.Float64frombits(bits-uint64(exponent)<<52) - 1
	k := float64(exponent + extra)
	s := f / (2 + f)
	z := float64(s * s)
	w := float64(z * z)
	low := g0 + float64(z*g1) + float64(w*(g2+float64(z*g3)))
	high := g4 + float64(z*g5) + float64(w*(g6+float64(z*g7)))
	r := float64(z * (low + float64(w*w*high)))
	return float64(k*ln2High) + (f - (float64(s*(f-r)) - float64(k*ln2Low)))
}

func logExtreme(x float64) float64 {
	switch {
	case x == 0:
		return math.Inf(-1)
	case x > math.MaxFloat64:
		return x
	case x > 0: // subnormal
		return logNormal(math.Float64bits(float64(x*subnormalLift)), -54)
	}
	return math.NaN()
}

// log1m returns ln(1 − q) for 0 ≤ q ≤ ½ without losing precision for small q. The
// correction for the rounding of 1 − q is W. Kahan's (described in the HP-15C Advanced
// Functions Handbook, 1982; cited from memory, tested here).
func log1m(q float64) float64 {
	w := 1 - q
	if w == 1 {
		return -q
	}
	return float64(Log(w)*q) / (1 - w)
}
