package scores

import "math"

// studentQuantile returns t with P(|T| ≤ t) = central for Student's distribution with a
// whole number of degrees of freedom. With T = √ν·s/√(1 − s²) the density of s is (1 −
// s²)^((ν−2)/2) up to a constant. Integration by parts reduces its integral two degrees
// at a time, so roots and an arcsine are enough (compare Abramowitz and Stegun 1964,
// 26.7.3 and 26.7.4).
func studentQuantile(central float64, degrees int) float64 {
	if degrees < 1 || !(central > 0 && central < 1) {
		panic("engine: internal error: Student quantile without degrees of freedom")
	}
	whole := sinePower(1, degrees)
	s := solve(func(s float64) bool { return sinePower(s, degrees) < float64(central*whole) })
	return float64(math.Sqrt(float64(degrees)) * s / math.Sqrt(float64((1-s)*(1+s))))
}

// sinePower integrates (1 − x²)^((ν−2)/2) from 0 to s.
func sinePower(s float64, degrees int) float64 {
	c := float64((1 - s) * (1 + s))
	v, sum := 2, s
	power := c // (1 − s²)^(v/2)
	if degrees%2 == 1 {
		v, sum, power = 1, arcsine(s), math.Sqrt(c)
	}
	for ; v < degrees; v += 2 {
		sum = (float64(s*power) + float64(float64(v)*sum)) / float64(v+1)
		power = float64(power * c)
	}
	return sum
}

// arcsine sums the power series below a half and halves the angle above, for 0 ≤ s ≤ 1.
// It is accurate to a few units in the last place.
func arcsine(s float64) float64 {
	if s > 0.5 {
		const halfPi = 1.57079632679489661923
		return halfPi - float64(2*arcsine(math.Sqrt(float64((1-s)/2))))
	}
	sum, term, ss := s, s, float64(s*s)
	for k := 1; k < 30; k++ {
		term = float64(term * ss * (float64(2*k-1) / float64(2*k)))
		sum += term / float64(2*k+1)
	}
	return sum
}
