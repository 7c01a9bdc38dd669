package chance

import "math"

// Exp follows the table-driven scheme of P. T. P. Tang, "Table-driven
// implementation of the exponential function in IEEE floating-point
// arithmetic", ACM Transactions on Mathematical Software 15(2), 1989:
//
//	x = (32m + j)·ln2/32 + r,  |r| ≤ ln2/64,  eˣ = 2ᵐ · 2^(j/32) · eʳ
//
// eʳ − 1 is the Taylor polynomial of degree 6, whose remainder r⁷/5040 is
// below 2^-58.

const (
	stepsPerLn2 = 0x1.71547652b82fep+5 // 32/ln 2
	// ln 2 in two parts; the first has 32 significant bits, so that its
	// product with a whole number below 2^21 is exact.
	ln2High = 0x1.62e42feep-1
	ln2Low  = 0x1.a39ef35793c76p-33
	// roundShift added to a number below 2^51 leaves its nearest whole number
	// in the low bits of the sum.
	roundShift = 0x1.8p52

	expOverflow  = 0x1.62e42fefa39efp+9 // largest x with a finite result
	expUnderflow = -745.14              // ln of half the smallest subnormal is -745.133
)

// Exp returns e to the power x, within 0.6 units in the last place (subnormal results
// within 1). Exp(NaN) is NaN. A result above the largest float64 is +Inf, and one below
// half the smallest is 0.
func Exp(x float64) float64 {
	if !(x >= expUnderflow && x <= expOverflow) {
		return expBeyond(x)
	}
	k, r := expReduce(x)
	y := expFraction(k, r)
	m := k >> 5
	if m < -1021 || m > 1022 {
		return scaledByPowerOfTwo(y, m)
	}
	return timesPowerOfTwo(y, m)
}

// expReduce splits x, within the bounds of Exp, into k 32nds of ln 2 and a remainder r.
func expReduce(x float64) (k int64, r float64) {
	shifted := float64(x*stepsPerLn2) + roundShift
	whole := shifted - roundShift
	k = int64(math.Float64bits(shifted)<<32) >> 32
	return k, (x - float64(whole*(ln2High/32))) - float64(whole*(ln2Low/32))
}

// expFraction returns e to the power r times 2 to the power (k mod 32)/32.
func expFraction(k int64, r float64) float64 {
	r2 := float64(r * r)
	q := 1.0/24 + float64(r*(1.0/120)) + float64(r2*(1.0/720))
	q = 0.5 + float64(r*(1.0/6)) + float64(r2*q)
	p := r + float64(r2*q)
	root := &roots32[k&31]
	return root[0] + (root[1] + float64(root[0]*p))
}

// timesPowerOfTwo returns y·2ᵐ where both are normal numbers.
func timesPowerOfTwo(y float64, m int64) float64 {
	return math.Float64frombits(math.Float64bits(y) + uint64(m)<<52)
}

// expBeyond returns Exp where the result is NaN, 0 or +Inf.
func expBeyond(x float64) float64 {
	switch {
	case x > expOverflow:
		return math.Inf(1)
	case x < expUnderflow:
		return 0
	}
	return x // NaN
}

// scaledByPowerOfTwo returns y·2ᵐ, rounding once, where adding to the exponent
// could leave the normal numbers.
func scaledByPowerOfTwo(y float64, m int64) float64 {
	half := m >> 1
	return float64(float64(y*powerOfTwo(half)) * powerOfTwo(m-half))
}

// powerOfTwo returns 2ᵐ for m in [-1022, 1023].
func powerOfTwo(m int64) float64 {
	return math.Float64frombits(uint64(m+1023) << 52)
}

// roots32[j] is 2^(j/32) in two parts: the nearest float64, and the nearest float64 to
// the remainder. Computed with 200-bit arithmetic; a test recomputes it.
var roots32 = [32][2]float64{
	{0x1p+0, 0},
	{0x1.059b0d3158574p+0, 0x1.d73e2a475b465p-55},
	{0x1.0b5586cf9890fp+0, 0x1.8a62e4adc610bp-54},
	{0x1.11301d0125b51p+0, -0x1.6c51039449b3ap-54},
	{0x1.172b83c7d517bp+0, -0x1.19041b9d78a76p-55},
	{0x1.1d4873168b9aap+0, 0x1.e016e00a2643cp-54},
	{0x1.2387a6e756238p+0, 0x1.9b07eb6c70573p-54},
	{0x1.29e9df51fdee1p+0, 0x1.612e8afad1255p-55},
	{0x1.306fe0a31b715p+0, 0x1.6f46ad23182e4p-55},
	{0x1.371a7373aa9cbp+0, -0x1.63aeabf42eae2p-54},
	{0x1.3dea64c123422p+0, 0x1.ada0911f09ebcp-55},
	{0x1.44e086061892dp+0, 0x1.89b7a04ef80d0p-59},
	{0x1.4bfdad5362a27p+0, 0x1.d4397afec42e2p-56},
	{0x1.5342b569d4f82p+0, -0x1.07abe1db13cadp-55},
	{0x1.5ab07dd485429p+0, 0x1.6324c054647adp-54},
	{0x1.6247eb03a5585p+0, -0x1.383c17e40b497p-54},
	{0x1.6a09e667f3bcdp+0, -0x1.bdd3413b26456p-54},
	{0x1.71f75e8ec5f74p+0, -0x1.16e4786887a99p-55},
	{0x1.7a11473eb0187p+0, -0x1.41577ee04992fp-55},
	{0x1.82589994cce13p+0, -0x1.d4c1dd41532d8p-54},
	{0x1.8ace5422aa0dbp+0, 0x1.6e9f156864b27p-54},
	{0x1.93737b0cdc5e5p+0, -0x1.75fc781b57ebcp-57},
	{0x1.9c49182a3f090p+0, 0x1.c7c46b071f2bep-56},
	{0x1.a5503b23e255dp+0, -0x1.d2f6edb8d41e1p-54},
	{0x1.ae89f995ad3adp+0, 0x1.7a1cd345dcc81p-54},
	{0x1.b7f76f2fb5e47p+0, -0x1.5584f7e54ac3bp-56},
	{0x1.c199bdd85529cp+0, 0x1.11065895048ddp-55},
	{0x1.cb720dcef9069p+0, 0x1.503cbd1e949dbp-56},
	{0x1.d5818dcfba487p+0, 0x1.2ed02d75b3707p-55},
	{0x1.dfc97337b9b5fp+0, -0x1.1a5cd4f184b5cp-54},
	{0x1.ea4afa2a490dap+0, -0x1.e9c23179c2893p-54},
	{0x1.f50765b6e4540p+0, 0x1.9d3e12dd8a18bp-54},
}
