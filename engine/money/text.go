package money

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/shopspring/decimal"
)

const (
	minus   = "\u2212" // minus sign, as wide as a digit
	noBreak = "\u00a0" // keeps a symbol that is a word on the same line as its number
)

// Text writes an amount with all its decimals: "$11,400.00", "£1,240.50",
// "¥11,400", "−$3.20", "1,240.50 kr" (with a no-break space).
func (c Currency) Text(m Minor) string { return c.text(m, false) }

// TextWhole writes an amount without decimals when they are all zero:
// "$74,000", but "$74,000.50".
func (c Currency) TextWhole(m Minor) string { return c.text(m, true) }

func (c Currency) text(m Minor, whole bool) string {
	major, fraction, _ := strings.Cut(strings.TrimPrefix(c.Plain(m), "-"), ".")
	var b strings.Builder
	if m < 0 {
		b.WriteString(minus)
	}
	if c.SymbolFirst {
		b.WriteString(c.Symbol)
		if last, _ := utf8.DecodeLastRuneInString(c.Symbol); last == '.' || unicode.IsLetter(last) {
			b.WriteString(noBreak)
		}
	}
	group(&b, major)
	if fraction != "" && !(whole && strings.Trim(fraction, "0") == "") {
		b.WriteString(".")
		b.WriteString(fraction)
	}
	if !c.SymbolFirst {
		b.WriteString(noBreak)
		b.WriteString(c.Symbol)
	}
	return b.String()
}

// group writes digits with a comma before every third from the right.
func group(b *strings.Builder, digits string) {
	for i := range len(digits) {
		if i > 0 && (len(digits)-i)%3 == 0 {
			b.WriteByte(',')
		}
		b.WriteByte(digits[i])
	}
}

// Plain writes an amount in the form used in files: "11400.00", "-3.20", "11400" for yen.
func (c Currency) Plain(m Minor) string {
	return decimal.New(int64(m), -int32(c.Digits)).StringFixed(int32(c.Digits))
}
