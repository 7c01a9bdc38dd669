package money

import (
	"errors"
	"strconv"
	"unicode/utf8"

	"github.com/shopspring/decimal"
)

// Decimal is an exact decimal number.
type Decimal = decimal.Decimal

// Most digits of a decimal in text: they keep every product exact and short.
const (
	mostWhole    = 12
	mostFraction = 6
)

// Parse reads an amount: an optional minus, digits, an optional point with
// digits. At most 12 digits before the point and 6 after it; no exponent, no
// currency sign, no separators.
func Parse(text string) (Decimal, error) {
	rest := text
	if rest != "" && rest[0] == '-' {
		rest = rest[1:]
	}
	whole := leadingDigits(rest)
	ok := whole > 0 && whole <= mostWhole
	if rest = rest[whole:]; ok && rest != "" {
		fraction := leadingDigits(rest[1:])
		ok = rest[0] == '.' && fraction > 0 && fraction <= mostFraction && fraction == len(rest)-1
	}
	if !ok {
		return Decimal{}, errors.New("expected a plain amount such as 1240.50 " +
			"(digits and a point only, at most 12 digits before it and 6 after), found " + quote(text))
	}
	d, err := decimal.NewFromString(text)
	if err != nil {
		panic("engine: internal error: decimal literal refused: " + text)
	}
	return d, nil
}

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
// zero, and returns what was cut off: cut = d − rounded, in major units. This
// is the one place where amounts are rounded.
//
// Rule: Streamlined Sales and Use Tax Agreement, section 324 (carry to the
// third decimal, round up when it exceeds four), which for exact amounts is
// half away from zero.
func (c Currency) Round(d Decimal) (m Minor, cut Decimal) {
	// A decimal made elsewhere may hide a huge power of ten; rounding it
	// would write out all its zeros.
	if e := d.Exponent(); (e > 20 || e < -1000) && !d.IsZero() {
		panic("engine: internal error: amount out of range")
	}
	rounded := d.Round(int32(c.Digits))
	shifted := rounded.Shift(int32(c.Digits)).BigInt()
	if !shifted.IsInt64() {
		panic("engine: internal error: amount out of range")
	}
	return Minor(shifted.Int64()), d.Sub(rounded)
}

// Decimal returns an amount in major units.
func (c Currency) Decimal(m Minor) Decimal { return decimal.New(int64(m), -int32(c.Digits)) }
