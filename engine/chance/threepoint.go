package chance

import (
	"errors"
	"math"
	"strconv"
)

// z90 is Φ⁻¹(0.9), the unit in which ThreePoint measures normal deviates.
const z90 = 1.2815515655446004

// wideTailTimes is how many times further from likely the high figure may be than the
// low one before the formula determines the upper tail more than the estimator does.
// Assumption.
const wideTailTimes = 2.5

// ThreePoint is a positive quantity given by its 10th, 50th and 90th percentiles
// (low, likely, high): the Johnson quantile-parameterised distribution with
// lower bound 0, J-QPD-S, of C. C. Hadlock and J. E. Bickel, "Johnson
// quantile-parameterized distributions", Decision Analysis 14(1), 2017, written
// without its special cases. With L, B, H = ln low, ln likely, ln high,
//
//	h = (H−L)/2,  m = min(B−L, H−B),  n = sign(L+H−2B)
//	Q = likely · exp(h·s + n·(√(m² + (h²−m²)·s²) − m)),  s = Φ⁻¹(p)/Φ⁻¹(0.9)
//
// It is lognormal if likely is the geometric mean of low and high. If likely = low,
// nothing falls below likely. If all three are equal, it is a constant.
type ThreePoint struct {
	Curve
	low, high float64
}

// Curve holds only what [Curve.At] reads of a [ThreePoint], so that it stays close
// together in memory.
type Curve struct {
	likely float64
	h, m   float64 // as above, in natural logs
	m2, k  float64 // m² and h²−m²
	sign   float64 // n
}

// NewThreePoint returns the distribution. It is an error if a figure is not finite, if
// low is not above 0, or if the figures are out of order.
func NewThreePoint(low, likely, high float64) (ThreePoint, error) {
	for _, v := range [3]float64{low, likely, high} {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return ThreePoint{}, errors.New("low, likely and high must be finite numbers")
		}
	}
	if low <= 0 {
		return ThreePoint{}, errors.New("low must be more than 0, found " + shortest(low))
	}
	if low > likely {
		return ThreePoint{}, errors.New("low (" + shortest(low) + ") must not be more than likely (" + shortest(likely) + ")")
	}
	if likely > high {
		return ThreePoint{}, errors.New("likely (" + shortest(likely) + ") must not be more than high (" + shortest(high) + ")")
	}
	t := ThreePoint{Curve: Curve{likely: likely}, low: low, high: high}
	below, above := logRatio(likely, low), logRatio(high, likely)
	t.h = float64((below + above) / 2)
	t.m = math.Min(below, above)
	t.m2 = float64(t.m * t.m)
	t.k = float64(math.Abs(above-below) / 2 * (t.h + t.m))
	switch {
	case above > below:
		t.sign = 1
	case above < below:
		t.sign = -1
	}
	return t, nil
}

// logRatio returns ln(a/b) for a ≥ b > 0, even if a/b exceeds a float64.
func logRatio(a, b float64) float64 {
	if ratio := a / b; ratio <= math.MaxFloat64 {
		return Log(ratio)
	}
	return Log(a) - Log(b)
}

func shortest(v float64) string {
	return strconv.FormatFloat(v, 'g', -1, 64)
}

// At returns the quantile at s = Φ⁻¹(p)/Φ⁻¹(0.9): At(-1), At(0) and At(1) are
// low, likely and high. It never decreases with s, apart from rounding in the last
// places. s must be finite.
func (t *Curve) At(s float64) float64 {
	x := float64(t.h*s) + float64(t.sign*t.bend(s))
	if !(x > -expNear && x < expNear) {
		return float64(t.likely * Exp(x))
	}
	k, r := expReduce(x) // Exp without its calls, because most of the time goes here
	return float64(t.likely * timesPowerOfTwo(expFraction(k, r), k>>5))
}

// AllAt writes to dst the result of At for each of several figures at the same s.
func AllAt(figures []Curve, s float64, dst []float64) {
	dst = dst[:len(figures)]
	for i := range figures {
		t := &figures[i]
		x := float64(t.h*s) + float64(t.sign*t.bend(s))
		if !(x > -expNear && x < expNear) {
			dst[i] = float64(t.likely * Exp(x))
			continue
		}
		k, r := expReduce(x)
		dst[i] = float64(t.likely * timesPowerOfTwo(expFraction(k, r), k>>5))
	}
}

// expNear is a bound on |x| within which Exp(x) and its intermediate results are normal
// numbers.
const expNear = 700

// bend is √(m² + (h²−m²)·s²) − m. If m is 0 it computes √(h²s²) as h·|s|, so that the
// flat side is flat to the last bit.
func (t *Curve) bend(s float64) float64 {
	if t.m == 0 {
		return float64(t.h * math.Abs(s))
	}
	return math.Sqrt(t.m2+float64(t.k*float64(s*s))) - t.m
}

// Quantile returns the value not exceeded with chance p. It is 0 at p = 0 and +Inf at
// p = 1, unless the figure is flat on that side, and NaN outside [0, 1].
func (t ThreePoint) Quantile(p float64) float64 {
	flat := t.m == 0 // on the side away from the skew, or everywhere
	switch {
	case p == 0 && !(flat && t.sign >= 0):
		return 0
	case p == 1 && !(flat && t.sign <= 0):
		return math.Inf(1)
	case p == 0 || p == 1:
		return t.likely
	}
	return t.At(NormalQuantile(p) / z90)
}

// Low returns the 10th percentile.
func (t ThreePoint) Low() float64 { return t.low }

// Likely returns the 50th percentile.
func (t ThreePoint) Likely() float64 { return t.likely }

// High returns the 90th percentile.
func (t ThreePoint) High() float64 { return t.high }

// Scaled returns the distribution of k times the quantity, k finite and above 0.
func (t ThreePoint) Scaled(k float64) ThreePoint {
	if !(k > 0 && k <= math.MaxFloat64) {
		panic("engine: internal error: three-point figure scaled by " + shortest(k))
	}
	t.low = float64(t.low * k)
	t.likely = float64(t.likely * k)
	t.high = float64(t.high * k)
	return t
}

// WideTail reports whether high/likely > 2.5 × likely/low. The upper tail then comes
// from the formula more than from the three figures.
func (t ThreePoint) WideTail() bool {
	return t.high/t.likely > float64(wideTailTimes*(t.likely/t.low))
}
