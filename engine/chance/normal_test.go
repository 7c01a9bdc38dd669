package chance

import (
	"math"
	"testing"

	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"
	"gonum.org/v1/gonum/mathext"
	"gonum.org/v1/gonum/stat/distuv"
)

// Φ, ln Φ and Φ⁻¹ computed with mpmath 1.2.1 at 50 digits from erfc; the argument
// is the float64 written here, not the decimal it stands for.
var (
	cdfTable = [][2]float64{
		// Arguments whose squares are not exact in float64.
		{-36.7, 3.65152930280341797e-295}, {-29.3, 5.18564931572458295e-189}, {-17.13, 4.43273582885788305e-66},
		{-37.5, 4.60535300958195484e-308}, {-30, 4.90671392714818706e-198}, {-20, 2.7536241186062337e-89},
		{-10, 7.61985302416052607e-24}, {-6, 9.86587645037698141e-10}, {-5.656854248, 7.70862901714047081e-9},
		{-5.5, 1.89895624658877194e-8}, {-4, 0.0000316712418331199213}, {-3, 0.00134989803163009453},
		{-2, 0.0227501319481792072}, {-1, 0.158655253931457051}, {-0.7, 0.241963652223073029},
		{-0.67448975, 0.250000000062310185}, {-0.5, 0.308537538725986896}, {-0.1, 0.460172162722971016},
		{-1e-08, 0.499999996010577196}, {0, 0.5}, {0.3, 0.617911422188952633}, {0.67, 0.748571104904689898},
		{1, 0.841344746068542949}, {2, 0.977249868051820793}, {5, 0.999999713348428121}, {8, 0.999999999999999378},
	}
	logTable = [][2]float64{
		{-1e6, -500000000014.734449}, {-1000, -500007.826694812184}, {-40, -804.608442013753788},
		{-38, -726.55721601882013}, {-20, -203.917155371097264}, {-6, -20.7367689499747057},
		{-5.6, -18.3513794959093321}, {-3, -6.60772622151034954}, {-1, -1.84102164500926351},
		{-0.5, -1.17591176159361861}, {0, -0.693147180559945309}, {0.5, -0.368946415288656393},
		{1, -0.17275377902344989}, {3, -0.0013508099647481938}, {6, -9.86587645524375732e-10},
		{8, -6.22096057427178606e-16}, {10, -7.61985302416052607e-24}, {20, -2.7536241186062337e-89},
		{37, -5.72557122252457682e-300},
	}
	quantileTable = [][2]float64{
		{1e-300, -37.0470962993611992}, {1e-100, -21.2734535609653243}, {1e-12, -7.03448382530113193},
		{1e-10, -6.3613409024040562}, {1e-5, -4.26489079392282461}, {0.01, -2.32634787404084109},
		{0.05, -1.64485362695147269}, {0.074, -1.44663206715897851}, {0.076, -1.43250272082581162},
		{0.2, -0.841621233572914166}, {0.4, -0.253347103135799741}, {0.6, 0.253347103135799741},
		{0.925, 1.43953147093845623}, {0.99, 2.32634787404084077}, {0.999, 3.09023230616781328},
		// Wichura's own test values (1988), repeated in the tests of R.
		{0.25, -0.6744897501960817}, {0.001, -3.0902323061678135}, {1e-20, -9.2623400897984076},
		// Tabulated everywhere, recomputed with mpmath.
		{0.1, -1.2815515655446004}, {0.9, 1.2815515655446004}, {0.8, 0.8416212335729142},
		{0.95, 1.6448536269514722}, {0.975, 1.9599639845400542},
	}
)

func TestNormalTables(t *testing.T) {
	check := func(name string, f func(float64) float64, table [][2]float64, tolerance float64) {
		for _, row := range table {
			if got := f(row[0]); !near(got, row[1], tolerance) {
				t.Errorf("%s(%v) = %.17g, want %.17g (off by %.2g)", name, row[0], got, row[1], got/row[1]-1)
			}
		}
	}
	check("NormalCDF", NormalCDF, cdfTable, 1e-15)
	check("LogNormalCDF", LogNormalCDF, logTable, 1e-15)
	check("NormalQuantile", NormalQuantile, quantileTable, 5e-16)
}

