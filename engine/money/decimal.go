package money

import (
	"errors"
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/shopspring/decimal"
)

// Decimal is an exact decimal number with at most 12 digits before the point and 6
// after it, as [Parse] reads it: a published price, rate or percentage. The zero
// Decimal is 0. Two are compared by Equal and Less; == does not compile, since equal
// numbers can be held in more than one way.
type Decimal struct {
	_     [0]func()
	exact decimal.Decimal
}

// Most digits of a decimal in text.
const (
	mostWhole    = 12
	mostFraction = 6
)

// Parse reads an amount: an optional minus, digits, an optional point with
// digits. At most 12 digits before the point and 6 after it; no exponent, no
// currency sign, no separators.
func Parse(text string) (Decimal, error) {
	if plainAmount(text) {
		if exact, err := decimal.NewFromString(text); err == nil {
			return Decimal{exact: exact}, nil
		}
	}
	return Decimal{}, errors.New("expected a plain amount such as 1240.50 " +
		"(digits and a point only, at most 12 digits before it and 6 after), found " + quote(text))
}

// plainAmount holds a text to the digits that a Decimal has. The library reads more:
// exponents, any number of digits, and none before the point.
func plainAmount(text string) bool {
	text = strings.TrimPrefix(text, "-")
	whole := leadingDigits(text)
	if whole == 0 || whole > mostWhole {
		return false
	}
	fraction, pointed := strings.CutPrefix(text[whole:], ".")
	if !pointed {
		return fraction == ""
	}
	digits := leadingDigits(fraction)
	return digits > 0 && digits <= mostFraction && digits == len(fraction)
}

// String writes a decimal as Parse reads it, without zeros at its end: "1240.5".
func (d Decimal) String() string {
	return strings.TrimSuffix(strings.TrimRight(d.exact.StringFixed(mostFraction), "0"), ".")
}

// Float is the binary number nearest to d, for what is not an amount.
func (d Decimal) Float() float64 { return d.exact.InexactFloat64() }

// IsZero says whether d is 0.
func (d Decimal) IsZero() bool { return d.exact.IsZero() }

// Less says whether d is below e.
func (d Decimal) Less(e Decimal) bool { return d.exact.LessThan(e.exact) }

// Equal says whether d and e are the same number.
func (d Decimal) Equal(e Decimal) bool { return d.exact.Equal(e.exact) }

func leadingDigits(s string) int {
	n := 0
	for n < len(s) && s[n] >= '0' && s[n] <= '9' {
		n++
	}
	return n
}

// quote shows what was found, cut to 40 characters.
func quote(s string) string {
	const longest = 40
	if utf8.RuneCountInString(s) > longest {
		s = string([]rune(s)[:longest]) + "…"
	}
	return strconv.QuoteToGraphic(s)
}

// Round turns a decimal amount in major units into minor units, half away from
// zero, and says whether that is the amount to the last digit. This is the one
// place where amounts are rounded.
//
// Rule: Streamlined Sales and Use Tax Agreement, section 324 (carry to the
// third decimal, round up when it exceeds four), which for exact amounts is
// half away from zero.
func (c Currency) Round(d Decimal) (m Minor, exact bool) {
	places := int32(c.Digits)
	rounded := d.exact.Round(places)
	return Minor(rounded.Shift(places).IntPart()), rounded.Equal(d.exact)
}
