package chance

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
)

// Means and variances of the published form, by adaptive quadrature with mpmath 1.2.1 at
// 40 digits.
func TestMomentsTable(t *testing.T) {
	for _, c := range []struct{ low, likely, high, mean, variance float64 }{
		{2, 3, 7, 3.9875547561004689, 9.2351932917051267},
		{2, 6, 7, 5.1334524468912923, 3.8278422783237727},
		{1, 1.5, 50, 97.938134264470884, 84511955.859351711},
		{4, 4.0001, 9, 5.5992607995932943, 8.6206169822612603},
		{1, 1, 10, 5.3415456859797689, 608.6169477512556},
		{1, 10, 10, 6.8179627052683807, 13.905572489462835},
	} {
		mean, variance := three(t, c.low, c.likely, c.high).Moments()
		if !near(mean, c.mean, 2e-14) || !near(variance, c.variance, 5e-14) {
			t.Errorf("%v/%v/%v: mean %.16g variance %.16g, want %.16g and %.16g", c.low, c.likely, c.high, mean, variance, c.mean, c.variance)
		}
	}
}

// Closed forms: lognormal (Johnson, Kotz and Balakrishnan, Continuous Univariate
// Distributions 1, 1994, ch. 14), half of one, and a constant.
func TestMomentsClosedForms(t *testing.T) {
	for _, ratio := range []float64{1.001, 1.1, 2, 5, 30} {
		sigma := math.Log(ratio) / z90
		mean, variance := three(t, 100/ratio, 100, 100*ratio).Moments()
		wantMean := 100 * math.Exp(sigma*sigma/2)
		wantVariance := wantMean * wantMean * math.Expm1(sigma*sigma)
		if !near(mean, wantMean, 1e-12) || !near(variance, wantVariance, 1e-10) {
			t.Errorf("ratio %v: %v %v, want %v %v", ratio, mean, variance, wantMean, wantVariance)
		}
		// likely = low: ½ at 100, and above it exp(2σz), z > 0; E exp(az; z>0) = exp(a²/2)Φ(a).
		partial := func(a float64) float64 { return math.Exp(a*a/2) * math.Erfc(-a/math.Sqrt2) / 2 }
		mean, variance = three(t, 100, 100, 100*ratio).Moments()
		wantMean = 100 * (0.5 + partial(sigma))
		wantVariance = 1e4*(0.5+partial(2*sigma)) - wantMean*wantMean
		if !near(mean, wantMean, 1e-12) || !near(variance, wantVariance, 1e-8) {
			t.Errorf("half, ratio %v: %v %v, want %v %v", ratio, mean, variance, wantMean, wantVariance)
		}
	}
	if mean, variance := three(t, 7, 7, 7).Moments(); mean != 7 || variance != 0 {
		t.Errorf("a constant 7 has mean %v, variance %v", mean, variance)
	}
}

// Oracle: gonum's Gauss-Legendre rule, whose locations come in decreasing order.
func TestGauss12(t *testing.T) {
	var x, weight [12]float64
	quad.Legendre{}.FixedLocations(x[:], weight[:], -1, 1)
	for i, node := range gauss12 {
		if math.Abs(x[5-i]-node[0]) > 1e-15 || math.Abs(weight[5-i]-node[1]) > 1e-15 {
			t.Errorf("node %d is %v with weight %v, gonum has %v and %v", i, node[0], node[1], x[5-i], weight[5-i])
		}
	}
}

// Oracle: gonum's Gauss-Hermite rule on smooth cases.
func TestMomentsAgainstHermite(t *testing.T) {
	for _, c := range [][3]float64{{2, 3, 5}, {10, 14, 18}, {1, 2.5, 5}} {
		d := three(t, c[0], c[1], c[2])
		moment := func(power float64) float64 {
			return quad.Fixed(func(x float64) float64 {
				return math.Pow(d.At(math.Sqrt2*x/z90), power) / math.Sqrt(math.Pi)
			}, math.Inf(-1), math.Inf(1), 200, quad.Hermite{}, 0)
		}
		mean, variance := d.Moments()
		if want := moment(1); !near(mean, want, 1e-6) || !near(variance, moment(2)-want*want, 1e-5) {
			t.Errorf("%v: mean %v variance %v, gonum gives %v and %v", c, mean, variance, want, moment(2)-want*want)
		}
	}
}

// Sampled by inversion; tolerance 5 standard errors, fixed seed.
func TestMomentsAgainstDraws(t *testing.T) {
	const n = 200000
	for seed, c := range [][3]float64{{2, 3, 7}, {2, 6, 7}, {5, 5, 12}} {
		d, s := three(t, c[0], c[1], c[2]), NewStream(uint64(seed), 5)
		mean, variance := d.Moments()
		sum, squares, fourth := 0.0, 0.0, 0.0
		for range n {
			e := d.Quantile(s.Uniform()) - mean
			sum += e
			squares += e * e
			fourth += e * e * e * e
		}
		errorOfVariance := math.Sqrt(fourth/n-squares/n*squares/n) / math.Sqrt(n)
		if math.Abs(sum/n) > 5*math.Sqrt(variance/n) || math.Abs(squares/n-variance) > 5*errorOfVariance {
			t.Errorf("%v: mean off by %v, variance %v against %v", c, sum/n, squares/n, variance)
		}
	}
}

func TestMomentsHuge(t *testing.T) {
	if mean, variance := three(t, 1e-150, 1, 1e150).Moments(); !math.IsInf(mean, 1) || !math.IsInf(variance, 1) {
		t.Errorf("mean %v variance %v, want both +Inf", mean, variance)
	}
	// The ratio of these figures is itself beyond a float64.
	d := three(t, 5e-324, 1e300, 1.5e300)
	if mean, variance := d.Moments(); !(mean > 0 && mean < 1e300) || !math.IsInf(variance, 1) {
		t.Errorf("mean %v variance %v, want below 1e300 and +Inf", mean, variance)
	}
	if got := d.At(1); !near(got, 1.5e300, 1e-12) {
		t.Errorf("High returns %v", got)
	}
}
