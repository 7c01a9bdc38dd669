package chance

import "math"

// The normal distribution function after W. J. Cody, "Rational Chebyshev
// approximations for the error function", Mathematics of Computation 23 (1969),
// in the scaling of his subroutine ANORM (ACM Transactions on Mathematical
// Software 19(1), 1993, Algorithm 715), from which the coefficients are taken.

const (
	codyNear = 0.67448975
	codyFar  = 5.656854248 // √32
	// normalCDFZero: Φ(x) is below half the smallest subnormal from here down.
	normalCDFZero  = -38.5
	oneOverRoot2Pi = 0.39894228040143267794
)

// NormalCDF returns Φ(x), the chance that a standard normal variate is below x.
// Relative precision is kept in the lower tail; for the upper tail 1 − Φ(x) use
// NormalCDF(-x). NormalCDF(NaN) is NaN.
func NormalCDF(x float64) float64 {
	y := math.Abs(x)
	if y <= codyNear {
		return 0.5 + codyCentre(x)
	}
	if x != x {
		return x
	}
	tail := 0.0
	if y < -normalCDFZero {
		tail = gaussian(y, codyTail(y))
	}
	if x > 0 {
		return 1 - tail
	}
	return tail
}

// LogNormalCDF returns ln Φ(x). It keeps its relative precision far into both tails: at
// x = -40, where a float64 cannot hold Φ itself, and where Φ is so near 1 that only
// 1 − Φ can be distinguished from 0.
func LogNormalCDF(x float64) float64 {
	switch {
	case x != x:
		return x
	case x >= 0:
		return log1m(NormalCDF(-x))
	case x >= -codyNear:
		return Log(0.5 + codyCentre(x))
	}
	return float64(-0.5*x*x) + Log(codyTail(-x))
}

// codyCentre returns Φ(x) − ½ for |x| ≤ codyNear.
func codyCentre(x float64) float64 {
	z := float64(x * x)
	num := 6.5682337918207449113e-2
	num = float64(num*z) + 2.2352520354606839287e00
	num = float64(num*z) + 1.6102823106855587881e02
	num = float64(num*z) + 1.0676894854603709582e03
	num = float64(num*z) + 1.8154981253343561249e04
	den := z + 4.7202581904688241870e01
	den = float64(den*z) + 9.7609855173777669322e02
	den = float64(den*z) + 1.0260932208618978205e04
	den = float64(den*z) + 4.5507789335026729956e04
	return float64(x * num / den)
}

// codyTail returns Φ(−y)·exp(y²/2) for y > codyNear.
func codyTail(y float64) float64 {
	if y > codyFar {
		return codyFarTail(y)
	}
	num := 1.0765576773720192317e-8
	num = float64(num*y) + 3.9894151208813466764e-1
	num = float64(num*y) + 8.8831497943883759412e00
	num = float64(num*y) + 9.3506656132177855979e01
	num = float64(num*y) + 5.9727027639480026226e02
	num = float64(num*y) + 2.4945375852903726711e03
	num = float64(num*y) + 6.8481904505362823326e03
	num = float64(num*y) + 1.1602651437647350124e04
	num = float64(num*y) + 9.8427148383839780218e03
	den := y + 2.2266688044328115691e01
	den = float64(den*y) + 2.3538790178262499861e02
	den = float64(den*y) + 1.5193775994075548050e03
	den = float64(den*y) + 6.4855582982667607550e03
	den = float64(den*y) + 1.8615571640885098091e04
	den = float64(den*y) + 3.4900952721145977266e04
	den = float64(den*y) + 3.8912003286093271411e04
	den = float64(den*y) + 1.9685429676859990727e04
	return num / den
}

func codyFarTail(y float64) float64 {
	z := 1 / float64(y*y)
	num := 2.307344176494017303e-2
	num = float64(num*z) + 2.1589853405795699e-1
	num = float64(num*z) + 1.274011611602473639e-1
	num = float64(num*z) + 2.2235277870649807e-2
	num = float64(num*z) + 1.421619193227893466e-3
	num = float64(num*z) + 2.9112874951168792e-5
	den := z + 1.28426009614491121e00
	den = float64(den*z) + 4.68238212480865118e-1
	den = float64(den*z) + 6.59881378689285515e-2
	den = float64(den*z) + 3.78239633202758244e-3
	den = float64(den*z) + 7.29751555083966205e-5
	return (oneOverRoot2Pi - float64(z*num/den)) / y
}

// gaussian returns scale·exp(−y²/2). It computes the rounding error of y², which grows
// with y², exactly (T. J. Dekker, Numerische Mathematik 18, 1971) and corrects for it to
// first order.
func gaussian(y, scale float64) float64 {
	square := float64(y * y)
	c := float64(y * 134217729) // 2^27 + 1
	high := c - (c - y)
	low := y - high
	lost := (float64(high*high) - square) + float64(2*high*low) + float64(low*low)
	return float64(Exp(float64(-0.5*square)) * (scale - float64(scale*0.5*lost)))
}
