package money

import (
	"math/big"
	"testing"

	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"
)

// properties starts a seeded run. SetSeed also sets the seed printed with a failure.
func properties(seed int64) *gopter.Properties {
	p := gopter.DefaultTestParameters()
	p.SetSeed(seed)
	p.MinSuccessfulTests = 2000
	return gopter.NewProperties(p)
}

// digits covers the decimals of the currencies in the table (ISO 4217).
var digits = gen.OneConstOf(0, 2, 3)

// agrees reports whether an amount is r major units, rounded half away from zero.
func agrees(m Minor, r *big.Rat, digits int) bool {
	return roundedRat(minorUnits(r, digits)).Cmp(big.NewInt(int64(m))) == 0
}

// The oracle is the exact product as a fraction of math/big.
func TestRateProperties(t *testing.T) {
	ps := properties(20260101)
	ps.Property("Rate.Of is the exact product, rounded half away from zero", prop.ForAll(
		func(millionths, thousandths int64, digits int) bool {
			r, err := of(digits).NewRate(published(millionths))
			if err != nil {
				return false
			}
			return agrees(r.Of(thousandths), new(big.Rat).Mul(big.NewRat(millionths, 1_000_000), big.NewRat(thousandths, 1000)), digits)
		},
		gen.Int64Range(0, 1_000_000_000_000), gen.Int64Range(-1e9, 1e9), digits,
	))
	// The factors are coarse, so that exact ties are frequent.
	ps.Property("Rate.Of rounds ties away from zero", prop.ForAll(
		func(cents, hundredths int64, digits int) bool {
			r, err := of(digits).NewRate(published(10_000 * cents))
			if err != nil {
				return false
			}
			return agrees(r.Of(10*hundredths), new(big.Rat).Mul(big.NewRat(cents, 100), big.NewRat(hundredths, 100)), digits)
		},
		gen.Int64Range(0, 100_00), gen.Int64Range(-1000, 1000), digits,
	))
	ps.Property("Percent.Of is the exact product, rounded half away from zero", prop.ForAll(
		func(millionths, m int64) bool {
			p, err := NewPercent(published(millionths))
			if err != nil {
				return false
			}
			return agrees(p.Of(Minor(m)), new(big.Rat).Mul(big.NewRat(millionths, 100_000_000), new(big.Rat).SetInt64(m)), 0)
		},
		gen.Int64Range(-100_000_000, 1_000_000_000), gen.Int64Range(-1e15, 1e15),
	))
	ps.Property("Currency.Round is the exact amount rounded, and says when it cut something off", prop.ForAll(
		func(millionths int64, digits int) bool {
			m, exact := of(digits).Round(published(millionths))
			want := big.NewRat(millionths, 1_000_000)
			return agrees(m, want, digits) && exact == minorUnits(want, digits).IsInt()
		},
		gen.OneGenOf(gen.Int64Range(-999_999_999_999, 999_999_999_999), gen.Int64Range(-9999, 9999).Map(func(n int64) int64 { return n * 1000 })), digits,
	))
	ps.Property("a decimal is read, written and compared as the fraction that it means", prop.ForAll(
		func(a, b int64) bool {
			x, y := published(a), published(b)
			order := big.NewRat(a, 1_000_000).Cmp(big.NewRat(b, 1_000_000))
			return fraction(x.String()).Cmp(big.NewRat(a, 1_000_000)) == 0 && x.Less(y) == (order < 0) &&
				x.Equal(y) == (order == 0) && x.IsZero() == (a == 0)
		},
		gen.OneGenOf(gen.Int64Range(-3, 3), gen.Int64Range(-999_999_999_999, 999_999_999_999)), gen.Int64Range(-999_999_999_999, 999_999_999_999),
	))
	ps.TestingRun(t)
}

func TestShareProperties(t *testing.T) {
	ps := properties(20260102)
	weights := gen.SliceOf(gen.OneGenOf(gen.Int64Range(0, 3), gen.Const(int64(0)), gen.Int64Range(0, 1e12)))
	usable := weights.SuchThat(func(w []int64) bool { return sumWeights(w) > 0 })
	total := gen.OneGenOf(gen.Int64Range(-200, 200), gen.Int64Range(-1e15, 1e15))

	ps.Property("the parts add up to the whole", prop.ForAll(
		func(total int64, w []int64) bool {
			sum := Minor(0)
			for _, part := range Share(Minor(total), w) {
				sum += part
			}
			return sum == Minor(total)
		}, total, usable))
	ps.Property("a weight of zero gets nothing", prop.ForAll(
		func(total int64, w []int64) bool {
			for i, part := range Share(Minor(total), w) {
				if w[i] == 0 && part != 0 {
					return false
				}
			}
			return true
		}, total, usable))
	ps.Property("every part is its exact share rounded down or up", prop.ForAll(
		func(total int64, w []int64) bool {
			sum := new(big.Int).SetUint64(sumWeights(w))
			for i, part := range Share(Minor(total), w) {
				exact := new(big.Rat).SetFrac(new(big.Int).Mul(big.NewInt(total), big.NewInt(w[i])), sum)
				off := exact.Sub(exact, new(big.Rat).SetInt64(int64(part)))
				if off.Abs(off).Cmp(big.NewRat(1, 1)) >= 0 {
					return false
				}
			}
			return true
		}, total, usable))
	ps.Property("a credit is shared like a charge", prop.ForAll(
		func(total int64, w []int64) bool {
			plus, minus := Share(Minor(total), w), Share(Minor(-total), w)
			for i := range plus {
				if plus[i] != -minus[i] {
					return false
				}
			}
			return true
		}, total, usable))
	ps.TestingRun(t)
}

func TestOutwardProperties(t *testing.T) {
	ps := properties(20260103)
	amount := gen.OneGenOf(gen.Int64Range(-1000, 1000), gen.Int64Range(-1e15, 1e15))
	step := gen.OneGenOf(gen.Int64Range(1, 20), gen.Int64Range(1, 1e9))
	ps.Property("down ≤ amount ≤ up, both multiples, less than a step apart", prop.ForAll(
		func(m, step int64) bool {
			down, up := RoundDown(Minor(m), Minor(step)), RoundUp(Minor(m), Minor(step))
			return int64(down) <= m && m <= int64(up) && int64(down)%step == 0 && int64(up)%step == 0 &&
				m-int64(down) < step && int64(up)-m < step
		}, amount, step))
	ps.Property("nearest agrees with math/big, half away from zero", prop.ForAll(
		func(m, step int64) bool {
			want := new(big.Int).Mul(roundedRat(big.NewRat(m, step)), big.NewInt(step))
			return want.Cmp(big.NewInt(int64(RoundNearest(Minor(m), Minor(step))))) == 0
		}, amount, step))
	ps.TestingRun(t)
}
