package module

import (
	"bytes"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// program grows its stack with pointers on it, collects garbage meanwhile, recovers
// from a panic and ends in another.
const program = `package main

import (
	"os"
	"runtime"
	"strconv"
)

type node struct {
	next *node
	n    int
}

//go:noinline
func grow(n int, above *node) int {
	me := &node{above, n}
	if n == 0 {
		runtime.GC()
		sum := 0
		for at := me; at != nil; at = at.next {
			sum += at.n
		}
		return sum
	}
	return grow(n-1, me)
}

//go:noinline
func reach(s []int, k int) int { return s[k] }

func recovered() (said string) {
	defer func() { said = recover().(error).Error() }()
	return strconv.Itoa(reach([]int{1, 2}, 5))
}

func main() {
	os.Stdout.WriteString(strconv.Itoa(grow(5000, nil)) + "; " + recovered() + "\n")
	reach(nil, 3)
}
`

const programSays = "12502500; runtime error: index out of range [5] with length 2\n"

// TestAJoinedProgramIsTheSame: what the Go linker writes keeps every byte of its
// memory and of its other sections, in a small part of its segments, and does the same
// under Node, up to the functions, files and lines of the panic it ends in.
func TestAJoinedProgramIsTheSame(t *testing.T) {
	code := linked(t)
	joined, err := Join(code)
	if err != nil {
		t.Fatal(err)
	}
	const size = 16 << 20
	before, many := filledBy(t, code, size)
	after, few := filledBy(t, joined, size)
	if !bytes.Equal(before, after) {
		t.Error("memory is not the same")
	}
	if few == 0 || few*10 > many {
		t.Errorf("%d segments became %d", many, few)
	}
	if !bytes.Equal(withoutData(t, code), withoutData(t, joined)) {
		t.Error("another section is not the same")
	}
	for name, c := range map[string][]byte{"as linked": code, "joined": joined} {
		said, trace := run(t, c)
		if said != programSays {
			t.Errorf("%s: said %q", name, said)
		}
		for _, must := range []string{"index out of range [3] with length 0", "main.reach", "main.main", "main.go:29"} {
			if !strings.Contains(trace, must) {
				t.Errorf("%s: no %q in the trace:\n%s", name, must, trace)
			}
		}
	}
}

// withoutData is a module without its memory.
func withoutData(t *testing.T, code []byte) (rest []byte) {
	t.Helper()
	all, err := sections(code)
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range all {
		if s.id != dataSection {
			rest = append(append(rest, s.id), s.body...)
		}
	}
	return rest
}

func linked(t *testing.T) []byte {
	t.Helper()
	dir := t.TempDir()
	for name, text := range map[string]string{"main.go": program, "go.mod": "module program\n\ngo 1.26\n"} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	cmd := exec.Command("go", "build", "-trimpath", "-ldflags=-s -w", "-o", "out.wasm", ".")
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

// run runs a program that ends in a panic under Node, as the Go release does its own
// tests.
func run(t *testing.T, code []byte) (said, trace string) {
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
	if !errors.As(err, &ended) || ended.ExitCode() != 2 {
		t.Fatalf("ended with %v, expected the 2 of a panic:\n%s", err, bad.String())
	}
	return out.String(), bad.String()
}
