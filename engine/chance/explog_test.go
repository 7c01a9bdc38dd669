package chance

import (
	"math"
	"math/big"
	"testing"
)

func TestExpAgainstReference(t *testing.T) {
	s, worst, worstLibrary := NewStream(3, 1), 0.0, 0.0
	for i := range 20000 {
		half := []float64{0.02, 1, 40, 708}[i%4]
		x := (2*s.Uniform() - 1) * half
		exact := referenceExp(bigFloat(x))
		if u := ulpsFrom(Exp(x), exact); u > 0.6 {
			t.Fatalf("Exp(%v) = %v is %.3f units off", x, Exp(x), u)
		} else if u > worst {
			worst = u
		}
		library := math.Exp(x)
		worstLibrary = math.Max(worstLibrary, math.Abs(Exp(x)-library)/(math.Nextafter(library, math.Inf(1))-library))
	}
	if worstLibrary > 2 {
		t.Errorf("Exp and math.Exp differ by %v units in the last place", worstLibrary)
	}
	t.Logf("worst error %.4f units in the last place; from math.Exp %v", worst, worstLibrary)
}

func TestExpSubnormal(t *testing.T) {
	s := NewStream(3, 2)
	for range 2000 {
		x := -708 - 37*s.Uniform()
		if u := ulpsFrom(Exp(x), referenceExp(bigFloat(x))); u > 1 {
			t.Fatalf("Exp(%v) = %v is %.3f units off", x, Exp(x), u)
		}
	}
}

func TestExpEdges(t *testing.T) {
	const lastFinite = 0x1.62e42fefa39efp+9 // ln(2^1024), rounded down
	inf := math.Inf(1)
	for _, c := range []struct{ x, want float64 }{
		{0, 1}, {math.Copysign(0, -1), 1}, {inf, inf}, {-inf, 0},
		{math.Nextafter(lastFinite, inf), inf}, {710, inf}, {1e300, inf}, {-746, 0}, {-1e300, 0},
		{5e-324, 1}, {1e-17, 1}, {-1e-17, 1}, {1, math.E},
		{-745.13, 5e-324}, {-745.134, 0},
	} {
		if got := Exp(c.x); got != c.want {
			t.Errorf("Exp(%v) = %v, want %v", c.x, got, c.want)
		}
	}
	if got := Exp(lastFinite); !near(got, math.MaxFloat64, 1e-12) || math.IsInf(got, 0) {
		t.Errorf("Exp just below overflow = %v", got)
	}
	if !math.IsNaN(Exp(math.NaN())) {
		t.Error("Exp(NaN) is a number")
	}
}

// Each row of the table is 2^(j/32), worked out here by repeated square roots.
func TestRoots32(t *testing.T) {
	step := bigFloat(2)
	for range 5 {
		step.Sqrt(step)
	}
	power := bigFloat(1)
	for j, row := range roots32 {
		high, _ := power.Float64()
		low, _ := new(big.Float).Sub(power, bigFloat(high)).Float64()
		if row[0] != high || row[1] != low {
			t.Errorf("row %d is %x %x, want %x %x", j, row[0], row[1], high, low)
		}
		power.Mul(power, step)
	}
}

func TestLogAgainstReference(t *testing.T) {
	s, worst := NewStream(3, 3), 0.0
	for i := range 20000 {
		var x float64
		switch i % 4 {
		case 0:
			x = 0.5 + 1.5*s.Uniform()
		case 1:
			x = 1 + (s.Uniform()-0.5)*1e-3
		case 2:
			x = s.Uniform()
		default: // any positive finite number
			x = math.Float64frombits(1 + s.Uint64()%0x7fefffffffffffff)
		}
		if x == 1 {
			continue
		}
		got, library := Log(x), math.Log(x)
		if u := ulpsFrom(got, referenceLog(x)); u > 1 {
			t.Fatalf("Log(%v) = %v is %.3f units off", x, got, u)
		} else if u > worst {
			worst = u
		}
		if size := math.Abs(library); x >= 0x1p-1022 && math.Abs(got-library) > 2*(math.Nextafter(size, math.Inf(1))-size) {
			t.Fatalf("Log(%v) = %v, math.Log %v", x, got, library)
		}
	}
	t.Logf("worst error %.4f units in the last place", worst)
}

func TestLogEdges(t *testing.T) {
	inf := math.Inf(1)
	for _, c := range []struct{ x, want float64 }{
		{1, 0}, {0, -inf}, {math.Copysign(0, -1), -inf}, {inf, inf},
		{2, math.Ln2}, {0.5, -math.Ln2}, {10, math.Ln10}, {math.E, 1},
		{5e-324, -1074 * math.Ln2}, {math.Nextafter(1, 2), 0x1p-52},
	} {
		if got := Log(c.x); got != c.want && !(c.x == 5e-324 && near(got, c.want, 1e-15)) &&
			!(c.want == 0x1p-52 && near(got, c.want, 2e-16)) {
			t.Errorf("Log(%v) = %v, want %v", c.x, got, c.want)
		}
	}
	for _, x := range []float64{-1, -5e-324, -inf, math.NaN()} {
		if !math.IsNaN(Log(x)) {
			t.Errorf("Log(%v) = %v, want NaN", x, Log(x))
		}
	}
}

func TestLog1mAgainstLibrary(t *testing.T) {
	s := NewStream(3, 4)
	for range 20000 {
		q := math.Exp(-40*s.Uniform()) / 2
		if got, want := log1m(q), math.Log1p(-q); !near(got, want, 1e-15) {
			t.Fatalf("log1m(%v) = %v, math.Log1p gives %v", q, got, want)
		}
	}
}
