package columns

import (
	"slices"
	"strconv"
)

// Bounds on a table (assumption: a shop's price list has a few thousand rows, a
// record of past jobs some hundreds).
const (
	MaxBytes    = 16 << 20 // length of the text
	MaxRows     = 100_000  // rows under the headings, empty ones included
	MaxCells    = 256      // cells of a row
	MaxCell     = 10_000   // bytes of a cell
	MaxRefusals = 1000     // refusals kept; rows refused are counted beyond that
)

// Kind is what the cells of a column hold.
type Kind int

const (
	Text   Kind = iota // anything but a formula, spaces kept
	Number             // a figure, with or without decimals
	Whole              // a figure without decimals, or with none but zeros
)

// Decimal is the mark between whole units and decimals.
type Decimal int

const (
	Unknown Decimal = iota // found from the figures of the column
	Point                  // 1,234.50
	Comma                  // 1.234,50
)

// Column is what the caller asks for. Headings match whatever their case, spaces,
// underscores and hyphens.
type Column struct {
	Name     string   // the heading
	Also     []string // other headings that mean the same
	Kind     Kind
	Optional bool // the column may be missing
	Blank    bool // a cell may be empty
	// Low and High bound a figure, both inclusive; both zero means no bounds.
	Low, High float64
	// Marks may stand before or after a figure, such as a currency sign. A figure
	// with any other sign is refused, so that one currency is not taken for another.
	Marks []string
	// Decimal, unless Unknown, is the answer to a Question about this column.
	Decimal Decimal
}

// Cell is one cell. The text of a figure is plain: an optional minus, digits
// without a leading zero and, if there are decimals, a point and those written.
type Cell struct {
	Text  string
	Blank bool
}

// Float is the figure of a Number or Whole cell; 0 when blank.
func (c Cell) Float() float64 {
	f, _ := strconv.ParseFloat(c.Text, 64) // the text was checked when it was read
	return f
}

// Row is a row all of whose cells passed, one cell for each column asked for, in
// that order. A column that the table does not have gives blank cells.
type Row struct {
	Number int // as a spreadsheet counts: the first row of the text is 1
	Line   int // line of the text on which it begins, from 1
	Cells  []Cell
}

// Refusal says what could not be taken. Row and Column count from 1 as in a
// spreadsheet; 0 means the whole table or the whole row.
type Refusal struct {
	Row, Line, Column int
	Heading           string // of the column, as the caller names it
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

// Question asks which mark a column uses for decimals. Found is a figure that can
// be read two ways; or, when OtherFound is set, the two figures contradict each
// other, and every figure of the column that holds a mark is refused.
type Question struct {
	Asked            int // index of the column among those asked for
	Heading          string
	Row              int
	Found            string
	AsPoint, AsComma string // the plain figure either way; empty in a contradiction
	OtherRow         int
	OtherFound       string
}

// Table is what was read.
type Table struct {
	Separator byte      // ',' ';' or tab; 0 for a single column
	Present   []bool    // of each column asked for, whether the table has it
	Decimals  []Decimal // of each column asked for, the mark used or Unknown
	Ignored   []string  // headings that nobody asked for
	Rows      []Row     // good rows
	Refused   int       // rows refused
	Refusals  []Refusal // the first MaxRefusals, in the order of the text
	Questions []Question
}

// Refuse counts one more row as refused, for a reason that only the caller can see,
// and keeps the refusals in the order of the text.
func (t *Table) Refuse(r *Refusal) {
	t.Refused++
	if len(t.Refusals) == MaxRefusals {
		return
	}
	at, _ := slices.BinarySearchFunc(t.Refusals, r.Row, func(o Refusal, row int) int { return o.Row - row })
	t.Refusals = slices.Insert(t.Refusals, at, *r)
}
