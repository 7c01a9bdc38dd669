package strict

import (
	"bytes"
	"runtime"
	"strconv"
	"strings"
	"testing"
	"time"
)

func nested(depth int) []byte {
	return []byte(strings.Repeat(`{"a":`, depth-1) + "[]" + strings.Repeat("}", depth-1))
}

func flat(items int) []byte {
	if items == 0 {
		return []byte("[]")
	}
	return []byte("[0" + strings.Repeat(",0", items-1) + "]")
}

func padded(size int) []byte { return append([]byte("{}"), bytes.Repeat([]byte(" "), size-2)...) }

// Each bound, at its value and one step beyond it.
func TestBoundsExactly(t *testing.T) {
	for _, row := range []struct {
		name     string
		in, past []byte
		want     string
	}{
		{"depth", nested(MaxDepth), nested(MaxDepth + 1), "the file: expected at most 32 brackets { or [ inside each other, found more (line 1)"},
		{"members", flat(MaxMembers), flat(MaxMembers + 1), "the file: expected at most 20000 entries in all, found more (line 1)"},
		{"bytes", padded(MaxBytes), padded(MaxBytes + 1), "the file: expected at most 4194304 bytes, found 4194305 bytes"},
	} {
		if _, err := Parse(row.in); err != nil {
			t.Errorf("%s at the bound: %v", row.name, err)
		}
		if _, err := Parse(row.past); err == nil || err.Error() != row.want {
			t.Errorf("%s past the bound: %v, want %s", row.name, err, row.want)
		}
	}
}

// Parse must reject bad input early: even for the worst input, memory stays within ten
// times the largest document and the time is not noticeable. The limit of two seconds is
// generous, to allow for slow machines.
func TestRefusedQuickly(t *testing.T) {
	var names strings.Builder
	for i := range 300_000 {
		names.WriteString(`,"` + strconv.Itoa(i) + `":0`)
	}
	for _, row := range []struct {
		name string
		text []byte
	}{
		{"50 MB", bytes.Repeat([]byte(`{"a":1},`), 50<<20/8)},
		{"a million items", flat(1_000_000)},
		{"300,000 names", []byte("{" + names.String()[1:] + "}")},
		{"a million brackets", bytes.Repeat([]byte("["), 1_000_000)},
		{"a million groups", bytes.Repeat([]byte(`{"a":`), 800_000)},
		{"4 MB of digits", bytes.Repeat([]byte("9"), MaxBytes)},
		{"4 MB of text never closed", append([]byte(`"`), bytes.Repeat([]byte("x"), MaxBytes-1)...)},
		{"4 MB name twice", []byte(`{"` + strings.Repeat("n", MaxBytes/2-20) + `":1,"` + strings.Repeat("n", MaxBytes/2-20) + `":2}`)},
	} {
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		start := time.Now()
		_, err := Parse(row.text)
		took := time.Since(start)
		runtime.ReadMemStats(&after)
		if err == nil {
			t.Errorf("%s: accepted", row.name)
			continue
		}
		if len(err.Error()) > 300 {
			t.Errorf("%s: error of %d bytes", row.name, len(err.Error()))
		}
		used := after.TotalAlloc - before.TotalAlloc
		if used > 10*MaxBytes || took > 2*time.Second {
			t.Errorf("%s: took %v and %d kB", row.name, took, used>>10)
		}
		t.Logf("%s: %v, %d kB: %v", row.name, took, used>>10, err)
	}
}

// Names with a special meaning elsewhere are ordinary names here.
func TestOrdinaryNames(t *testing.T) {
	f, err := Parse([]byte(`{"__proto__":{"constructor":1},"toString":2,"":3,"a.b":4}`))
	if err != nil {
		t.Fatal(err)
	}
	if got := f.Get("__proto__").Get("constructor").Path(); got != "__proto__.constructor" {
		t.Errorf("path %q", got)
	}
	if f.Has("hasOwnProperty") || f.Has("prototype") || !f.Has("toString") {
		t.Error("Has sees names that are not there, or misses one that is")
	}
	if got := f.Get("").Path() + f.Get("a.b").Path(); got != `[""]["a.b"]` {
		t.Errorf("paths %s", got)
	}
	f.Keys("toString", "a.b")
	want := `the file: expected one of "toString", "a.b", found the unknown name "__proto__" (line 1)`
	if err := f.Err(); err == nil || err.Error() != want {
		t.Errorf("%v, want %s", err, want)
	}
}

// A wide object is searched by index; every member must still be found.
func TestWideObject(t *testing.T) {
	w := NewWriter()
	w.Object(func() {
		for i := range 15_000 {
			w.Key("n" + strconv.Itoa(i))
			w.Whole(int64(i))
		}
	})
	f, err := Parse(w.Bytes())
	if err != nil {
		t.Fatal(err)
	}
	start := time.Now()
	for i, name := range f.Names() {
		if f.Get(name).Whole(0, 15_000) != i {
			t.Fatalf("%s: wrong member", name)
		}
	}
	if took := time.Since(start); took > 2*time.Second {
		t.Errorf("15,000 members took %v", took)
	}
	if f.Has("n15000") || f.Err() != nil {
		t.Errorf("a member that is not there; %v", f.Err())
	}
}
