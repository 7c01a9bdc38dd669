package columns

import (
	"strings"
	"unicode/utf8"
)

// runs reports whether a spreadsheet may run a cell as a formula. Such a cell, after any
// apostrophes and spaces, begins with = + - @, tab, carriage return or line feed (OWASP,
// "CSV injection"), or with the wide forms of the first four, which spreadsheets in some
// languages accept, and is not a plain figure such as -5. Leading spaces are skipped
// because some spreadsheets drop them first.
func runs(cell string) bool {
	rest := strings.TrimLeft(strings.TrimLeft(cell, "'"), " \u00a0")
	first, size := utf8.DecodeRuneInString(rest)
	switch first {
	case '\t', '\r', '\n', '=', '@', '＝', '＋', '－', '＠':
		return true
	case '+', '-':
		return !plainFigure(rest[size:])
	}
	return false
}

// plainFigure reports whether s is digits with single points or commas between.
func plainFigure(s string) bool {
	digit := false
	for i := range len(s) {
		switch {
		case s[i] >= '0' && s[i] <= '9':
			digit = true
		case (s[i] == '.' || s[i] == ',') && digit:
			digit = false
		default:
			return false
		}
	}
	return digit
}

// guard puts an apostrophe before a cell that would run. A cell that would run without
// its own leading apostrophes also gets one, so that bare can remove one again.
func guard(cell string) string {
	if runs(cell) {
		return "'" + cell
	}
	return cell
}

// bare undoes guard; it reports false for a cell that would run and is not guarded.
func bare(cell string) (string, bool) {
	if !runs(cell) {
		return cell, true
	}
	return strings.CutPrefix(cell, "'")
}

// blankCell reports whether a cell holds nothing but spaces and line ends.
func blankCell(cell string) bool {
	return trim(cell) == ""
}

// spaces are the characters that may surround or group figures: the common ones, and
// no-break, narrow no-break and thin spaces.
const spaces = " \t\r\n\u00a0\u202f\u2009"

func trim(s string) string {
	if s == "" || s[0] > ' ' && s[0] < utf8.RuneSelf && s[len(s)-1] > ' ' && s[len(s)-1] < utf8.RuneSelf {
		return s // the usual case
	}
	return strings.Trim(s, spaces)
}

// fit reports whether a cell is text: valid UTF-8 without control characters
// other than tab and line ends.
func fit(cell string) bool {
	for i := range len(cell) {
		if b := cell[i]; b < ' ' && b != '\t' && b != '\n' && b != '\r' || b == 0x7f {
			return false
		}
	}
	return utf8.ValidString(cell)
}

// shown is a cell as a refusal quotes it: one line of valid UTF-8, shortened.
func shown(cell string) string {
	const most = 40
	cell = strings.ToValidUTF8(cell[:min(len(cell), 8*most)], "\uFFFD")
	out, n := make([]rune, 0, most+1), 0
	for _, r := range cell {
		if n == most {
			out = append(out, '…')
			break
		}
		if r < ' ' || r == 0x7f {
			r = ' '
		}
		out = append(out, r)
		n++
	}
	return `"` + string(out) + `"`
}
