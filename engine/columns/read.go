package columns

import (
	"strconv"
	"strings"
)

// reader holds the rows between the two passes. The first determines the decimal mark of
// every column of figures; the second reads the cells.
type reader struct {
	want  []Column
	l     layout
	rows  []pending
	cells []string // len(want) cells for each row without fault
	table Table
}

// pending is a row that has been split but not read yet.
type pending struct {
	number, line int
	from         int // index of its first cell, or -1 if fault is set
	fault        *Refusal
}

// Read reads a table. The first row that is not empty has the headings, in any order.
// Empty rows are skipped. The error, a *Refusal, means that the text is not such a table
// at all; the table itself lists what is wrong with single rows. The table keeps
// references to the text.
func Read(text string, want []Column) (Table, error) {
	if len(text) > MaxBytes {
		return Table{}, &Refusal{Found: strconv.Itoa(len(text)) + " bytes", Expected: "at most " + strconv.Itoa(MaxBytes)}
	}
	if strings.HasPrefix(text, "\xff\xfe") || strings.HasPrefix(text, "\xfe\xff") {
		return Table{}, &Refusal{Found: "UTF-16 text", Expected: "UTF-8: when saving, choose CSV UTF-8"}
	}
	text = strings.TrimPrefix(text, ByteOrderMark)
	r := &reader{want: want}
	var err error
	if r.l, err = findLayout(text, want); err != nil {
		return Table{}, err
	}
	if err := r.l.complete(want); err != nil {
		return Table{}, err
	}
	if err := r.split(); err != nil {
		return Table{}, err
	}
	t := &r.table
	t.Separator, t.Ignored = r.l.sep, r.l.ignored
	t.Present, t.Decimals = make([]bool, len(want)), make([]Decimal, len(want))
	first := make([]settled, len(want))
	for k := range want {
		t.Present[k] = r.l.at[k] >= 0
		first[k] = r.settle(k)
		t.Decimals[k] = first[k].decimal
	}
	r.take(first)
	return *t, nil
}

// split splits the rest of the text into rows and keeps the requested cells.
func (r *reader) split() error {
	rec := record{}
	room := min(strings.Count(r.l.rest.text, "\n")+1, MaxRows)
	r.rows, r.cells = make([]pending, 0, room), make([]string, 0, room*len(r.want))
	for number := r.l.row + 1; r.l.rest.next(&rec); number++ {
		if number-r.l.row > MaxRows {
			return &Refusal{Row: number, Line: rec.line, Found: "more rows", Expected: "at most " + strconv.Itoa(MaxRows) + " rows"}
		}
		p := pending{number: number, line: rec.line, from: -1, fault: rec.fault}
		if p.fault == nil {
			if emptyRecord(rec.cells) {
				continue
			}
			p.fault = r.tooMany(rec.cells)
		}
		if p.fault != nil {
			p.fault.Row, p.fault.Line = number, rec.line
		} else {
			p.from = len(r.cells)
			r.keep(rec.cells)
		}
		r.rows = append(r.rows, p)
	}
	return nil
}

// tooMany refuses a row with cells to the right of the headings. The usual cause is a
// decimal comma in a table separated by commas.
func (r *reader) tooMany(cells []string) *Refusal {
	for i := r.l.cells; i < len(cells); i++ {
		if !blankCell(cells[i]) {
			return &Refusal{Column: i + 1, Found: shown(cells[i]), Expected: "no more cells than headings (" +
				strconv.Itoa(r.l.cells) + "); a cell that holds the separator needs quotation marks"}
		}
	}
	return nil
}

// keep stores the requested cells. A row may end early.
func (r *reader) keep(cells []string) {
	for _, place := range r.l.at {
		if place >= 0 && place < len(cells) {
			r.cells = append(r.cells, cells[place])
		} else {
			r.cells = append(r.cells, "")
		}
	}
}

// take reads every cell and separates good rows from refused ones.
func (r *reader) take(first []settled) {
	t := &r.table
	store := make([]Cell, 0, len(r.cells))
	t.Rows = make([]Row, 0, len(r.rows))
	for _, p := range r.rows {
		if p.fault != nil {
			r.refuse(*p.fault)
			t.Refused++
			continue
		}
		from, good := len(store), true
		for k := range r.want {
			cell, found, expected := r.cell(k, r.cells[p.from+k], first[k])
			if expected != "" {
				good = false
				r.refuse(Refusal{p.number, p.line, r.l.at[k] + 1, r.want[k].Name, found, expected})
				continue
			}
			store = append(store, cell)
		}
		if !good {
			store = store[:from]
			t.Refused++
			continue
		}
		t.Rows = append(t.Rows, Row{p.number, p.line, store[from:len(store):len(store)]})
	}
}

func (r *reader) refuse(why Refusal) {
	if len(r.table.Refusals) < MaxRefusals {
		r.table.Refusals = append(r.table.Refusals, why)
	}
}
