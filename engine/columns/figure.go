package columns

import (
	"strings"
	"unicode/utf8"
)

// maxFigure is the longest figure taken, in characters without sign and marks
// (assumption: 1,000,000,000,000.000000 has 24).
const maxFigure = 32

// figure is a figure taken apart. Whole and decimals are digits only.
type figure struct {
	negative        bool
	whole, decimals string
	// reads is Point or Comma when the figure itself shows its decimal mark, and
	// Unknown when it has no mark or when open is set.
	reads Decimal
	// open is '.' or ',' for a figure such as 1.234, whose one mark, with one to
	// three digits before and three behind, can be either; then whole and decimals
	// are what stands before and behind.
	open byte
}

// takeApart reads a cell; ok is false when it is no figure.
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

// strip takes away spaces, one sign and the longest mark on either side: -€ 5,
// € -5, 5 €.
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

// simplify returns digits, points and commas as they are and every space or
// apostrophe between them as '_'.
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

// apart decides what the marks of a figure are.
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

// single handles one mark of one kind: clear unless exactly three digits follow
// one to three that do not begin with 0 and are not grouped by spaces.
func single(s string, mark byte, reads Decimal) (f figure, ok bool) {
	f, ok = cut(s, mark, '_', reads)
	before := strings.IndexByte(s, mark)
	if ok && len(f.decimals) == 3 && before >= 1 && before <= 3 && s[0] != '0' {
		f.reads, f.open = Unknown, mark
	}
	return f, ok
}

// cut splits at the decimal mark, which must be there once, and ungroups the rest.
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

// ungroup takes the group mark out of 1_234_567: three digits in every group but
// the first, which has one to three. Without the mark any number of digits passes.
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

// plain is the figure's text, an open one read with the mark given.
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
