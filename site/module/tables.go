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
}

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
