package module

import (
	"bytes"
	"debug/gosym"
	"encoding/binary"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// spender grows its stack with pointers on it, collects garbage meanwhile, recovers
// from panics, not where a call lies too deep for it, and ends in one.
const spender = `package main

import (
	"os"
	"runtime"
	"strconv"
)

type node struct {
	next *node
	n    int
}

type catcher struct{ said string }

func (c *catcher) catch() {
	if r := recover(); r != nil {
		c.said += r.(error).Error() + "; "
	}
}

type catching interface{ catch() }

//go:noinline
func grow(n int, above *node) int {
	var room [200]byte
	room[n%200] = byte(n)
	me := &node{above, n}
	if n == 0 {
		runtime.GC()
		sum := 0
		for at := me; at != nil; at = at.next {
			sum += at.n
		}
		return sum
	}
	return grow(n-1, me) + int(room[n%200]) - n%256
}

//go:noinline
func reach(s []int, k int) int { return s[k] }

func twoDeep() (said string) {
	defer func() {
		if r := recover(); r != nil {
			said = "outside"
		}
	}()
	func() {
		defer func() { func() { recover() }() }()
		reach(nil, 7)
	}()
	return "inside"
}

func try(c catching, do func()) {
	defer c.catch()
	do()
}

func main() {
	c := &catcher{}
	for range 3 {
		try(c, func() { reach([]int{1, 2}, 5) })
		try(c, func() { var at *node; at.n++ })
	}
	os.Stdout.WriteString(strconv.Itoa(grow(5000, nil)) + "; " + c.said + twoDeep() + "\n")
	reach(nil, 3)
}
`

const (
	spenderSays = "12502500; " + threeTimes + threeTimes + threeTimes + "outside\n"
	threeTimes  = "runtime error: index out of range [5] with length 2; runtime error: invalid memory address or nil pointer dereference; "
)

func buildSpender(t *testing.T) []byte {
	t.Helper()
	dir := t.TempDir()
	for name, text := range map[string]string{"main.go": spender, "go.mod": "module spender\n\ngo 1.24\n"} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	cmd := exec.Command("go", "build", "-trimpath", "-o", "out.wasm", ".")
	cmd.Dir, cmd.Env = dir, append(os.Environ(), "GOOS=js", "GOARCH=wasm", "GOWORK=off")
	if text, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	code, err := os.ReadFile(filepath.Join(dir, "out.wasm"))
	if err != nil {
		t.Fatal(err)
	}
	return code
}

// run runs a program under Node as the Go release does its own tests.
func run(t *testing.T, code []byte) (said, trace string, exit int) {
	t.Helper()
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), "out.wasm")
	if err := os.WriteFile(file, code, 0o644); err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command("node", "--stack-size=8192", filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm", "wasm_exec_node.js"), file)
	var out, bad bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &bad
	err = cmd.Run()
	var ended *exec.ExitError
	if err != nil && !errors.As(err, &ended) {
		t.Fatal(err)
	}
	return out.String(), bad.String(), cmd.ProcessState.ExitCode()
}

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
// from as before; the trace of the last panic has lost its lines, or its names too,
// and nothing else.
func TestAShrunkProgramRunsTheSame(t *testing.T) {
	code := buildSpender(t)
	for name, c := range map[string]struct {
		code         []byte
		lines, names bool
	}{
		"as linked":     {code, true, true},
		"without lines": {shrunk(t, code, KeepNames), false, true},
		"without names": {shrunk(t, code, DropNames), false, false},
	} {
		said, trace, exit := run(t, c.code)
		if said != spenderSays || exit != 2 {
			t.Errorf("%s: said %q, ended with %d", name, said, exit)
		}
		if !strings.Contains(trace, "index out of range [3] with length 0") || !strings.Contains(trace, "goroutine 1 [running]") {
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

// TestWhatTheTablesDoNotSayIsAnError: tables that contradict themselves are not
// guessed at; those of a release with another mark stay as they are.
func TestWhatTheTablesDoNotSayIsAnError(t *testing.T) {
	memory := memoryIn(t, buildSpender(t))
	good, err := findTables(memory)
	if good == nil || err != nil {
		t.Fatalf("no table of functions: %v", err)
	}
	first := int(binary.LittleEndian.Uint32(good.records[4:]))
	for _, c := range []struct {
		name, says string
		harm       func(*functionTables)
	}{
		{"a record elsewhere", "record of function 0", func(b *functionTables) { b.records[4]++ }},
		{"many tables", "a few tables for function 0", func(b *functionTables) { b.records[first+recordCount] = 200 }},
		{"a table outside", "table of places", func(b *functionTables) { b.records[first+recordPlaces+3] = 0x7f }},
		{"functions without end", "cut short", func(b *functionTables) { b.functions = len(b.records) / 4 }},
	} {
		bad := bytes.Clone(memory)
		broken, err := findTables(bad)
		if err != nil {
			t.Fatal(err)
		}
		c.harm(broken)
		binary.LittleEndian.PutUint64(bad[broken.at+8:], uint64(broken.functions))
		if err := dropTraces(bad, DropNames); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: expected %q, got %v", c.name, c.says, err)
		}
	}
	other := bytes.Clone(memory)
	other[good.at] = 0xf0
	same := bytes.Clone(other)
	if err := dropTraces(other, DropNames); err != nil || !bytes.Equal(other, same) {
		t.Errorf("tables with another mark: %v, unchanged: %v", err, bytes.Equal(other, same))
	}
}
