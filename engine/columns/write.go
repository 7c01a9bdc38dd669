package columns

import (
	"strconv"
	"strings"
)

// ByteOrderMark may be put before a written text, for spreadsheets that otherwise do not
// recognise UTF-8. Read drops it.
const ByteOrderMark = "\ufeff"

// Writer writes a table as in RFC 4180: with line ends \r\n, and with quotation marks
// where a cell needs them.
type Writer struct {
	sep   byte
	width int
	row   int
	text  []byte
}

// NewWriter begins a table with its headings. It panics unless the separator is ',' ';'
// or tab. It is an error if Row cannot write the headings.
func NewWriter(separator byte, headings ...string) (*Writer, error) {
	if separator != ',' && separator != ';' && separator != '\t' {
		panic("engine: internal error: separator of a table must be comma, semicolon or tab")
	}
	w := &Writer{sep: separator, width: len(headings)}
	return w, w.Row(headings...)
}

// Row writes one row. A cell that a spreadsheet would run as a formula, which excludes
// plain figures such as -5, gets a leading apostrophe; Read removes it. It is an error if
// the row has another width or a cell that Read would not accept; then nothing of the row
// is written.
func (w *Writer) Row(cells ...string) error {
	w.row++
	if len(cells) != w.width || w.width == 0 || w.width > MaxCells {
		return &Refusal{Row: w.row, Found: strconv.Itoa(len(cells)) + " cells", Expected: "as many as headings, 1 to " + strconv.Itoa(MaxCells)}
	}
	for i, c := range cells {
		if !fit(c) || len(guard(c)) > MaxCell {
			return &Refusal{Row: w.row, Column: i + 1, Found: shown(c), Expected: "UTF-8 text without control characters, " + longest}
		}
	}
	for i, c := range cells {
		if i > 0 {
			w.text = append(w.text, w.sep)
		}
		w.text = appendCell(w.text, guard(c))
	}
	w.text = append(w.text, '\r', '\n')
	return nil
}

// appendCell quotes a cell that contains any separator, a quotation mark or a line end,
// or that begins or ends with a space or a byte order mark.
func appendCell(text []byte, cell string) []byte {
	if !strings.ContainsAny(cell, ",;\t\"\r\n") && strings.Trim(cell, spaces+ByteOrderMark) == cell {
		return append(text, cell...)
	}
	text = append(text, '"')
	text = append(text, strings.ReplaceAll(cell, `"`, `""`)...)
	return append(text, '"')
}

// Text is the table so far.
func (w *Writer) Text() string { return string(w.text) }

// Figure writes a plain figure, such as Cell.Text, with a decimal mark. A figure that
// could be read two ways gets one more zero (1.234 becomes 1.2340), so that Read does not
// need to ask. Anything other than a plain figure is returned unchanged.
func Figure(plain string, decimal Decimal) string {
	f, ok := takeApart(plain, nil)
	if !ok || f.open == ',' || f.reads == Comma || f.plain(Point) != plain {
		return plain
	}
	if f.open != 0 {
		plain += "0"
	}
	if decimal == Comma {
		plain = strings.ReplaceAll(plain, ".", ",")
	}
	return plain
}
