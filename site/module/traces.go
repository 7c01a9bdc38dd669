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
	recordData   = 43 // how many offsets of data follow these, in one byte
	recordTables = 44

	unsafePoints   = 0 // read only where signals interrupt threads
	inlinedCalls   = 2
	livenessOfArgs = 3 // read only to write a trace
)

// Names says whether stack traces of a module still name functions, or none is written.
type Names bool

// What becomes of the names of functions. For all but traces the runtime tells
// functions by numbers.
const (
	KeepNames Names = true
	DropNames Names = false
)

// dropTraces empties what the runtime reads only to write a stack trace: files, lines,
// two more tables by place in the code, some data of functions (see
// [functionTables.keepData]) and, if so said, names. What collecting garbage, growing
// stacks and recovering from a panic read stays.
func (t *functionTables) dropTraces(names Names) error {
	clear(t.units)
	clear(t.files)
	if names == DropNames {
		clear(t.names)
	}
	kept := keeping{make([]byte, len(t.places)), make([]byte, len(t.data))}
	for k := range t.functions {
		record, err := t.record(k)
		if err != nil {
			return err
		}
		if names == DropNames {
			clear(record[recordName : recordName+4])
		}
		if err := t.thin(record, kept, names); err != nil {
			return fmt.Errorf("function %d: %w", k, err)
		}
	}
	copy(t.places, kept.places)
	copy(t.data, kept.data)
	return nil
}

// keeping are the parts of the tables that some function still names.
type keeping struct{ places, data []byte }

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

// dataAt is where the offsets of data begin in a record, behind those of its tables.
func dataAt(record []byte) int {
	return recordTables + 4*int(binary.LittleEndian.Uint32(record[recordCount:]))
}

// thin empties what of a record only traces read, and copies into kept the tables of
// places and the data that it still names.
func (t *functionTables) thin(record []byte, kept keeping, names Names) error {
	word := func(at int) []byte { return record[at : at+4] }
	clear(word(recordUnit))
	clear(word(recordLine))
	clear(word(recordPlaces + 4))
	clear(word(recordPlaces + 8))
	if _, err := t.keep(word(recordPlaces), kept.places); err != nil {
		return err
	}
	inlined := 0
	data := dataAt(record)
	for k := range (data - recordTables) / 4 {
		table := word(recordTables + 4*k)
		if k == unsafePoints || k == livenessOfArgs {
			clear(table)
		}
		largest, err := t.keep(table, kept.places)
		if err != nil {
			return err
		}
		if k == inlinedCalls {
			inlined = largest + 1
		}
	}
	for k := range int(record[recordData]) {
		if err := t.keepData(k, word(data+4*k), kept.data, inlined, names); err != nil {
			return err
		}
	}
	return nil
}

// keep copies one table: pairs of numbers in LEB128, a difference of values and one
// of places, up to a difference of values that is 0 and not the first (runtime step).
// Values begin at -1; the largest of them is given.
func (t *functionTables) keep(offset, kept []byte) (largest int, err error) {
	largest = -1
	at := int(binary.LittleEndian.Uint32(offset))
	if at == 0 {
		return largest, nil // there is none
	}
	if at >= len(t.places) {
		return 0, fmt.Errorf("expected a table of places within the module, found one at %d", at)
	}
	r := reader{rest: t.places[at:]}
	value := -1
	for first := true; r.err == nil; first = false {
		step := r.number()
		if step == 0 && !first {
			break
		}
		value += step>>1 ^ -(step & 1) // the sign is the last bit
		largest = max(largest, value)
		r.number()
	}
	end := len(t.places) - len(r.rest)
	copy(kept[at:end], t.places[at:end])
	return largest, r.err
}
