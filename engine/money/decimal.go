package money

import (
	"errors"
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/shopspring/decimal"
)

// Decimal is an exact decimal number with at most 12 digits before the point and 6 after
// it, as [Parse] reads it: a published price, rate or percentage. The zero Decimal is 0.
// Use Equal and Less to compare; == does not compile, because equal numbers can have
// different representations.
type Decimal struct {
	_     [0]func()
	exact decimal.Decimal
}

// Most digits of a decimal in text.
const (
	mostWhole    = 12
	mostFraction = 6
)

// Parse reads an amount: an optional minus, digits, and an optional point with digits.
// More than 12 digits before the point or 6 after it, exponents, currency signs and
// separators are errors.
func Parse(text string) (Decimal, error) {
	if plainAmount(text) {
		if exact, err := decimal.NewFromString(text); err == nil {
			return Decimal{exact: exact}, nil
		}
	}
	return Decimal{}, errors.New("expected a plain amount such as 1240.50 " +
		"(digits and a point only, at most 12 digits before it and 6 after), found " + quote(text))
}

// plainAmount reports whether a text has only the digits that a Decimal allows. The
// library reads more: exponents, any number of digits, and none before the point.
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

// String writes a decimal as Parse reads it, without trailing zeros: "1240.5".
func (d Decimal) String() string {
	return strings.TrimSuffix(strings.TrimRight(d.exact.StringFixed(mostFraction), "0"), ".")
}

// Float is the binary number nearest to d, for figures that are not amounts.
func (d Decimal) Float() float64 { return d.exact.InexactFloat64() }

// IsZero reports whether d is 0.
func (d Decimal) IsZero() bool { return d.exact.IsZero() }

// Less reports whether d is below e.
func (d Decimal) Less(e Decimal) bool { return d.exact.LessThan(e.exact) }

// Equal reports whether d and e are the same number.
func (d Decimal) Equal(e Decimal) bool { return d.exact.Equal(e.exact) }

func leadingDigits(s string) int {
	n := 0
	for n < len(s) && s[n] >= '0' && s[n] <= '9' {
		n++
	}
	return n
}

// quote shows the text found, cut to 40 characters.
func quote(s string) string {
	const longest = 40
	if utf8.RuneCountInString(s) > longest {
		s = string([]rune(s)[:longest]) + "…"
	}
	return strconv.QuoteToGraphic(s)
}

// Round converts a decimal amount in major units to minor units, half away from zero, and
// reports whether the result is exact. This is the only place where amounts are rounded.
//
// Rule: Streamlined Sales and Use Tax Agreement, section 324 (carry to the
// third decimal, round up when it exceeds four), which for exact amounts is
// half away from zero.
func (c Currency) Round(d Decimal) (m Minor, exact bool) {
	places := int32(c.Digits)
	rounded := d.exact.Round(places)
	return Minor(rounded.Shift(places).IntPart()), rounded.Equal(d.exact)
}
