package money

import (
	"errors"
	"math"
	"math/bits"

	"github.com/shopspring/decimal"
)

// Rates and percentages are whole millionths, because every decimal has at most
// mostFraction digits after the point.
const millionth = 1_000_000

// Bounds of a published price per unit, in major units, and of a percentage.
var (
	highestRate    = decimal.New(1_000_000, 0)
	lowestPercent  = decimal.New(-100, 0)
	highestPercent = decimal.New(1000, 0)
)

// millionths is a decimal as a whole number of millionths.
func millionths(d Decimal) int64 { return d.exact.Shift(mostFraction).IntPart() }

// Rate is a price per unit (an hour, a litre, a piece) in one currency, in whole
// millionths of the major unit. The zero Rate is a price of 0.
type Rate struct {
	millionths int64 // 0 to 10^12
	divisor    uint64
}

// NewRate returns a price per unit, given in major units. It is an error if d is negative
// or above 1,000,000.
func (c Currency) NewRate(d Decimal) (Rate, error) {
	if d.exact.IsNegative() || d.exact.GreaterThan(highestRate) {
		return Rate{}, errors.New("expected a price from 0 to 1000000 with at most 6 decimals, found " + quote(d.String()))
	}
	// millionths × thousandths is in units of 10^-9 of the major unit. A minor unit is
	// 10^(9−Digits) of those.
	divisor := uint64(1)
	for i := c.Digits; i < 9; i++ {
		divisor *= 10
	}
	return Rate{millionths: millionths(d), divisor: divisor}, nil
}

// Of returns the price of a quantity in thousandths of the unit. It rounds once, exactly
// as Currency.Round would round the decimal product.
func (r Rate) Of(thousandths int64) Minor {
	if r.millionths == 0 {
		return 0
	}
	return mulDiv(r.millionths, thousandths, r.divisor)
}

// Ratio returns the two whole numbers that [Rate.Of] uses: the price of a quantity in
// thousandths is millionths × thousandths ÷ divisor, rounded half away from zero. For the
// zero Rate both are 0.
func (r Rate) Ratio() (millionths int64, divisor uint64) { return r.millionths, r.divisor }

// Percent is a percentage, such as a tax or a mark-up, in whole millionths of a per cent.
// The zero Percent is 0 %.
type Percent struct{ millionths int64 }

// NewPercent returns a percentage: 7.25 is 7.25 %. It is an error if d is not from −100
// to 1000.
func NewPercent(d Decimal) (Percent, error) {
	if d.exact.LessThan(lowestPercent) || d.exact.GreaterThan(highestPercent) {
		return Percent{}, errors.New("expected a percentage from -100 to 1000 with at most 6 decimals, found " + quote(d.String()))
	}
	return Percent{millionths: millionths(d)}, nil
}

// Of returns that percentage of an amount. It rounds once, exactly as Currency.Round
// would round the decimal product.
func (p Percent) Of(m Minor) Minor { return mulDiv(p.millionths, int64(m), 100*millionth) }

// Millionths returns the percentage in millionths of a per cent. That percentage of an
// amount is millionths × amount ÷ 100,000,000, rounded half away from zero.
func (p Percent) Millionths() int64 { return p.millionths }

// mulDiv returns a × b / divisor, rounded half away from zero, with a product of 128
// bits.
func mulDiv(a, b int64, divisor uint64) Minor {
	hi, lo := bits.Mul64(magnitude(a), magnitude(b))
	lo, carry := bits.Add64(lo, divisor/2, 0) // the divisors are even
	hi += carry
	if hi >= divisor {
		panic("engine: internal error: amount out of range")
	}
	q, _ := bits.Div64(hi, lo, divisor)
	if q > math.MaxInt64 {
		panic("engine: internal error: amount out of range")
	}
	if (a < 0) != (b < 0) {
		return -Minor(q)
	}
	return Minor(q)
}

// magnitude is |x|, even for the smallest integer.
func magnitude(x int64) uint64 {
	if x < 0 {
		return -uint64(x)
	}
	return uint64(x)
}
