package columns

import (
	"strings"
	"unicode/utf8"
)

// maxFigure is the longest figure accepted, in characters without sign and marks
// (assumption: 1,000,000,000,000.000000 has 24).
const maxFigure = 32

// figure is a parsed figure. whole and decimals are digits only.
type figure struct {
	negative        bool
	whole, decimals string
	// reads is Point or Comma if the figure itself shows its decimal mark, and Unknown if
	// it has no mark or open is set.
	reads Decimal
	// open is '.' or ',' for a figure such as 1.234, whose only mark has one to three
	// digits before it and three after it, so it may be a decimal mark or a group mark.
	// whole and decimals are then the digits before and after it.
	open byte
}

// takeApart parses a cell. ok is false if it is not a figure.
func takeApart(cell string, marks []string) (f figure, ok bool) {
	body, negative := strip(cell, marks)
	s, ok := simplify(body)
	if !ok {
		return f, false
	}
	f, ok = apart(s)
	f.negative = negative
	return f, ok
}

// strip removes spaces, one sign and the longest mark on either side: -€ 5, € -5, 5 €.
func strip(cell string, marks []string) (body string, negative bool) {
	body, signed := trim(cell), false
	sign := func() {
		for _, s := range []string{"-", "\u2212", "+"} {
			if rest, found := strings.CutPrefix(body, s); found && !signed {
				body, signed, negative = trim(rest), true, s != "+"
			}
		}
	}
	sign()
	before, behind := "", ""
	for _, m := range marks {
		if strings.HasPrefix(body, m) && len(m) > len(before) {
			before = m
		}
	}
	body = trim(body[len(before):])
	sign()
	for _, m := range marks {
		if strings.HasSuffix(body, m) && len(m) > len(behind) {
			behind = m
		}
	}
	return trim(body[:len(body)-len(behind)]), negative
}

// simplify keeps digits, points and commas and replaces every space or apostrophe between
// them with '_'.
func simplify(body string) (string, bool) {
	if n := strings.IndexFunc(body, func(r rune) bool { return !figureByte(r) }); n < 0 {
		return body, body != "" && len(body) <= maxFigure
	}
	var into [maxFigure]byte
	n := 0
	for _, r := range body {
		switch {
		case n == maxFigure:
			return "", false
		case figureByte(r):
			into[n] = byte(r)
		case strings.ContainsRune(" \u00a0\u202f\u2009'\u2019", r) && r != utf8.RuneError:
			into[n] = '_'
		default:
			return "", false
		}
		n++
	}
	return string(into[:n]), true
}

func figureByte(r rune) bool { return r >= '0' && r <= '9' || r == '.' || r == ',' }

// apart decides what the marks of a figure mean.
func apart(s string) (f figure, ok bool) {
	points, commas := strings.Count(s, "."), strings.Count(s, ",")
	switch {
	case points == 0 && commas == 0:
		f.whole, ok = ungroup(s, '_')
		return f, ok
	case points > 0 && commas > 0 && strings.LastIndexByte(s, '.') > strings.LastIndexByte(s, ','):
		return cut(s, '.', ',', Point)
	case points > 0 && commas > 0:
		return cut(s, ',', '.', Comma)
	case points > 1:
		f.reads = Comma
		f.whole, ok = ungroup(s, '.')
		return f, ok
	case commas > 1:
		f.reads = Point
		f.whole, ok = ungroup(s, ',')
		return f, ok
	case points == 1:
		return single(s, '.', Point)
	}
	return single(s, ',', Comma)
}

// single handles a single mark. It is a decimal mark, unless exactly three digits follow
// it and one to three digits, ungrouped and not starting with 0, precede it; then the
// figure is open.
func single(s string, mark byte, reads Decimal) (f figure, ok bool) {
	f, ok = cut(s, mark, '_', reads)
	before := strings.IndexByte(s, mark)
	if ok && len(f.decimals) == 3 && before >= 1 && before <= 3 && s[0] != '0' {
		f.reads, f.open = Unknown, mark
	}
	return f, ok
}

// cut splits at the decimal mark, which must occur once, and ungroups the whole part.
func cut(s string, mark, group byte, reads Decimal) (f figure, ok bool) {
	whole, decimals, _ := cutByte(s, mark)
	if !digits(decimals) {
		return f, false
	}
	f = figure{decimals: decimals, reads: reads}
	if whole == "" {
		return f, true // .5
	}
	f.whole, ok = ungroup(whole, group)
	return f, ok
}

// ungroup removes the group mark from 1_234_567, which must have three digits in every
// group except the first, which has one to three. Without the mark, any number of digits
// is accepted.
func ungroup(s string, group byte) (string, bool) {
	if strings.IndexByte(s, group) < 0 {
		return s, digits(s)
	}
	out := make([]byte, 0, maxFigure)
	for first := true; ; first = false {
		part, rest, more := cutByte(s, group)
		if !digits(part) || len(part) > 3 || !first && len(part) != 3 {
			return "", false
		}
		out = append(out, part...)
		if !more {
			return string(out), true
		}
		s = rest
	}
}

func cutByte(s string, b byte) (before, after string, found bool) {
	if i := strings.IndexByte(s, b); i >= 0 {
		return s[:i], s[i+1:], true
	}
	return s, "", false
}

func digits(s string) bool {
	for i := range len(s) {
		if s[i] < '0' || s[i] > '9' {
			return false
		}
	}
	return s != ""
}

// plain is the figure's plain text. decimal decides how to read an open figure.
func (f figure) plain(decimal Decimal) string {
	whole, decimals := f.whole, f.decimals
	if f.open == '.' && decimal == Comma || f.open == ',' && decimal == Point {
		whole, decimals = whole+decimals, ""
	}
	whole = strings.TrimLeft(whole, "0")
	if whole == "" {
		whole = "0"
	}
	text := whole
	if decimals != "" {
		text += "." + decimals
	}
	if f.negative && strings.Trim(text, "0.") != "" {
		text = "-" + text
	}
	return text
}

// marked reports whether the figure has a point or comma.
func (f figure) marked() bool { return f.reads != Unknown || f.open != 0 }
