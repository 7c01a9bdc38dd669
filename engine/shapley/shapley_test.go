package shapley

import (
	"math"
	"testing"

	"underpaint/engine/chance"
)

func sharesOf(inputs int, label []int, walks int, f func(u []float64) float64) ([]Share, float64) {
	w := New(inputs, label, f)
	s := chance.NewStream(20210701, 1)
	w.Add(walks, &s)
	return w.Shares()
}

func agree(t *testing.T, name string, got []Share, want []float64) {
	t.Helper()
	sum := 0.0
	for k, share := range got {
		sum += share.Share
		if miss := math.Abs(share.Share - want[k]); miss > 4*share.SE+1e-12 || share.SE > 0.02 {
			t.Errorf("%s: input %d has %.4f ± %.4f, published %.4f", name, k, share.Share, share.SE, want[k])
		}
	}
	if math.Abs(sum-1) > 1e-12 {
		t.Errorf("%s: shares add to %v", name, sum)
	}
}

// TestIshigami uses a = 7, b = .1. The shares follow from the closed first-order and
// total indices (T. Ishigami and T. Homma, ISUMA 1990; closed forms as in the test suite
// of scipy, test_sensitivity_analysis.py): each interaction is split equally between the
// two inputs.
func TestIshigami(t *testing.T) {
	got, variance := sharesOf(4, []int{0, 1, 2, 3}, 40_000, func(u []float64) float64 {
		x := [3]float64{}
		for k := range x {
			x[k] = math.Pi * (2*u[k] - 1)
		}
		return math.Sin(x[0]) + 7*math.Sin(x[1])*math.Sin(x[1]) + 0.1*math.Pow(x[2], 4)*math.Sin(x[0])
	})
	agree(t, "Ishigami", got, []float64{.4357470232, .4424111448, .1218418320, 0})
	if math.Abs(variance/13.8445879407-1) > 0.03 {
		t.Errorf("variance %v", variance)
	}
	if got[3].Share != 0 || got[3].SE != 0 {
		t.Errorf("an input without effect has share %v", got[3])
	}
}

// TestSobolG uses a = 0, 1, 4.5, 9 and four times 99 (I. M. Sobol; parameters as in the
// test models of the R package sensitivity). The shares follow from the product form.
func TestSobolG(t *testing.T) {
	a := []float64{0, 1, 4.5, 9, 99, 99, 99, 99}
	got, _ := sharesOf(8, []int{0, 1, 2, 3, 4, 5, 6, 7}, 40_000, func(u []float64) float64 {
		y := 1.0
		for k := range a {
			y *= (math.Abs(4*u[k]-2) + a[k]) / (1 + a[k])
		}
		return y
	})
	small := (1 - .7515188631 - .2104772937 - .0288804594 - .0087718929) / 4
	agree(t, "Sobol g", got, []float64{.7515188631, .2104772937, .0288804594, .0087718929, small, small, small, small})
}

// TestLinearGaussian uses independent normals with deviations 1, 1, 2, whose shares are
// 1/6, 1/6, 2/3. For two dependent normals the published shares (E. Song, B. L. Nelson
// and J. Staum, SIAM/ASA J. Uncertainty Quantification 4, 2016; A. B. Owen and C. Prieur,
// 2017) are the mean of the shares over both orders of drawing them.
func TestLinearGaussian(t *testing.T) {
	z := chance.NormalQuantile
	got, _ := sharesOf(3, []int{0, 1, 2}, 20_000, func(u []float64) float64 { return z(u[0]) + z(u[1]) + 2*z(u[2]) })
	agree(t, "independent", got, []float64{1.0 / 6, 1.0 / 6, 2.0 / 3})
	// β = 1, 1; deviations 1, 2; correlation .5: shares .3392857143, .6607142857.
	rho, rest := 0.5, math.Sqrt(0.75)
	first, _ := sharesOf(2, []int{0, 1}, 40_000, func(u []float64) float64 {
		a := z(u[0])
		return a + 2*(rho*a+rest*z(u[1]))
	})
	second, _ := sharesOf(2, []int{0, 1}, 40_000, func(u []float64) float64 {
		b := z(u[1])
		return 2*b + (rho*b + rest*z(u[0]))
	})
	for k, want := range []float64{.3392857143, .6607142857} {
		if mean := (first[k].Share + second[k].Share) / 2; math.Abs(mean-want) > 0.01 {
			t.Errorf("dependent: input %d has a mean share of %.4f over both orders, published %.4f", k, mean, want)
		}
	}
}

// TestGrouped checks that several uniforms of one input count together.
func TestGrouped(t *testing.T) {
	z := chance.NormalQuantile
	got, _ := sharesOf(2, []int{0, 1, 0}, 20_000, func(u []float64) float64 { return z(u[0]) + z(u[1]) + 2*z(u[2]) })
	agree(t, "grouped", got, []float64{5.0 / 6, 1.0 / 6})
	flat, variance := sharesOf(2, []int{0, 1}, 10, func([]float64) float64 { return 3 })
	if variance != 0 || flat[0].Share != 0 {
		t.Error("a constant has variance")
	}
}
