package module

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
)

// functionTables are the parts of the runtime's tables of functions, which the linker
// lays into memory (runtime symtab.go, pcHeader). The slices are of that memory.
type functionTables struct {
	at           int // address
	functions    int
	names        []byte
	units, files []byte
	places       []byte // tables by place in the code, one after another
	records      []byte // where each function begins and its record, the records, all that follows
	data         []byte // of functions, one after another: stack maps and the like; see findData
	lookup       []byte // from addresses of code to functions; see findData
}

// release begins the version that a program carries (runtime.Version), as long as it is
// of the release of Go that was read for what is known here.
const release = "go1.26."

// tablesMark begins the tables as Go 1.20 to 1.26 lay them for 64 bits. Another
// layout has another mark.
var tablesMark = []byte{0xf1, 0xff, 0xff, 0xff, 0, 0, 1, 8}

// findTables finds the tables, or nil where there is no such mark.
func findTables(memory []byte) (*functionTables, error) {
	at := bytes.Index(memory, tablesMark)
	if at < 0 {
		return nil, nil
	}
	all := memory[at:]
	var word [8]int // functions, files, nothing, then offsets of the parts
	if len(all) < len(tablesMark)+8*len(word) || bytes.Contains(all[1:], tablesMark) {
		return nil, errors.New("expected one whole table of functions in the module")
	}
	for k := range word {
		v := binary.LittleEndian.Uint64(all[8+8*k:])
		if v > uint64(len(all)) || k > 3 && int(v) < word[k-1] {
			return nil, fmt.Errorf("expected the parts of the table of functions one after another, found %d for part %d", v, k)
		}
		word[k] = int(v)
	}
	part := func(k int) []byte { return all[word[k]:word[k+1]] }
	return &functionTables{
		at: at, functions: word[0],
		names: part(3), units: part(4), files: part(5), places: part(6), records: all[word[7]:],
	}, nil
}

// Words of the description that the linker writes of a program (runtime symtab.go,
// moduledata, as in Go 1.26).
const (
	describesLookup = 19
	describesData   = 40
	describesEnd    = 41
	described       = 42
)

// findData finds data and lookup by the description of the program, which begins with
// the addresses of the tables and of the names in them.
func (t *functionTables) findData(memory []byte) error {
	names := t.at + int(binary.LittleEndian.Uint64(memory[t.at+8+8*3:]))
	mark := binary.LittleEndian.AppendUint64(binary.LittleEndian.AppendUint64(nil, uint64(t.at)), uint64(names))
	at := bytes.Index(memory, mark)
	if at < 0 || at+8*described > len(memory) || bytes.Contains(memory[at+1:], mark) {
		return errors.New("expected one description of the program in the module")
	}
	word := func(k int) int { return int(binary.LittleEndian.Uint64(memory[at+8*k:])) }
	data, lookup, end := word(describesData), word(describesLookup), word(describesEnd)
	if data < t.at || lookup < data || end < lookup || end > len(memory) {
		return fmt.Errorf("expected data of functions and what finds them one after the other, found them at %d and %d up to %d", data, lookup, end)
	}
	t.data, t.lookup = memory[data:lookup], memory[lookup:end]
	return nil
}
