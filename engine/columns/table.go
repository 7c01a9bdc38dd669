package columns

import (
	"slices"
	"strconv"
)

// Bounds on a table (assumption: a shop's price list has a few thousand rows, a
// record of past jobs some hundreds).
const (
	MaxBytes    = 16 << 20 // length of the text
	MaxRows     = 100_000  // rows below the headings, including empty ones
	MaxCells    = 256      // cells in a row
	MaxCell     = 10_000   // bytes in a cell
	MaxRefusals = 1000     // refusals kept; refused rows beyond that are still counted
)

// Kind is what the cells of a column contain.
type Kind int

const (
	Text   Kind = iota // anything but a formula, with its spaces
	Number             // a figure, with or without decimals
	Whole              // a figure whose decimals, if any, are all zeros
)

// Decimal is the mark between whole units and decimals.
type Decimal int

const (
	Unknown Decimal = iota // determined from the figures in the column
	Point                  // 1,234.50
	Comma                  // 1.234,50
)

// Column is a column that the caller requests. Headings match regardless of case, spaces,
// underscores and hyphens.
type Column struct {
	Name     string   // the heading
	Also     []string // other headings that mean the same
	Kind     Kind
	Optional bool // the column may be missing
	Blank    bool // a cell may be empty
	// Low and High bound a figure, both inclusive; both zero means no bounds.
	Low, High float64
	// Marks, such as a currency sign, may come before or after a figure. A figure with any
	// other sign is refused, so that one currency is not mistaken for another.
	Marks []string
	// Decimal, unless Unknown, is the answer to a Question about this column.
	Decimal Decimal
}

// Cell is one cell. The text of a figure is plain: an optional minus, digits without a
// leading zero and, if the figure has decimals, a point and those decimals.
type Cell struct {
	Text  string
	Blank bool
}

// Float is the figure in a Number or Whole cell, 0 if blank.
func (c Cell) Float() float64 {
	f, _ := strconv.ParseFloat(c.Text, 64) // Read has checked the text
	return f
}

// Row is a good row, with one cell for each requested column, in that order. The cells of
// a column that the table does not have are blank.
type Row struct {
	Number int // as in a spreadsheet: the first row of the text is 1
	Line   int // line of the text on which it begins, from 1
	Cells  []Cell
}

// Refusal says what could not be accepted. Row and Column count from 1 as in a
// spreadsheet; 0 means the whole table or the whole row.
type Refusal struct {
	Row, Line, Column int
	Heading           string // heading of the column, as the caller names it
	Found, Expected   string
}

func (r *Refusal) Error() string {
	where := "table"
	if r.Row > 0 {
		where = "row " + strconv.Itoa(r.Row)
	}
	if r.Column > 0 {
		where += ", column " + strconv.Itoa(r.Column)
	}
	if r.Heading != "" {
		where += " (" + r.Heading + ")"
	}
	return where + ": found " + r.Found + "; expected " + r.Expected
}

// Question asks which decimal mark a column uses. Found is a figure that can be read in
// two ways. If OtherFound is set, the two figures contradict each other, and every figure
// in the column that has a mark is refused.
type Question struct {
	Asked            int // index of the column among those requested
	Heading          string
	Row              int
	Found            string
	AsPoint, AsComma string // the plain figure either way; empty for a contradiction
	OtherRow         int
	OtherFound       string
}

// Table is the result of Read.
type Table struct {
	Separator byte      // ',' ';' or tab; 0 for a single column
	Present   []bool    // for each requested column, whether the table has it
	Decimals  []Decimal // for each requested column, its decimal mark or Unknown
	Ignored   []string  // headings that were not requested
	Rows      []Row     // good rows
	Refused   int       // number of refused rows
	Refusals  []Refusal // the first MaxRefusals, in the order of the text
	Questions []Question
}

// Refuse counts one more row as refused, for a reason that only the caller can know, and
// keeps the refusals in the order of the text.
func (t *Table) Refuse(r *Refusal) {
	t.Refused++
	if len(t.Refusals) == MaxRefusals {
		return
	}
	at, _ := slices.BinarySearchFunc(t.Refusals, r.Row, func(o Refusal, row int) int { return o.Row - row })
	t.Refusals = slices.Insert(t.Refusals, at, *r)
}
