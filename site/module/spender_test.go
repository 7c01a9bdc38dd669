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

// spender does what wants the runtime's help: it grows stacks with pointers on them,
// collects garbage meanwhile and under a limit of memory, recovers from panics of all
// kinds, not where a call lies too deep for it, lets goroutines wait for each other, for
// locks and for timers, runs finalizers, and ends in a panic.
const spender = `package main

import (
	"errors"
	"os"
	"runtime"
	"strconv"
	"strings"
	"sync"
	"time"
)

type node struct {
	next *node
	n    int
}

type catcher struct{ said string }

func (c *catcher) catch() {
	switch r := recover().(type) {
	case error:
		c.said += r.Error() + "; "
	case string:
		c.said += r + "; "
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

//go:noinline
func share(a, b int) int { return a / b }

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

func failures(c *catcher, empty map[string]int, any interface{}, never chan int) {
	for range 3 {
		try(c, func() { reach([]int{1, 2}, 5) })
		try(c, func() { var at *node; at.n++ })
	}
	try(c, func() { empty["none"]++ })
	try(c, func() { _ = any.(error) })
	try(c, func() { _ = any.(string) })
	try(c, func() { share(1, len(empty)) })
	try(c, func() { close(never) })
	try(c, func() { _ = make([]int, reach([]int{-1}, 0)) })
	try(c, func() { panic(errors.New("its own")) })
	try(c, func() {
		defer func() { recover(); panic("again") }()
		panic("first")
	})
}

// together lets goroutines pass on numbers, wait for a lock that another holds and for
// a timer, and makes garbage many times the limit of memory.
func together() string {
	var all sync.WaitGroup
	var lock sync.Mutex
	numbers, done := make(chan int), make(chan bool)
	parts := map[[2]string][]byte{}
	for k := range 20 {
		all.Go(func() {
			grow(200*k, nil)
			lock.Lock()
			runtime.Gosched()
			parts[[2]string{strconv.Itoa(k), "x"}] = []byte(strings.Repeat("a", 1000*k))
			lock.Unlock()
			time.Sleep(time.Millisecond)
			numbers <- k
		})
	}
	go func() { all.Wait(); close(done) }()
	sum, garbage := 0, 0
	for waiting := true; waiting; {
		select {
		case k := <-numbers:
			sum += k
		case <-done:
			waiting = false
		default:
			garbage += len(make([]*node, 100_000))
			runtime.Gosched()
		}
	}
	for range 500 {
		garbage += len(make([]*node, 100_000))
	}
	bytes := 0
	for _, p := range parts {
		bytes += len(string([]rune(string(p))))
	}
	return strconv.Itoa(sum) + " " + strconv.Itoa(bytes) + " " + strconv.FormatBool(garbage > 50_000_000)
}

func finalized() string {
	gone := make(chan bool, 1)
	runtime.SetFinalizer(&node{n: 1}, func(*node) { gone <- true })
	for range 100 {
		runtime.GC()
		select {
		case <-gone:
			return "finalized"
		default:
			time.Sleep(time.Millisecond)
		}
	}
	return "never finalized"
}

func main() {
	c := &catcher{}
	failures(c, nil, 7, nil)
	os.Stdout.WriteString(strconv.Itoa(grow(5000, nil)) + "; " + c.said + twoDeep() + "\n" + together() + "\n" + finalized() + "\n")
	reach(nil, 3)
}
`

const (
	spenderSays = "12502500; " + twoTold + twoTold + twoTold +
		"assignment to entry in nil map; interface conversion: int is not error: missing method Error; " +
		"interface conversion: interface {} is int, not string; runtime error: integer divide by zero; " +
		"close of nil channel; runtime error: makeslice: len out of range; its own; again; outside\n" +
		"190 190000 true\nfinalized\n"
	twoTold = "runtime error: index out of range [5] with length 2; runtime error: invalid memory address or nil pointer dereference; "
)

func buildSpender(t *testing.T) []byte {
	t.Helper()
	dir := t.TempDir()
	for name, text := range map[string]string{"main.go": spender, "go.mod": "module spender\n\ngo 1.24\n"} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	cmd := exec.Command("go", "build", "-trimpath", "-ldflags=-s", "-o", "out.wasm", ".")
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
	cmd.Env = append(os.Environ(), "GOGC=50", "GOMEMLIMIT=40MiB") // as in a page
	err = cmd.Run()
	var ended *exec.ExitError
	if err != nil && !errors.As(err, &ended) {
		t.Fatal(err)
	}
	return out.String(), bad.String(), cmd.ProcessState.ExitCode()
}
