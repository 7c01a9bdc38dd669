package columns

import (
	"strings"
	"unicode"
)

// layout says where the requested columns are in the text.
type layout struct {
	sep     byte
	at      []int // for each requested column, its position from 0, or -1
	ignored []string
	matched int
	cells   int
	row     int // number of the heading row
	rest    splitter
}

// findLayout tries every separator on the first row that is not empty and takes the one
// that gives the most recognised columns. If no separator splits that row, the table is a
// single column.
func findLayout(text string, want []Column) (best layout, err error) {
	first, single := true, true
	for _, sep := range []byte{',', ';', '\t'} {
		l, err := tryLayout(text, sep, want)
		if err != nil {
			return l, err
		}
		single = single && l.cells <= 1
		if first || l.matched > best.matched {
			best, first = l, false
		}
	}
	if single {
		return tryLayout(text, 0, want)
	}
	return best, nil
}

// tryLayout reads the headings with one separator.
func tryLayout(text string, sep byte, want []Column) (layout, error) {
	l := layout{sep: sep, at: make([]int, len(want)), rest: splitter{text: text, sep: sep, line: 1}}
	for i := range l.at {
		l.at[i] = -1
	}
	var rec record
	for {
		if !l.rest.next(&rec) {
			return l, &Refusal{Found: "an empty table", Expected: expectedHeadings(want)}
		}
		l.row++
		if rec.fault != nil || !emptyRecord(rec.cells) {
			break
		}
	}
	if l.cells = len(rec.cells); rec.fault != nil {
		l.cells = 0 // wrong separator, or no headings at all
		return l, nil
	}
	for place, cell := range rec.cells {
		heading, _ := bare(cell)
		k := asked(heading, want)
		switch {
		case k < 0 && !blankCell(cell):
			l.ignored = append(l.ignored, shownHeading(heading))
		case k >= 0 && l.at[k] >= 0:
			return l, &Refusal{Row: l.row, Line: rec.line, Column: place + 1, Heading: want[k].Name,
				Found: "this heading a second time", Expected: "each heading once"}
		case k >= 0:
			l.at[k] = place
			l.matched++
		}
	}
	return l, nil
}

// complete refuses a table in which a required column is missing.
func (l layout) complete(want []Column) error {
	if l.matched == 0 {
		return &Refusal{Row: l.row, Found: "no known heading", Expected: expectedHeadings(want)}
	}
	for k, c := range want {
		if l.at[k] < 0 && !c.Optional {
			return &Refusal{Row: l.row, Heading: c.Name, Found: "no column with this heading", Expected: expectedHeadings(want)}
		}
	}
	return nil
}

func asked(heading string, want []Column) int {
	key := headingKey(heading)
	if key == "" {
		return -1
	}
	for k, c := range want {
		if headingKey(c.Name) == key {
			return k
		}
		for _, other := range c.Also {
			if headingKey(other) == key {
				return k
			}
		}
	}
	return -1
}

// headingKey is equal for headings that differ only in case, spaces, underscores and
// hyphens.
func headingKey(s string) string {
	words := strings.FieldsFunc(s, func(r rune) bool { return unicode.IsSpace(r) || r == '_' || r == '-' })
	return strings.ToLower(strings.Join(words, " "))
}

func shownHeading(s string) string { return strings.Trim(shown(trim(s)), `"`) }

func expectedHeadings(want []Column) string {
	out := "a first row of headings:"
	for k, c := range want {
		if k > 0 {
			out += ","
		}
		out += " " + c.Name
	}
	return out + "; UTF-8 text"
}

func emptyRecord(cells []string) bool {
	for _, c := range cells {
		if !blankCell(c) {
			return false
		}
	}
	return true
}
