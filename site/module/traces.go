package module

import (
	"encoding/binary"
	"errors"
	"fmt"
)

// Places in the record of a function (runtime2.go, _func), in bytes, and among its
// tables by place in the code (internal/abi symtab.go, PCDATA).
const (
	recordName   = 4
	recordPlaces = 16 // three tables: depth of the stack, file, line
	recordCount  = 28 // how many other tables follow
	recordUnit   = 32 // whose files are meant
	recordLine   = 36 // where the function begins
	recordTables = 44

	unsafePoints   = 0 // read only where signals interrupt threads
	livenessOfArgs = 3 // read only to write a trace
)

// Names says whether stack traces of a module still name functions.
type Names bool

// What becomes of the names of functions. For all but traces the runtime tells
// functions by numbers.
const (
	KeepNames Names = true
	DropNames Names = false
)

// dropTraces empties what the runtime reads only to write a stack trace: files, lines,
// two more tables by place in the code and, if so said, names. What collecting garbage,
// growing stacks and recovering from a panic read stays. A module of another release of
// Go, which may lay its tables differently, keeps its traces.
func dropTraces(memory []byte, names Names) error {
	t, err := findTables(memory)
	if t == nil || err != nil {
		return err
	}
	clear(t.units)
	clear(t.files)
	if names == DropNames {
		clear(t.names)
	}
	kept := make([]byte, len(t.places))
	for k := range t.functions {
		record, err := t.record(k)
		if err != nil {
			return err
		}
		if names == DropNames {
			clear(record[recordName : recordName+4])
		}
		if err := t.thin(record, kept); err != nil {
			return err
		}
	}
	copy(t.places, kept)
	return nil
}

// record is the record of function k, from its beginning.
func (t *functionTables) record(k int) ([]byte, error) {
	if len(t.records) < 8*(t.functions+1) {
		return nil, errors.New("the table of functions is cut short")
	}
	entry, at := binary.LittleEndian.Uint32(t.records[8*k:]), int(binary.LittleEndian.Uint32(t.records[8*k+4:]))
	if at+recordTables > len(t.records) || binary.LittleEndian.Uint32(t.records[at:]) != entry {
		return nil, fmt.Errorf("expected the record of function %d where the table says", k)
	}
	record := t.records[at:]
	if n := binary.LittleEndian.Uint32(record[recordCount:]); n > 16 || len(record) < recordTables+4*int(n) {
		return nil, fmt.Errorf("expected a few tables for function %d, found %d", k, n)
	}
	return record, nil
}

// thin empties what of a record only traces read, and copies into kept the tables of
// places that it still names.
func (t *functionTables) thin(record, kept []byte) error {
	word := func(at int) []byte { return record[at : at+4] }
	clear(word(recordUnit))
	clear(word(recordLine))
	clear(word(recordPlaces + 4))
	clear(word(recordPlaces + 8))
	if err := t.keep(word(recordPlaces), kept); err != nil {
		return err
	}
	for k := range int(binary.LittleEndian.Uint32(word(recordCount))) {
		table := word(recordTables + 4*k)
		if k == unsafePoints || k == livenessOfArgs {
			clear(table)
		}
		if err := t.keep(table, kept); err != nil {
			return err
		}
	}
	return nil
}

// keep copies one table: pairs of numbers in LEB128, a difference of values and one
// of places, up to a difference of values that is 0 and not the first (runtime step).
func (t *functionTables) keep(offset, kept []byte) error {
	at := int(binary.LittleEndian.Uint32(offset))
	if at == 0 {
		return nil // there is none
	}
	if at >= len(t.places) {
		return fmt.Errorf("expected a table of places within the module, found one at %d", at)
	}
	r := reader{rest: t.places[at:]}
	for first := true; r.err == nil; first = false {
		if r.number() == 0 && !first {
			break
		}
		r.number()
	}
	end := len(t.places) - len(r.rest)
	copy(kept[at:end], t.places[at:end])
	return r.err
}
