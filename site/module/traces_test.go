package module

import (
	"bytes"
	"debug/gosym"
	"encoding/binary"
	"strings"
	"testing"
)

// shrunk is a module made smaller.
func shrunk(t *testing.T, code []byte, names Names) []byte {
	t.Helper()
	small, err := Shrink(code, names)
	if err != nil {
		t.Fatal(err)
	}
	return small
}

// TestAShrunkProgramRunsTheSame: stacks grow, garbage goes and panics are recovered
// from as before. The trace of the last panic has lost its lines; without names what
// the panic said is all that is told of it, and a trap ends the program in its place.
func TestAShrunkProgramRunsTheSame(t *testing.T) {
	code := buildSpender(t)
	for name, c := range map[string]struct {
		code         []byte
		lines, names bool
		exit         int
		end          string
	}{
		"as linked":     {code, true, true, 2, "goroutine 1 [running]"},
		"without lines": {shrunk(t, code, KeepNames), false, true, 2, "goroutine 1 [running]"},
		"without names": {shrunk(t, code, DropNames), false, false, 1, "RuntimeError: unreachable"},
	} {
		said, trace, exit := run(t, c.code)
		if said != spenderSays || exit != c.exit {
			t.Errorf("%s: said %q, ended with %d", name, said, exit)
		}
		if !strings.Contains(trace, "index out of range [3] with length 0") || !strings.Contains(trace, c.end) {
			t.Errorf("%s: no panic told in %q", name, trace)
		}
		if names := strings.Contains(trace, "main.reach") && strings.Contains(trace, "main.main"); names != c.names {
			t.Errorf("%s: names in the trace: %v, expected %v", name, names, c.names)
		}
		if lines := strings.Contains(trace, "main.go:"); lines != c.lines {
			t.Errorf("%s: lines in the trace: %v, expected %v", name, lines, c.lines)
		}
	}
}

// TestOnlyLinesAreGone is held to the reader of these tables in Go's own library.
func TestOnlyLinesAreGone(t *testing.T) {
	code := buildSpender(t)
	before, after, bare := symbols(t, code), symbols(t, shrunk(t, code, KeepNames)), symbols(t, shrunk(t, code, DropNames))
	if len(before.Funcs) < 500 || len(before.Funcs) != len(after.Funcs) || len(before.Funcs) != len(bare.Funcs) {
		t.Fatalf("%d functions became %d, or without names %d", len(before.Funcs), len(after.Funcs), len(bare.Funcs))
	}
	had := 0
	for k, f := range before.Funcs {
		if g := after.Funcs[k]; g.Name != f.Name || g.Entry != f.Entry || g.End != f.End {
			t.Errorf("%s at %d to %d became %s at %d to %d", f.Name, f.Entry, f.End, g.Name, g.Entry, g.End)
		}
		if g := bare.Funcs[k]; g.Name != "" || g.Entry != f.Entry || g.End != f.End {
			t.Errorf("%s at %d to %d became %s at %d to %d, without names", f.Name, f.Entry, f.End, g.Name, g.Entry, g.End)
		}
		if _, line, _ := before.PCToLine(f.Entry); line > 0 {
			had++
		}
		for _, small := range []*gosym.Table{after, bare} {
			if file, line, _ := small.PCToLine(f.Entry); line > 0 || file != "" {
				t.Errorf("%s still has %s:%d", f.Name, file, line)
			}
		}
	}
	if had < len(before.Funcs)*9/10 {
		t.Errorf("only %d of %d functions had a line before: nothing was compared", had, len(before.Funcs))
	}
}

// TestInlineTreesKeepWhatRecoverReads: which call was inlined where, and nothing else.
func TestInlineTreesKeepWhatRecoverReads(t *testing.T) {
	code := buildSpender(t)
	before, after := inlineTrees(t, code), inlineTrees(t, shrunk(t, code, DropNames))
	compared, named := 0, 0
	for k, calls := range after {
		for at := 0; at < len(calls); at += inlinedSize {
			was, is := before[k][at:at+inlinedSize], calls[at:at+inlinedSize]
			if !bytes.Equal(was[:inlinedName], is[:inlinedName]) || !bytes.Equal(was[inlinedName+4:inlinedLine], is[inlinedName+4:inlinedLine]) {
				t.Fatalf("function %d: inlined call % x became % x", k, was, is)
			}
			if !bytes.Equal(is[inlinedName:inlinedName+4], make([]byte, 4)) || !bytes.Equal(is[inlinedLine:], make([]byte, 4)) {
				t.Fatalf("function %d: inlined call % x still has a name or a line", k, is)
			}
			compared++
			if !bytes.Equal(was, is) {
				named++
			}
		}
	}
	if compared < 1000 || named < 1000 {
		t.Errorf("only %d inlined calls were compared, of which %d had a name or a line", compared, named)
	}
}