func TestNormalEdges(t *testing.T) {
	inf := math.Inf(1)
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"Φ(-Inf)", NormalCDF(-inf), 0}, {"Φ(Inf)", NormalCDF(inf), 1}, {"Φ(-40)", NormalCDF(-40), 0},
		{"Φ(9)", NormalCDF(9), 1}, {"ln Φ(-Inf)", LogNormalCDF(-inf), -inf}, {"ln Φ(Inf)", LogNormalCDF(inf), 0},
		{"ln Φ(-1e200)", LogNormalCDF(-1e200), -inf}, {"Φ⁻¹(0)", NormalQuantile(0), -inf},
		{"Φ⁻¹(1)", NormalQuantile(1), inf}, {"Φ⁻¹(½)", NormalQuantile(0.5), 0},
	} {
		if c.got != c.want {
			t.Errorf("%s = %v, want %v", c.name, c.got, c.want)
		}
	}
	// -38 has a subnormal result: mpmath gives 2.88542836006878431e-316.
	if got := NormalCDF(-38); !near(got, 2.88542836006878431e-316, 1e-7) {
		t.Errorf("Φ(-38) = %v", got)
	}
	nan := math.NaN()
	for _, x := range []float64{NormalCDF(nan), LogNormalCDF(nan), NormalQuantile(nan),
		NormalQuantile(-5e-324), NormalQuantile(math.Nextafter(1, 2)), NormalQuantile(inf)} {
		if !math.IsNaN(x) {
			t.Errorf("outside the domain gives %v, want NaN", x)
		}
	}
}

// Oracles: math.Erfc for Φ, gonum mathext and distuv for Φ⁻¹.
func TestNormalAgainstLibraries(t *testing.T) {
	s := NewStream(4, 1)
	for range 50000 {
		x := -37 + 45*s.Uniform()
		// math.Erfc is itself rounded at the argument x/√2, hence the x² here.
		if got, want := NormalCDF(x), math.Erfc(-x/math.Sqrt2)/2; !near(got, want, 4e-16*(4+x*x)) {
			t.Fatalf("NormalCDF(%v) = %v, math.Erfc gives %v", x, got, want)
		}
		p := s.Uniform()
		if s.Uniform() < 0.5 {
			p = math.Exp(-600 * p)
		}
		got := NormalQuantile(p)
		if want := mathext.NormalQuantile(p); math.Abs(got-want) > 2e-15+1e-14*math.Abs(want) {
			t.Fatalf("NormalQuantile(%v) = %v, gonum mathext gives %v", p, got, want)
		}
		// gonum distuv uses the inverse of erfc at 2p, which is inaccurate in the tail.
		if want := distuv.UnitNormal.Quantile(p); p > 1e-4 && !near(got, want, 1e-10) {
			t.Fatalf("NormalQuantile(%v) = %v, gonum distuv gives %v", p, got, want)
		}
	}
}

func TestNormalProperties(t *testing.T) {
	properties := seeded(20170314)
	properties.Property("Φ(Φ⁻¹(p)) = p", prop.ForAll(func(u float64) bool {
		p := math.Exp(-u)
		// A relative error e of x becomes about x²e of p.
		x := NormalQuantile(p)
		return near(NormalCDF(x), p, 1e-15*(4+x*x))
	}, gen.Float64Range(1e-9, 690)))
	properties.Property("Φ⁻¹ is odd about ½", prop.ForAll(func(k int64) bool {
		p := float64(k) / (1 << 52)
		return NormalQuantile(1-p) == -NormalQuantile(p)
	}, gen.Int64Range(1, 1<<51)))
	properties.Property("exp ln Φ = Φ", prop.ForAll(func(x float64) bool {
		return near(math.Exp(LogNormalCDF(x)), NormalCDF(x), 3e-16*(4+x*x))
	}, gen.Float64Range(-37, 9)))
	properties.Property("Φ does not decrease", prop.ForAll(func(x, step float64) bool {
		return NormalCDF(x+step) >= NormalCDF(x)*(1-4e-16)
	}, gen.Float64Range(-37, 8), gen.Float64Range(0, 1e-3)))
	properties.TestingRun(t)
}
