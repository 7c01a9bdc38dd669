package exact

import (
	"math"
	"math/cmplx"
	"testing"
)

// dental is the count and the size of claims of example 9.5 (group dental insurance) in
// S. A. Klugman, H. H. Panjer and G. E. Willmot, "Loss Models", in units of 25, as
// given in the documentation of the Python package aggregate.
var (
	dentalCount = []float64{.05, .10, .15, .20, .25, .15, .06, .03, .01}
	dentalSize  = []float64{0, .15, .20, .25, .125, .075, .05, .05, .05, .025, .025}
)

func pmfPhi(p []float64) Characteristic {
	return func(theta float64) (sum complex128) {
		for x, v := range p {
			sum += cmplx.Rect(v, theta*float64(x))
		}
		return sum
	}
}

// TestDental: the probabilities were worked out in exact fractions; see dental for the
// source.
func TestDental(t *testing.T) {
	size := pmfPhi(dentalSize)
	compound := func(theta float64) (sum complex128) {
		power := complex(1, 0)
		for _, v := range dentalCount {
			sum += complex(v, 0) * power
			power *= size(theta)
		}
		return sum
	}
	got := Lattice(compound, 128)
	for x, want := range []float64{0.05, 0.015, 0.023375, 0.034675, 0.0325765625, 0.035786390625, 0.039807870938, 0.043562315633, 0.047518001282} {
		near(t, "chance", got[x], want, 1e-11)
	}
	sum := 0.0
	at := map[int]float64{5: .191412953125, 12: .525798779732, 20: .848269833440, 30: .981094430596}
	for x, v := range got {
		sum += v
		if want, ok := at[x]; ok {
			near(t, "distribution", sum, want, 1e-11)
		}
	}
}

// TestGroupLife: example 9.15 of the same book: 75 lives, each with a claim with
// probability .01; 50 of them 50,000 (70 %) or 100,000, 25 of them 75,000 or 150,000.
func TestGroupLife(t *testing.T) {
	one := func(low, high int) Characteristic {
		p := make([]float64, high+1)
		p[0], p[low], p[high] = .99, .007, .003
		return pmfPhi(p)
	}
	a, b := one(2, 4), one(3, 6)
	got := Lattice(func(theta float64) complex128 { return cmplx.Pow(a(theta), 50) * cmplx.Pow(b(theta), 25) }, 512)
	for x, want := range map[int]float64{0: .47058664, 2: .16636901, 3: .08318451, 4: .10012150, 5: .02940866, 6: .07067236} {
		near(t, "chance", got[x], want, 1e-8)
	}
	sum := 0.0
	for _, v := range got[:7] {
		sum += v
	}
	near(t, "F(150000)", sum, .9203426857, 1e-9)
}

// TestPoissonGamma: the example of the R package actuar's vignette on aggregate claims,
// Poisson 10 of Gamma(2, 1), by the cosine series; the point mass at 0 is handled
// separately.
func TestPoissonGamma(t *testing.T) {
	nothing := math.Exp(-10)
	s := NewSeries(func(theta float64) complex128 {
		size := 1 / ((1 - complex(0, theta)) * (1 - complex(0, theta)))
		return cmplx.Exp(10*(size-1)) - complex(nothing, 0)
	}, 0, 120, 4096)
	for x, want := range map[float64]float64{10: .0841916455, 20: .5344640995, 30: .8943488210, 40: .9877866634} {
		near(t, "distribution", nothing+s.CDF(x), want, 1e-7)
	}
	for p, want := range map[float64]float64{.1: 10.5638924346, .5: 19.3280087765, .9: 30.2958647688} {
		near(t, "quantile", s.Quantile(p-nothing), want, 1e-5)
	}
	mean, sd := moments(cmplx.Exp(10*(1/((1-1e-4i)*(1-1e-4i))-1)), 1e-4)
	near(t, "mean", mean, 20, 1e-5)
	near(t, "deviation", sd, math.Sqrt(60), 1e-5)
}

// TestCanFail: a series of too few terms is far off, so that agreement means something.
func TestCanFail(t *testing.T) {
	s := NewSeries(func(theta float64) complex128 { return cmplx.Exp(complex(-30*theta*theta, 20*theta)) }, -20, 60, 4)
	if math.Abs(s.CDF(10)-.0983528) < 1e-4 {
		t.Error("four terms pass")
	}
}

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if math.Abs(got-want) > within {
		t.Errorf("%s: %.12g, want %.12g", what, got, want)
	}
}
