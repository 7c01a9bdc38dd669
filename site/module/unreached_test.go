package module

import (
	"bytes"
	"encoding/binary"
	"strings"
	"testing"
)

// codeOf are the bodies of the functions of a module.
func codeOf(t *testing.T, code []byte) [][]byte {
	t.Helper()
	all, err := sections(code)
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range all {
		if s.id == codeSection {
			r := reader{rest: s.body}
			return bodies(&r)
		}
	}
	t.Fatal("no code in the module")
	return nil
}

// TestOnlyTheListedAreCut: every function is as it was or a trap, and a trap only
// where the list says so; by the names that Go's own library reads.
func TestOnlyTheListedAreCut(t *testing.T) {
	code := buildSpender(t)
	before, functions := codeOf(t, code), symbols(t, code).Funcs
	for _, names := range []Names{KeepNames, DropNames} {
		after := codeOf(t, shrunk(t, code, names))
		if len(before) != len(after) || len(before) != len(functions) {
			t.Fatalf("%d functions became %d, named are %d", len(before), len(after), len(functions))
		}
		cut := 0
		for k, f := range functions {
			_, listed := owner(cutNames(names), f.Name)
			if want := before[k]; listed {
				cut++
				if !bytes.Equal(after[k], trap) {
					t.Errorf("%s is listed and was not cut", f.Name)
				}
			} else if !bytes.Equal(after[k], want) {
				t.Errorf("%s is not listed and was changed", f.Name)
			}
		}
		if cut < 100 {
			t.Errorf("names kept %v: only %d functions were cut", names, cut)
		}
	}
}

// TestTheListIsOfThisRelease: each name in it is one of a function, a closure's or a
// method's owner in this release of Go.
func TestTheListIsOfThisRelease(t *testing.T) {
	cut := cutNames(DropNames)
	for _, f := range symbols(t, buildSpender(t)).Funcs {
		if of, ok := owner(cut, f.Name); ok {
			cut[of] = true
		}
	}
	for name, found := range cut {
		if !found {
			t.Errorf("%s is listed and not in the program", name)
		}
	}
}

// TestOwners: a function belongs to the longest name that ends where a part of its own
// name does.
func TestOwners(t *testing.T) {
	cut := map[string]bool{"runtime.trace": false, "runtime.(*buf)": false, "runtime.(*buf).put": false}
	for name, want := range map[string]string{
		"runtime.trace": "runtime.trace", "runtime.trace.func1.2": "runtime.trace", "runtime.traces": "",
		"runtime.(*buf).get": "runtime.(*buf)", "runtime.(*buf).put": "runtime.(*buf).put", "runtime.(*buf).put.func1": "runtime.(*buf).put",
		"other.trace": "", "": "", "runtime": "",
	} {
		if of, ok := owner(cut, name); of != want || ok != (want != "") {
			t.Errorf("%q belongs to %q (%v), expected %q", name, of, ok, want)
		}
	}
}

// TestCodeWithoutATable: a code section with more or fewer functions than the table
// has is refused, and so is one cut short.
func TestCodeWithoutATable(t *testing.T) {
	section := []byte{2, 2, 0, 0x0b, 3, 0, 1, 0x0b}
	if out, err := withTraps(section, []bool{false, true}); err != nil || !bytes.Equal(out, []byte{2, 2, 0, 0x0b, 3, 0, 0, 0x0b}) {
		t.Errorf("became % x, %v", out, err)
	}
	for says, c := range map[string]struct {
		section []byte
		isCut   []bool
	}{
		"for 1 functions": {section, []bool{true}},
		"for 3 functions": {section, make([]bool, 3)},
		"cut short":       {section[:7], make([]bool, 2)},
	} {
		if _, err := withTraps(c.section, c.isCut); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("expected %q, got %v", says, err)
		}
	}
}

// TestTheLookupLeadsToEveryFunction: from where it begins, each function is found
// within a few steps and is not behind (runtime symtab.go, findfunc).
func TestTheLookupLeadsToEveryFunction(t *testing.T) {
	memory := memoryIn(t, shrunk(t, buildSpender(t), DropNames))
	found, err := findTables(memory)
	if err == nil {
		err = found.findData(memory)
	}
	if err != nil {
		t.Fatal(err)
	}
	each := 1 << 16 / 4096 // places for the code of one function
	if places := len(found.lookup) / placeSize; places < each*(found.functions-1) || places > each*(found.functions+1) {
		t.Fatalf("%d places for %d functions", places, found.functions)
	}
	for k := range found.functions - 1 {
		for place := k * each; place < (k+1)*each; place++ {
			from := int(binary.LittleEndian.Uint32(found.lookup[placeSize*place:]))
			if from > k || from <= k-fromOne || !bytes.Equal(found.lookup[placeSize*place+4:placeSize*(place+1)], make([]byte, 16)) {
				t.Fatalf("place %d leads to function %d, expected up to %d before %d", place, from, fromOne-1, k)
			}
		}
	}
}
