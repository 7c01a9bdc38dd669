package strict

import "github.com/go-json-experiment/json/jsontext"

// Most digits of a decimal, before and after the point.
const (
	decimalWhole    = 12
	decimalFraction = 6
)

// Decimal returns a decimal number as text, with its sign, from a JSON number or a
// string: an optional minus, digits without needless leading zeros, and an optional point
// with digits. Exponents, currency signs and separators are complaints, and so are more
// than 12 digits before the point or 6 after it.
func (f Field) Decimal() string {
	n := f.node()
	if n == nil {
		return ""
	}
	if (n.kind != jsontext.KindString && n.kind != jsontext.KindNumber) || !decimalLiteral(n.text) {
		f.Complain("a plain amount such as 1240.50 (digits and a point only, at most 12 digits before it and 6 after)")
		return ""
	}
	return n.text
}

func decimalLiteral(s string) bool {
	if s != "" && s[0] == '-' {
		s = s[1:]
	}
	whole := digits(s)
	if whole == 0 || whole > decimalWhole || whole > 1 && s[0] == '0' {
		return false
	}
	s = s[whole:]
	if s == "" {
		return true
	}
	fraction := digits(s[1:])
	return s[0] == '.' && fraction > 0 && fraction <= decimalFraction && fraction == len(s)-1
}

// digits counts the decimal digits at the start of s.
func digits(s string) int {
	n := 0
	for n < len(s) && s[n] >= '0' && s[n] <= '9' {
		n++
	}
	return n
}

// Date returns a day of the Gregorian calendar written "YYYY-MM-DD" (ISO 8601),
// from the year 1 on.
func (f Field) Date() string {
	const expected = `a date such as "2025-03-31" (year, month, day)`
	n := f.is(jsontext.KindString, expected)
	if n == nil {
		return ""
	}
	if !IsDate(n.text) {
		f.Complain(expected)
		return ""
	}
	return n.text
}

// IsDate reports whether s is YYYY-MM-DD and a day that exists.
func IsDate(s string) bool {
	if len(s) != 10 || s[4] != '-' || s[7] != '-' ||
		digits(s[:4]) != 4 || digits(s[5:7]) != 2 || digits(s[8:]) != 2 {
		return false
	}
	year, month, day := number(s[:4]), number(s[5:7]), number(s[8:])
	return year >= 1 && month >= 1 && month <= 12 && day >= 1 && day <= daysIn(year, month)
}

func daysIn(year, month int) int {
	switch month {
	case 4, 6, 9, 11:
		return 30
	case 2:
		if year%4 == 0 && (year%100 != 0 || year%400 == 0) {
			return 29
		}
		return 28
	}
	return 31
}

// number reads a few decimal digits.
func number(s string) int {
	n := 0
	for _, c := range []byte(s) {
		n = 10*n + int(c-'0')
	}
	return n
}
