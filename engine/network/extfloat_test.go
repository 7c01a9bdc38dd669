package network

import (
	"math"
	"math/big"
	"math/rand/v2"
	"testing"
)

// exactly converts an extended number to 2,000 bits, which hold it exactly.
func exactly(a extFloat) *big.Float {
	f := new(big.Float).SetPrec(2000).SetFloat64(a.m)
	return f.SetMantExp(f, stepBits*int(a.e))
}

// agrees reports whether a is b rounded to within two units in the last place.
func agrees(a extFloat, b *big.Float) bool {
	if b.Sign() == 0 {
		return a.zero()
	}
	miss := new(big.Float).SetPrec(2000).Sub(exactly(a), b)
	miss.Quo(miss, b)
	m, _ := miss.Float64()
	return math.Abs(m) <= 0x1p-52 && a.m >= extLow && a.m < extHigh
}

// Sums, products, quotients and normal form agree with the standard library's arbitrary
// precision, for exponents near each other and far apart.
func TestWideAgainstBigFloat(t *testing.T) {
	const seed = 512
	r := rand.New(rand.NewPCG(seed, 0))
	draw := func() extFloat {
		if r.IntN(20) == 0 {
			return extFloat{}
		}
		// Exponents within one float64 and up to three steps apart take every branch of plus.
		v := toExt(math.Ldexp(.5+r.Float64()/2, r.IntN(2098)-1073))
		v.e += int32(r.IntN(7)) - 3
		return v
	}
	for i := range 20000 {
		a, b := draw(), draw()
		x, y := exactly(a), exactly(b)
		sum := new(big.Float).SetPrec(8000).Add(x, y)
		if got := a.plus(b); !agrees(got, sum) {
			t.Fatalf("seed %d, case %d: %v + %v = %v, want %g", seed, i, a, b, got, sum)
		}
		if got := a.times(b); !agrees(got, new(big.Float).SetPrec(8000).Mul(x, y)) {
			t.Fatalf("seed %d, case %d: %v × %v = %v", seed, i, a, b, got)
		}
		total := a.plus(b)
		if total.zero() {
			continue
		}
		want, _ := new(big.Float).SetPrec(2000).Quo(x, exactly(total)).Float64()
		got := a.over(total)
		if !(math.Abs(got-want) <= 0x1p-52*want+0x1p-1022) {
			t.Fatalf("seed %d, case %d: %v ÷ %v = %g, want %g", seed, i, a, total, got, want)
		}
	}
}

// The row cache doubles only after as many misses as it has slots, up to its limit.
func TestRowCacheGrowsAndStops(t *testing.T) {
	mostSlots := slotsOf(23)
	c := rowCache{width: 1, most: mostSlots}
	for n := range 1 << 18 {
		if _, known := c.at(n); known {
			t.Fatalf("row %d known before it was asked for", n)
		}
		if _, known := c.at(n); !known {
			t.Fatalf("row %d forgotten at once", n)
		}
		switch slots := len(c.key); {
		case n == fewestSlots-1 && slots != fewestSlots,
			n == fewestSlots && slots != 2*fewestSlots,
			n == 3*fewestSlots-1 && slots != 2*fewestSlots,
			n == 3*fewestSlots && slots != 4*fewestSlots,
			slots > mostSlots:
			t.Fatalf("%d slots after %d rows", slots, n+1)
		}
	}
	if len(c.key) != mostSlots {
		t.Errorf("%d slots after 2^18 rows, want %d", len(c.key), mostSlots)
	}
	// At first there are more rows than slots, so some rows collide and always miss. The
	// cache must stop growing once every row has a slot.
	few := rowCache{width: 1, most: mostSlots}
	for n := range 600 * 500 {
		few.at(n % 600)
	}
	if len(few.key) > 2048 {
		t.Errorf("%d slots for 600 rows, want at most 2048", len(few.key))
	}
	for _, width := range []int{1, 19, 361, 1 << 20} {
		if slots := slotsOf(width); slots > 1<<16 || slots*width > 1<<21 || slots < 1 {
			t.Errorf("%d slots of width %d", slots, width)
		}
	}
}
