package chance

import (
	"math"
	"strings"
	"testing"

	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"
)

var tableChances = [9]float64{0.01, 0.05, 0.1, 0.25, 0.5, 0.75, 0.9, 0.95, 0.99}

// Quantiles at tableChances by the published form of J-QPD-S (Hadlock and Bickel
// 2017, equation 9, with sinh and its inverse; read in a public Stan function
// library that cites it), evaluated with mpmath 1.2.1 at 40 digits.
var publishedForm = []struct {
	low, likely, high float64
	want              [9]float64
}{
	{2, 3, 7, [9]float64{1.67019695220293, 1.866349800546289, 2.0, 2.317512234059104, 3.0, 4.480938016556418, 7.0, 9.317444609933915, 16.23274782028356}},
	{2, 6, 7, [9]float64{0.7379066819576226, 1.415709143768584, 2.0, 3.530610599573621, 6.0, 6.826478421465377, 7.0, 7.067695202142575, 7.171760831751838}},
	{10, 20, 40, [9]float64{5.683064949864584, 8.216033078528823, 10.0, 13.88659459860099, 20.0, 28.80475822634717, 40.0, 48.68529571105679, 70.3845554342171}},
	{1, 1.5, 50, [9]float64{0.9478692906470703, 0.9789391626663067, 1.0, 1.057805657817968, 1.5, 8.290599656010907, 50.0, 148.3747826991089, 1150.320500202535}},
	{1, 40, 50, [9]float64{0.04187016766991357, 0.3320145916760825, 1.0, 6.269886830109637, 40.0, 49.14052143014669, 50.0, 50.32242530648899, 50.81303159926133}},
	{4, 4.0001, 9, [9]float64{3.999999996102187, 3.999999998445164, 4.0, 4.00000000423492, 4.0001, 6.12937466161688, 9.0, 11.32612523804549, 17.43261096274364}},
	{0.5, 0.5625, 0.625, [9]float64{0.4505897011528312, 0.4825750088645449, 0.5, 0.5294896010141166, 0.5625, 0.5954727166072441, 0.625, 0.6426100042592694, 0.6756130409048136}},
}

func TestThreePointPublishedForm(t *testing.T) {
	for _, c := range publishedForm {
		d := three(t, c.low, c.likely, c.high)
		for i, p := range tableChances {
			if got := d.Quantile(p); !near(got, c.want[i], 1e-14) {
				t.Errorf("%v/%v/%v at %v: %.16g, want %.16g", c.low, c.likely, c.high, p, got, c.want[i])
			}
		}
	}
}

// If likely is the geometric mean, the distribution is lognormal: P10 = 500 and
// P90 = 2000 give σ = 0.540865618829 (ln 4 / (2·1.2815515655)).
func TestThreePointLognormal(t *testing.T) {
	d := three(t, 500, 1000, 2000)
	for z := -4.0; z <= 4; z += 0.25 {
		if got, want := d.At(z/z90), 1000*math.Exp(0.540865618829*z); !near(got, want, 1e-11) {
			t.Errorf("at z = %v: %v, want %v", z, got, want)
		}
	}
}

func TestThreePointFlatSides(t *testing.T) {
	point, below, above := three(t, 3, 3, 3), three(t, 3, 3, 9), three(t, 1, 3, 3)
	for s := -6.0; s <= 6; s += 0.0625 {
		if point.At(s) != 3 || s <= 0 && below.At(s) != 3 || s >= 0 && above.At(s) != 3 {
			t.Fatalf("at s = %v a flat side gives %v, %v, %v instead of 3", s, point.At(s), below.At(s), above.At(s))
		}
		// The other side is half a lognormal, which reaches low or high at |s| = 1.
		if s > 0 && !near(below.At(s), 3*math.Pow(3, s), 1e-14) || s < 0 && !near(above.At(s), 3*math.Pow(3, s), 1e-14) {
			t.Fatalf("at s = %v the open side gives %v, %v, want %v", s, below.At(s), above.At(s), 3*math.Pow(3, s))
		}
	}
	ends := func(d ThreePoint) [2]float64 { return [2]float64{d.Quantile(0), d.Quantile(1)} }
	inf := math.Inf(1)
	if ends(point) != [2]float64{3, 3} || ends(below) != [2]float64{3, inf} || ends(above) != [2]float64{0, 3} ||
		ends(three(t, 1, 40, 50)) != [2]float64{0, inf} {
		t.Errorf("ends: %v %v %v", ends(point), ends(below), ends(above))
	}
	if !math.IsNaN(below.Quantile(-0.1)) || !math.IsNaN(point.Quantile(1.1)) || !math.IsNaN(above.Quantile(math.NaN())) {
		t.Error("outside [0, 1] gives a number")
	}
}

