package module

import (
	"bytes"
	"encoding/binary"
	"slices"
	"strings"
	"testing"
)

// moduleWith is a module of a type section that nobody looks into and these data.
func moduleWith(segments ...segment) []byte {
	body := writeSegments(segments)
	out := append([]byte(Start), 1, 1, 0, dataSection)
	return append(binary.AppendUvarint(out, uint64(len(body))), body...)
}

// filledBy is what the data of a module fill memory with, up to a size.
func filledBy(t *testing.T, code []byte, size int) (memory []byte, segments int) {
	t.Helper()
	all, err := sections(code)
	if err != nil {
		t.Fatal(err)
	}
	memory = bytes.Repeat([]byte{0}, size)
	for _, s := range all {
		if s.id != dataSection {
			continue
		}
		data, err := readSegments(s.body)
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range data {
			copy(memory[d.at:], d.data)
		}
		segments += len(data)
	}
	return memory, segments
}

// TestJoiningKeepsMemory: the same bytes at the same addresses, in fewer segments;
// near ones joined, far ones left, out of order or not.
func TestJoiningKeepsMemory(t *testing.T) {
	far := 10_000
	for _, c := range []struct {
		name string
		in   []segment
		want int
	}{
		{"none", nil, 0},
		{"near", []segment{{4, []byte("one")}, {7, []byte("two")}, {10 + widestGap, []byte("three")}}, 1},
		{"just too far", []segment{{4, []byte("one")}, {8 + widestGap, []byte("two")}}, 2},
		{"out of order", []segment{{far, []byte("far")}, {4, []byte("one")}, {20, []byte("two")}}, 2},
		{"an empty one", []segment{{4, nil}, {5, []byte("one")}}, 1},
	} {
		code := moduleWith(c.in...)
		out, err := Join(code)
		if err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		before, _ := filledBy(t, code, 2*far)
		after, n := filledBy(t, out, 2*far)
		if !bytes.Equal(before, after) || n != c.want {
			t.Errorf("%s: %d segments, expected %d; same memory: %v", c.name, n, c.want, bytes.Equal(before, after))
		}
		if !bytes.HasPrefix(out, append([]byte(Start), 1, 1, 0)) {
			t.Errorf("%s: another section was changed", c.name)
		}
	}
}

// TestAddressesOfAllSizes come back from their signed form, those above 2 GB too.
func TestAddressesOfAllSizes(t *testing.T) {
	for _, at := range []int{0, 63, 64, 127, 128, 8191, 8192, 1 << 27, 1<<31 - 1, 1 << 31, 1<<32 - 1} {
		got, err := readSegments(writeSegments([]segment{{at, []byte("x")}}))
		if err != nil || got[0].at != at {
			t.Errorf("%d came back as %v (%v)", at, got, err)
		}
	}
}

// TestWhatIsNotUnderstoodIsAnError: a module is never passed on half read.
func TestWhatIsNotUnderstoodIsAnError(t *testing.T) {
	good := moduleWith(segment{4, []byte("one")})
	passive := slices.Clone(good)
	passive[bytes.LastIndex(good, []byte{0, 0x41})] = 1
	for name, c := range map[string]struct {
		code []byte
		says string
	}{
		"no module":   {[]byte("<!doctype html>"), "expected a WebAssembly module"},
		"cut short":   {good[:len(good)-1], "cut short"},
		"passive":     {passive, "byte 0x0"},
		"counted":     {append(slices.Clone(good), countSection, 1, 1), "count of segments"},
		"overlapping": {moduleWith(segment{4, []byte("one")}, segment{6, []byte("two")}), "apart"},
	} {
		if _, err := Join(c.code); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: expected %q, got %v", name, c.says, err)
		}
	}
	for n := range good {
		if _, err := Join(good[:n]); err == nil && n > len(Start)+3 {
			t.Errorf("the first %d bytes pass for a module", n)
		}
	}
}