// inlineTrees are the inlined calls of the functions that have some.
func inlineTrees(t *testing.T, code []byte) map[int][]byte {
	t.Helper()
	memory := memoryIn(t, code)
	all, err := findTables(memory)
	if err == nil {
		err = all.findData(memory)
	}
	if err != nil {
		t.Fatal(err)
	}
	trees := map[int][]byte{}
	for k := range all.functions {
		record, err := all.record(k)
		if err != nil {
			t.Fatal(err)
		}
		data := dataAt(record)
		if record[recordData] <= inlineTree || data <= recordTables+4*inlinedCalls {
			continue
		}
		at := binary.LittleEndian.Uint32(record[data+4*inlineTree:])
		largest, err := all.keep(record[recordTables+4*inlinedCalls:][:4], make([]byte, len(all.places)))
		if err != nil {
			t.Fatal(err)
		}
		if at != noData {
			trees[k] = all.data[at:][:inlinedSize*(largest+1)]
		}
	}
	return trees
}

func memoryIn(t *testing.T, code []byte) []byte {
	t.Helper()
	all, err := sections(code)
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range all {
		if s.id == dataSection {
			memory, err := memoryOf(s.body)
			if err != nil {
				t.Fatal(err)
			}
			return memory
		}
	}
	t.Fatal("no data in the module")
	return nil
}

func symbols(t *testing.T, code []byte) *gosym.Table {
	t.Helper()
	memory := memoryIn(t, code)
	found, err := findTables(memory)
	if found == nil || err != nil {
		t.Fatalf("no table of functions: %v", err)
	}
	// Code of a module begins at address 2^28, 65,536 to a function (cmd/internal/obj/wasm).
	all, err := gosym.NewTable(nil, gosym.NewLineTable(memory[found.at:], 1<<28))
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// outside gives a record data far from all there are.
func outside(record []byte) {
	record[recordData] = max(record[recordData], 1)
	binary.LittleEndian.PutUint32(record[dataAt(record):], noData-1)
}

// TestWhatTheTablesDoNotSayIsAnError: tables that contradict themselves are not
// guessed at; those of a release with another mark stay as they are.
func TestWhatTheTablesDoNotSayIsAnError(t *testing.T) {
	memory := memoryIn(t, buildSpender(t))
	good, err := findTables(memory)
	if good == nil || err != nil {
		t.Fatalf("no table of functions: %v", err)
	}
	first := int(binary.LittleEndian.Uint32(good.records[4:]))
	description := bytes.Index(memory, binary.LittleEndian.AppendUint64(nil, uint64(good.at)))
	for _, c := range []struct {
		name, says string
		harm       func(*functionTables, []byte)
	}{
		{"a record elsewhere", "record of function 0", func(b *functionTables, _ []byte) { b.records[4]++ }},
		{"many tables", "a few tables for function 0", func(b *functionTables, _ []byte) { b.records[first+recordCount] = 200 }},
		{"a table outside", "table of places", func(b *functionTables, _ []byte) { b.records[first+recordPlaces+3] = 0x7f }},
		{"data outside", "function 0: expected its data", func(b *functionTables, _ []byte) { outside(b.records[first:]) }},
		{"a name outside", "expected a name", func(b *functionTables, _ []byte) { b.records[first+recordName+3] = 0x7f }},
		{"no description", "one description", func(_ *functionTables, all []byte) { all[description]++ }},
		{"data behind the lookup", "one after the other", func(_ *functionTables, all []byte) { all[description+8*describesData+3]++ }},
		{"functions without end", "cut short", func(b *functionTables, _ []byte) { b.functions = len(b.records) / 4 }},
	} {
		bad := bytes.Clone(memory)
		broken, err := findTables(bad)
		if err != nil {
			t.Fatal(err)
		}
		c.harm(broken, bad)
		binary.LittleEndian.PutUint64(bad[broken.at+8:], uint64(broken.functions))
		if _, err := broken.shrink(bad, DropNames); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: expected %q, got %v", c.name, c.says, err)
		}
	}
	mark := bytes.Clone(memory)
	mark[good.at] = 0xf0
	for name, other := range map[string][]byte{"mark": mark, "release": bytes.ReplaceAll(memory, []byte(release), []byte("go1.27."))} {
		section := writeSegments(segmentsOf(other))
		if same, isCut, err := shrinkData(section, DropNames); err != nil || isCut != nil || !bytes.Equal(same, section) {
			t.Errorf("tables with another %s: %v, unchanged: %v", name, err, bytes.Equal(same, section))
		}
	}
}
