package chance

import (
	"math"
	"math/big"
	"testing"

	"github.com/leanovate/gopter"
)

// precision of the reference arithmetic, in bits.
const precision = 240

func bigFloat(x float64) *big.Float {
	return new(big.Float).SetPrec(precision).SetFloat64(x)
}

// referenceExp sums the Taylor series of eˣ after halving x until it is small,
// and squares back. It shares no table, reduction or polynomial with Exp.
func referenceExp(x *big.Float) *big.Float {
	halvings := 40
	small := new(big.Float).SetPrec(precision+60).SetMantExp(x, -halvings)
	sum := new(big.Float).SetPrec(precision + 60).SetInt64(1)
	term := new(big.Float).SetPrec(precision + 60).SetInt64(1)
	for i := int64(1); i < 16; i++ {
		term.Mul(term, small)
		term.Quo(term, new(big.Float).SetInt64(i))
		sum.Add(sum, term)
	}
	for range halvings {
		sum.Mul(sum, sum)
	}
	return sum.SetPrec(precision)
}

// referenceLog improves math.Log by one step: ln x = y + ln(1 + d), d = x·e^−y − 1,
// with d below 1e-12, so that d − d²/2 + d³/3 is good to 1e-48.
func referenceLog(x float64) *big.Float {
	// Start from fraction and exponent: math.Log itself is wrong in the third digit
	// for subnormal arguments on amd64 (seen with Go 1.26).
	fraction, exponent := math.Frexp(x)
	y := bigFloat(math.Log(fraction) + float64(exponent)*math.Ln2)
	d := referenceExp(new(big.Float).Neg(y))
	d.Mul(d, bigFloat(x))
	d.Sub(d, bigFloat(1))
	d2 := new(big.Float).Mul(d, d)
	d3 := new(big.Float).Mul(d2, d)
	y.Add(y, d)
	y.Sub(y, d2.Quo(d2, bigFloat(2)))
	return y.Add(y, d3.Quo(d3, bigFloat(3)))
}

// ulpsFrom returns |got − exact| in units in the last place of got.
func ulpsFrom(got float64, exact *big.Float) float64 {
	diff := new(big.Float).SetPrec(precision).Sub(bigFloat(got), exact)
	diff.Quo(diff, bigFloat(math.Nextafter(math.Abs(got), math.Inf(1))-math.Abs(got)))
	ulps, _ := diff.Abs(diff).Float64()
	return ulps
}

// near reports |got − want| ≤ tolerance·|want|.
func near(got, want, tolerance float64) bool {
	return math.Abs(got-want) <= tolerance*math.Abs(want)
}

func three(t testing.TB, low, likely, high float64) ThreePoint {
	t.Helper()
	d, err := NewThreePoint(low, likely, high)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// seeded returns a property set whose failure report prints this seed.
func seeded(seed int64) *gopter.Properties {
	parameters := gopter.DefaultTestParametersWithSeed(seed)
	parameters.MinSuccessfulTests = 2000
	return gopter.NewProperties(parameters)
}

func mustPanic(t *testing.T, name string, f func()) {
	t.Helper()
	defer func() {
		if recover() == nil {
			t.Errorf("%s did not panic", name)
		}
	}()
	f()
}
