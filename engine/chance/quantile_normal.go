package chance

import "math"

// NormalQuantile returns the x with Φ(x) = p, after M. J. Wichura, "Algorithm
// AS 241: The percentage points of the normal distribution", Applied Statistics
// 37(3), 1988, routine PPND16 (about 1 part in 10¹⁶). NormalQuantile(0) is -Inf,
// NormalQuantile(1) is +Inf; outside [0, 1] and for NaN the result is NaN.
// NormalQuantile(1-p) is exactly -NormalQuantile(p) where 1-p is exact.
func NormalQuantile(p float64) float64 {
	q := p - 0.5
	if !(math.Abs(q) <= 0.425) {
		return wichuraOutside(p, q)
	}
	r := 0.180625 - float64(q*q)
	num := 2.5090809287301226727e3
	num = float64(num*r) + 3.3430575583588128105e4
	num = float64(num*r) + 6.7265770927008700853e4
	num = float64(num*r) + 4.5921953931549871457e4
	num = float64(num*r) + 1.3731693765509461125e4
	num = float64(num*r) + 1.9715909503065514427e3
	num = float64(num*r) + 1.3314166789178437745e2
	num = float64(num*r) + 3.3871328727963666080e0
	den := 5.2264952788528545610e3
	den = float64(den*r) + 2.8729085735721942674e4
	den = float64(den*r) + 3.9307895800092710610e4
	den = float64(den*r) + 2.1213794301586595867e4
	den = float64(den*r) + 5.3941960214247511077e3
	den = float64(den*r) + 6.8718700749205790830e2
	den = float64(den*r) + 4.2313330701600911252e1
	den = float64(den*r) + 1
	return float64(q * num / den)
}

// wichuraOutside is NormalQuantile where |q| = |p − ½| is above 0.425.
func wichuraOutside(p, q float64) float64 {
	tail := p
	if q > 0 {
		tail = 1 - p
	}
	if !(tail > 0) {
		return quantileExtreme(p)
	}
	x := wichuraTail(math.Sqrt(-Log(tail)))
	if q < 0 {
		return -x
	}
	return x
}

func quantileExtreme(p float64) float64 {
	switch p {
	case 0:
		return math.Inf(-1)
	case 1:
		return math.Inf(1)
	}
	return math.NaN()
}

// wichuraTail takes r = √(−ln p) of the smaller tail p.
func wichuraTail(r float64) float64 {
	if r > 5 {
		return wichuraFarTail(r - 5)
	}
	r -= 1.6
	num := 7.74545014278341407640e-4
	num = float64(num*r) + 2.27238449892691845833e-2
	num = float64(num*r) + 2.41780725177450611770e-1
	num = float64(num*r) + 1.27045825245236838258e0
	num = float64(num*r) + 3.64784832476320460504e0
	num = float64(num*r) + 5.76949722146069140550e0
	num = float64(num*r) + 4.63033784615654529590e0
	num = float64(num*r) + 1.42343711074968357734e0
	den := 1.05075007164441684324e-9
	den = float64(den*r) + 5.47593808499534494600e-4
	den = float64(den*r) + 1.51986665636164571966e-2
	den = float64(den*r) + 1.48103976427480074590e-1
	den = float64(den*r) + 6.89767334985100004550e-1
	den = float64(den*r) + 1.67638483018380384940e0
	den = float64(den*r) + 2.05319162663775882187e0
	den = float64(den*r) + 1
	return num / den
}

func wichuraFarTail(r float64) float64 {
	num := 2.01033439929228813265e-7
	num = float64(num*r) + 2.71155556874348757815e-5
	num = float64(num*r) + 1.24266094738807843860e-3
	num = float64(num*r) + 2.65321895265761230930e-2
	num = float64(num*r) + 2.96560571828504891230e-1
	num = float64(num*r) + 1.78482653991729133580e0
	num = float64(num*r) + 5.46378491116411436990e0
	num = float64(num*r) + 6.65790464350110377720e0
	den := 2.04426310338993978564e-15
	den = float64(den*r) + 1.42151175831644588870e-7
	den = float64(den*r) + 1.84631831751005468180e-5
	den = float64(den*r) + 7.86869131145613259100e-4
	den = float64(den*r) + 1.48753612908506148525e-2
	den = float64(den*r) + 1.36929880922735805310e-1
	den = float64(den*r) + 5.99832206555887937690e-1
	den = float64(den*r) + 1
	return num / den
}
