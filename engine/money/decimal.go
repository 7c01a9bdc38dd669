package money

import (
	"errors"
	"strconv"
	"strings"
	"unicode/utf8"
)

// Decimal is an exact decimal number with at most 12 digits before the point and 6
// after it, as [Parse] reads it. The zero Decimal is 0. Two that are equal compare
// equal with ==.
//
// It is no number of any length, because a program with one is 80 KB longer to load
// in a browser (compressed, measured), and nothing published needs more digits.
type Decimal struct{ millionths int64 }

// Most digits of a decimal in text: what they write fits in 64 bits in millionths.
const (
	mostWhole    = 12
	mostFraction = 6
)

// Parse reads an amount: an optional minus, digits, an optional point with
// digits. At most 12 digits before the point and 6 after it; no exponent, no
// currency sign, no separators.
func Parse(text string) (Decimal, error) {
	rest, negative := strings.CutPrefix(text, "-")
	whole := leadingDigits(rest)
	ok := whole > 0 && whole <= mostWhole
	digits := rest[:whole]
	fraction := 0
	if rest = rest[whole:]; ok && rest != "" {
		fraction = leadingDigits(rest[1:])
		ok = rest[0] == '.' && fraction > 0 && fraction <= mostFraction && fraction == len(rest)-1
		digits += rest[1:]
	}
	if !ok {
		return Decimal{}, errors.New("expected a plain amount such as 1240.50 " +
			"(digits and a point only, at most 12 digits before it and 6 after), found " + quote(text))
	}
	n, err := strconv.ParseInt(digits+strings.Repeat("0", mostFraction-fraction), 10, 64)
	if err != nil {
		panic("engine: internal error: decimal literal refused: " + text)
	}
	if negative {
		n = -n
	}
	return Decimal{n}, nil
}

// String writes a decimal as Parse reads it, without zeros at its end: "1240.5".
func (d Decimal) String() string {
	text := strings.TrimRight(Currency{Digits: mostFraction}.Plain(Minor(d.millionths)), "0")
	return strings.TrimSuffix(text, ".")
}

// Float is the binary number nearest to d, for what is not an amount.
func (d Decimal) Float() float64 {
	f, err := strconv.ParseFloat(d.String(), 64)
	if err != nil {
		panic("engine: internal error: decimal literal refused: " + d.String())
	}
	return f
}

// IsZero says whether d is 0.
func (d Decimal) IsZero() bool { return d == Decimal{} }

// Less says whether d is below e.
func (d Decimal) Less(e Decimal) bool { return d.millionths < e.millionths }

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
	unit := uint64(perMajor) // millionths in a minor unit; currencies have at most 3 decimals
	for range c.Digits {
		unit /= 10
	}
	m = mulDiv(d.millionths, 1, unit)
	return m, int64(m)*int64(unit) == d.millionths
}
