package money

import (
	"math/big"
	"testing"

	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"
	"github.com/shopspring/decimal"
)

// properties starts a seeded run; SetSeed also sets the seed that is printed
// with a failure.
func properties(seed int64) *gopter.Properties {
	p := gopter.DefaultTestParameters()
	p.SetSeed(seed)
	p.MinSuccessfulTests = 2000
	return gopter.NewProperties(p)
}

// digits covers the minor units of ISO 4217's currencies in the table.
var digits = gen.OneConstOf(0, 2, 3)

// roundedRat is the oracle: a / b rounded half away from zero with math/big.
func roundedRat(r *big.Rat) *big.Int {
	num, den := new(big.Int).Abs(r.Num()), r.Denom()
	num.Mul(num, big.NewInt(2)).Add(num, den)
	num.Quo(num, new(big.Int).Mul(den, big.NewInt(2)))
	if r.Sign() < 0 {
		num.Neg(num)
	}
	return num
}

func TestRateProperties(t *testing.T) {
	ps := properties(20260101)
	ps.Property("Rate.Of is the decimal product, rounded half away from zero", prop.ForAll(
		func(millionths, thousandths int64, digits int) bool {
			price := decimal.New(millionths, -6)
			r, err := of(digits).NewRate(own(price))
			if err != nil {
				return false
			}
			want := rounded(price.Mul(decimal.New(thousandths, -3)), digits)
			return r.Of(thousandths) == want
		},
		gen.Int64Range(0, 1_000_000_000_000), gen.Int64Range(-1e9, 1e9), digits,
	))
	// Coarse factors, so that exact ties come up all the time.
	ps.Property("Rate.Of rounds ties away from zero", prop.ForAll(
		func(cents, hundredths int64, digits int) bool {
			price := decimal.New(cents, -2)
			r, err := of(digits).NewRate(own(price))
			if err != nil {
				return false
			}
			want := rounded(price.Mul(decimal.New(hundredths, -2)), digits)
			return r.Of(10*hundredths) == want
		},
		gen.Int64Range(0, 100_00), gen.Int64Range(-1000, 1000), digits,
	))
	ps.Property("Percent.Of is the decimal product, rounded half away from zero", prop.ForAll(
		func(millionths, m int64, digits int) bool {
			rate := decimal.New(millionths, -6)
			p, err := NewPercent(own(rate))
			if err != nil {
				return false
			}
			want := rounded(decimal.New(m, -int32(digits)).Mul(rate).Shift(-2), digits)
			return p.Of(Minor(m)) == want
		},
		gen.Int64Range(-100_000_000, 1_000_000_000), gen.Int64Range(-1e15, 1e15), digits,
	))
	ps.Property("Currency.Round agrees with math/big and says when it cut something off", prop.ForAll(
		func(coefficient int64, places int, digits int) bool {
			d := decimal.New(coefficient, -int32(places))
			m, exact := of(digits).Round(own(d))
			scaled := d.Shift(int32(digits)).Rat()
			return roundedRat(scaled).Cmp(big.NewInt(int64(m))) == 0 &&
				exact == decimal.New(int64(m), -int32(digits)).Equal(d)
		},
		gen.Int64Range(-999_999_999_999, 999_999_999_999), gen.IntRange(0, 6), digits,
	))
	ps.Property("a decimal reads, writes and compares as in a library of any length", prop.ForAll(
		func(a, b int64, places int) bool {
			x, y := decimal.New(a, -int32(places)), decimal.New(b, -6)
			return own(x).String() == x.String() && own(x).Less(own(y)) == x.LessThan(y) &&
				(own(x) == own(y)) == x.Equal(y) && own(x).IsZero() == x.IsZero()
		},
		gen.Int64Range(-999_999_999_999, 999_999_999_999), gen.Int64Range(-999_999_999_999, 999_999_999_999), gen.IntRange(0, 6),
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
