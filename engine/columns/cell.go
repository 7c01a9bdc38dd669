package columns

import (
	"strconv"
	"strings"
	"unicode"
)

// settled is what the first pass learned about the decimal mark of a column.
type settled struct {
	decimal  Decimal
	asked    bool // a figure that can be read two ways is refused
	disagree bool // two figures contradict each other, so all that have a mark are refused
	expected string
}

// settle determines the decimal mark of column k from its figures, and asks a Question if
// they leave it open.
func (r *reader) settle(k int) settled {
	c := r.want[k]
	s := settled{decimal: c.Decimal, expected: expectedFigure(c)}
	if c.Kind == Text || r.l.at[k] < 0 || c.Decimal != Unknown {
		return s
	}
	var open, point, comma *pending
	for i := range r.rows {
		p := &r.rows[i]
		if p.from < 0 {
			continue
		}
		f, ok := takeApart(r.cells[p.from+k], c.Marks)
		switch {
		case !ok:
		case f.open != 0 && open == nil:
			open = p
		case f.reads == Point && point == nil:
			point = p
		case f.reads == Comma && comma == nil:
			comma = p
		}
	}
	switch {
	case point != nil && comma != nil:
		s.disagree = true
		r.table.Questions = append(r.table.Questions, Question{Asked: k, Heading: c.Name,
			Row: point.number, Found: trim(r.cells[point.from+k]), OtherRow: comma.number, OtherFound: trim(r.cells[comma.from+k])})
	case point != nil:
		s.decimal = Point
	case comma != nil:
		s.decimal = Comma
	case open != nil:
		s.asked = true
		text := r.cells[open.from+k]
		f, _ := takeApart(text, c.Marks)
		r.table.Questions = append(r.table.Questions, Question{Asked: k, Heading: c.Name, Row: open.number,
			Found: trim(text), AsPoint: f.plain(Point), AsComma: f.plain(Comma)})
	}
	return s
}

// cell reads one cell, or returns what was found and expected.
func (r *reader) cell(k int, text string, s settled) (cell Cell, found, expected string) {
	c := r.want[k]
	switch {
	case r.l.at[k] < 0:
		return Cell{Blank: true}, "", ""
	case !fit(text):
		return Cell{}, shown(text), "UTF-8 text without control characters"
	case c.Kind == Text:
		return words(c, text)
	case !blankCell(text):
		return number(c, text, s)
	case c.Blank:
		return Cell{Blank: true}, "", ""
	}
	return Cell{}, empty, s.expected
}

const empty = "an empty cell"

// words reads a cell of text.
func words(c Column, text string) (cell Cell, found, expected string) {
	plain, safe := bare(text)
	if blankCell(text) {
		plain, safe = text, true // a tab alone is not a formula
	}
	switch blank := blankCell(plain); {
	case !safe:
		return Cell{}, shown(text), "text, not a formula"
	case blank && !c.Blank:
		return Cell{}, empty, "text"
	default:
		return Cell{Text: plain, Blank: blank}, "", ""
	}
}

// number reads a figure.
func number(c Column, text string, s settled) (cell Cell, found, expected string) {
	f, ok := takeApart(text, c.Marks)
	switch {
	case !ok && formula(text):
		return Cell{}, shown(text), s.expected + ", not a formula"
	case !ok:
		return Cell{}, shown(text), s.expected
	case s.disagree && f.marked():
		return Cell{}, shown(text), "one decimal mark in the whole column; say which it is"
	case s.asked && f.open != 0:
		return Cell{}, shown(text), "a clear decimal mark: " + f.plain(Point) + " or " + f.plain(Comma)
	case f.reads == Comma && s.decimal == Point:
		return Cell{}, shown(text), "a decimal point, as in the rest of the column"
	case f.reads == Point && s.decimal == Comma:
		return Cell{}, shown(text), "a decimal comma, as in the rest of the column"
	}
	plain := f.plain(s.decimal)
	if c.Kind == Whole {
		whole, decimals, _ := strings.Cut(plain, ".")
		if strings.Trim(decimals, "0") != "" {
			return Cell{}, shown(text), s.expected
		}
		plain = whole
	}
	cell = Cell{Text: plain}
	if v := cell.Float(); (c.Low != 0 || c.High != 0) && !(v >= c.Low && v <= c.High) {
		return Cell{}, shown(text), s.expected
	}
	return cell, "", ""
}

// formula reports whether a cell that is not a figure looks like a formula rather than a
// dash or a slip.
func formula(text string) bool {
	return runs(text) && strings.IndexFunc(text, func(r rune) bool { return r == '=' || r == '@' || unicode.IsLetter(r) }) >= 0
}

// expectedFigure says in words what a column of figures accepts.
func expectedFigure(c Column) string {
	out := "a figure"
	if c.Kind == Whole {
		out = "a whole number"
	}
	if c.Low != 0 || c.High != 0 {
		out += " from " + short(c.Low) + " to " + short(c.High)
	}
	for i, m := range c.Marks {
		if i == 0 {
			out += ", with "
		} else {
			out += " or "
		}
		out += m
	}
	if len(c.Marks) > 0 {
		out += " or no sign"
	}
	return out
}

func short(f float64) string { return strconv.FormatFloat(f, 'f', -1, 64) }
