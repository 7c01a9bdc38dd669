package strict

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/go-json-experiment/json/jsontext"
)

// Text returns a string of at most maxRunes characters, which may be empty. Control
// characters (including line breaks), characters that reverse the reading direction, and
// white space at either end are complaints.
func (f Field) Text(maxRunes int) string {
	expected := "a text in double quotes, at most " + strconv.Itoa(maxRunes) + " characters"
	n := f.is(jsontext.KindString, expected)
	if n == nil {
		return ""
	}
	if length := utf8.RuneCountInString(n.text); length > maxRunes {
		f.ComplainFound(strconv.Itoa(length)+" characters", expected)
		return ""
	}
	for _, r := range n.text {
		if hidden(r) {
			f.Complain("a text in one line, without control characters")
			return ""
		}
	}
	if strings.TrimSpace(n.text) != n.text {
		f.Complain("a text without spaces at its start or end")
		return ""
	}
	return n.text
}

// hidden reports whether r is a control character, a line or paragraph separator, the
// byte order mark or a control of UAX 9 that overrides or isolates direction.
func hidden(r rune) bool {
	return unicode.IsControl(r) || r == '\u2028' || r == '\u2029' || r == '\ufeff' ||
		r >= '\u202a' && r <= '\u202e' || r >= '\u2066' && r <= '\u2069'
}

// Number returns a JSON number from low to high, both included; the bounds
// may be infinite. Minus zero is returned as zero.
func (f Field) Number(low, high float64) float64 {
	expected := "a number" + bounds(low, high)
	n := f.is(jsontext.KindNumber, expected)
	if n == nil {
		return 0
	}
	x, err := strconv.ParseFloat(n.text, 64)
	if err != nil || !(x >= low && x <= high) {
		f.Complain(expected)
		return 0
	}
	return x + 0 // −0 + 0 is +0
}

// mostWhole is the largest number up to which every whole number has a float64 of its
// own: 2^53 − 1 (RFC 7493, section 2.2).
const mostWhole = 1<<53 - 1

// Whole returns a whole JSON number from low to high, both included and never
// beyond ±(2^53 − 1). 5, 5.0 and 5e0 are the same number and all accepted.
func (f Field) Whole(low, high int) int {
	low, high = max(low, -mostWhole), min(high, mostWhole)
	expected := "a whole number" + bounds(float64(low), float64(high))
	n := f.is(jsontext.KindNumber, expected)
	if n == nil {
		return 0
	}
	x, err := strconv.ParseFloat(n.text, 64)
	if err != nil || x != math.Floor(x) || !(x >= float64(low) && x <= float64(high)) {
		f.Complain(expected)
		return 0
	}
	return int(x)
}

// bounds puts a range in words: " from 0 to 10", " of at least 0", " of at most 10".
func bounds(low, high float64) string {
	switch {
	case math.IsInf(low, -1) && math.IsInf(high, 1):
		return ""
	case math.IsInf(high, 1):
		return " of at least " + plain(low)
	case math.IsInf(low, -1):
		return " of at most " + plain(high)
	}
	return " from " + plain(low) + " to " + plain(high)
}

// plain writes a bound without exponent unless it is very long.
func plain(x float64) string {
	s := strconv.FormatFloat(x, 'f', -1, 64)
	if len(s) > 18 {
		return strconv.FormatFloat(x, 'g', -1, 64)
	}
	return s
}

// Bool returns true or false.
func (f Field) Bool() bool {
	n := f.node()
	if n == nil {
		return false
	}
	if n.kind != jsontext.KindTrue && n.kind != jsontext.KindFalse {
		f.Complain("true or false")
		return false
	}
	return n.kind == jsontext.KindTrue
}

// OneOf returns a string that is one of the ids.
func (f Field) OneOf(ids ...string) string {
	n := f.is(jsontext.KindString, "one of "+list(ids))
	if n == nil {
		return ""
	}
	if !slices.Contains(ids, n.text) {
		expected := "one of " + list(ids)
		if near := Nearest(n.text, ids); near != "" && len(ids) > mostNames {
			expected = quote(near)
		}
		f.Complain(expected)
		return ""
	}
	return n.text
}

// Numbers returns an array of exactly n numbers from low to high.
func (f Field) Numbers(n int, low, high float64) []float64 {
	expected := "a list [ ] of " + count(n, "number", "numbers") + bounds(low, high)
	node := f.is(jsontext.KindBeginArray, expected)
	if node == nil {
		return nil
	}
	if len(node.kids) != n {
		f.Complain(expected)
		return nil
	}
	out := make([]float64, n)
	for i, k := range node.kids {
		out[i] = Field{doc: f.doc, id: k}.Number(low, high)
	}
	if f.Err() != nil {
		return nil
	}
	return out
}

// Document returns a string that is itself a whole document, such as a file inside a
// message. It may have any characters, including line breaks, up to the given length.
func (f Field) Document(most int) string {
	expected := "a whole file as one text, at most " + strconv.Itoa(most) + " bytes"
	n := f.is(jsontext.KindString, expected)
	if n == nil {
		return ""
	}
	if len(n.text) > most {
		f.ComplainFound(strconv.Itoa(len(n.text))+" bytes", expected)
		return ""
	}
	return n.text
}