func TestThreePointRefuses(t *testing.T) {
	inf, nan := math.Inf(1), math.NaN()
	for _, c := range []struct {
		low, likely, high float64
		says              string
	}{
		{0, 1, 2, "low must be more than 0"}, {-1, 1, 2, "low must be more than 0"},
		{2, 1, 3, "low (2) must not be more than likely (1)"}, {1, 3, 2.5, "likely (3) must not be more than high (2.5)"},
		{nan, 1, 2, "finite"}, {1, nan, 2, "finite"}, {1, 2, nan, "finite"}, {1, 2, inf, "finite"}, {-inf, 1, 2, "finite"},
	} {
		if _, err := NewThreePoint(c.low, c.likely, c.high); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%v/%v/%v: error %v, want one that says %q", c.low, c.likely, c.high, err, c.says)
		}
	}
	mustPanic(t, "scaling by 0", func() { three(t, 1, 2, 3).Scaled(0) })
	mustPanic(t, "scaling by NaN", func() { three(t, 1, 2, 3).Scaled(nan) })
	mustPanic(t, "scaling by +Inf", func() { three(t, 1, 2, 3).Scaled(inf) })
}

// WideTail at the limit of 2.5 times and one step to each side of it.
func TestWideTail(t *testing.T) {
	for _, c := range []struct {
		low, likely, high float64
		want              bool
	}{
		{1, 2, 10, false}, {1, 2, math.Nextafter(10, 11), true}, {1, 2, math.Nextafter(10, 9), false},
		{4, 4, 10, false}, {4, 4, math.Nextafter(10, 11), true}, {1, 1, 1, false},
	} {
		if got := three(t, c.low, c.likely, c.high).WideTail(); got != c.want {
			t.Errorf("%v/%v/%v: WideTail %v", c.low, c.likely, c.high, got)
		}
	}
}

// triples draws ordered figures from a likely value and two logs of ratios, each of
// which is 0 (a flat side) about one time in ten.
func triples() gopter.Gen {
	ratio := gen.Frequency(map[int]gopter.Gen{9: gen.Float64Range(0, 4), 1: gen.Const(0.0)})
	return gopter.CombineGens(gen.Float64Range(-7, 7), ratio, ratio).Map(func(v []any) ThreePoint {
		likely := math.Exp(v[0].(float64))
		d, err := NewThreePoint(likely*math.Exp(-v[1].(float64)), likely, likely*math.Exp(v[2].(float64)))
		if err != nil {
			panic(err)
		}
		return d
	})
}

func TestThreePointProperties(t *testing.T) {
	properties := seeded(101)
	properties.Property("the three figures come back", prop.ForAll(func(d ThreePoint) bool {
		exact := near(d.At(-1), d.Low(), 1e-14) && d.At(0) == d.Likely() && near(d.At(1), d.High(), 1e-14)
		return exact && near(d.Quantile(0.1), d.Low(), 2e-14) && near(d.Quantile(0.5), d.Likely(), 0) && near(d.Quantile(0.9), d.High(), 2e-14)
	}, triples()))
	properties.Property("does not decrease with p", prop.ForAll(func(d ThreePoint, p, q float64) bool {
		if p > q {
			p, q = q, p
		}
		return d.Quantile(p) <= d.Quantile(q)*(1+2e-14)
	}, triples(), gen.Float64Range(1e-9, 1-1e-9), gen.Float64Range(1e-9, 1-1e-9)))
	properties.Property("mirror: the reciprocal has the reciprocal figures", prop.ForAll(func(d ThreePoint, s float64) bool {
		mirror := three(t, 1/d.High(), 1/d.Likely(), 1/d.Low())
		return near(mirror.At(-s), 1/d.At(s), 1e-13)
	}, triples(), gen.Float64Range(-4, 4)))
	properties.Property("scaling scales", prop.ForAll(func(d ThreePoint, k, s float64) bool {
		e := d.Scaled(k)
		f := three(t, d.Low()*k, d.Likely()*k, d.High()*k)
		return e.Low() == f.Low() && e.Likely() == f.Likely() && e.High() == f.High() &&
			near(e.At(s), f.At(s), 1e-13) && near(e.At(s), k*d.At(s), 1e-15)
	}, triples(), gen.Float64Range(0.01, 100), gen.Float64Range(-4, 4)))
	properties.TestingRun(t)
}

func TestNoAllocation(t *testing.T) {
	s, d, total := NewStream(1, 2), three(t, 2, 3, 7), 0.0
	allocations := testing.AllocsPerRun(1000, func() {
		u := s.Uniform()
		total += Exp(u) + Log(u) + NormalCDF(u) + LogNormalCDF(-u) + d.At(NormalQuantile(u)) + d.Quantile(u)
		fresh := NewStream(uint64(u*1e6), 1)
		total += fresh.Uniform()
	})
	if sink = total; allocations != 0 {
		t.Errorf("%v allocations per round, want none", allocations)
	}
}
