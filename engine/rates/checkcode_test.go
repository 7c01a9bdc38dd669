package rates

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// TestCheckCodeFromOutside works the code out in a second way: encoding/json of the
// standard library writes sorted names, no white space and the shortest numbers, which
// for plain ASCII names is the canonical form of RFC 8785.
func TestCheckCodeFromOutside(t *testing.T) {
	for _, sample := range [][]byte{Sample(), SampleUK()} {
		var v any
		if err := json.Unmarshal(sample, &v); err != nil {
			t.Fatal(err)
		}
		var canonical bytes.Buffer
		e := json.NewEncoder(&canonical)
		e.SetEscapeHTML(false)
		if err := e.Encode(v); err != nil {
			t.Fatal(err)
		}
		sum := sha256.Sum256(bytes.TrimSpace(canonical.Bytes()))
		digits := hex.EncodeToString(sum[:])
		if got, want := decode(t, sample).CheckCode(), digits[:5]+" "+digits[5:10]; got != want {
			t.Errorf("check code %s, want %s", got, want)
		}
	}
}

// TestCheckCodeSame: neither the order of members nor white space changes the code.
func TestCheckCodeSame(t *testing.T) {
	want := decode(t, Sample()).CheckCode()
	random := rand.New(rand.NewPCG(20260603, 1))
	for i := range 10 {
		var b strings.Builder
		shuffled(t, &b, random, tree(t, Sample()))
		if got := decode(t, []byte(b.String())).CheckCode(); got != want {
			t.Fatalf("shuffle %d: %s, want %s", i, got, want)
		}
	}
	var spread bytes.Buffer
	if err := json.Indent(&spread, Sample(), "\t", "    "); err != nil {
		t.Fatal(err)
	}
	if got := decode(t, spread.Bytes()).CheckCode(); got != want {
		t.Errorf("indented: %s, want %s", got, want)
	}
	if got := decode(t, append([]byte("\xef\xbb\xbf"), Sample()...)).CheckCode(); got != want {
		t.Errorf("with a byte order mark: %s, want %s", got, want)
	}
	if got := decode(t, changed(t, Sample(), "time.weeks_until_start", raw("1.0e1"))).CheckCode(); got != want {
		t.Errorf("10 as 1.0e1: %s, want %s", got, want)
	}
}

// shuffled writes a tree with the members in random order and random white space.
func shuffled(t *testing.T, b *strings.Builder, random *rand.Rand, v any) {
	blank := func() { b.WriteString([]string{"", " ", "\n\t", "\r\n"}[random.IntN(4)]) }
	object, ok := v.(map[string]any)
	list, isList := v.([]any)
	switch {
	case ok:
		var names []string
		for name := range object {
			names = append(names, name)
		}
		slices.Sort(names) // sorted first, so that the seed alone decides the order
		random.Shuffle(len(names), func(i, j int) { names[i], names[j] = names[j], names[i] })
		b.WriteString("{")
		for i, name := range names {
			if i > 0 {
				b.WriteString(",")
			}
			blank()
			b.WriteString(strconv.Quote(name) + ":")
			blank()
			shuffled(t, b, random, object[name])
		}
		b.WriteString("}")
	case isList:
		b.WriteString("[")
		for i, x := range list {
			if i > 0 {
				b.WriteString(",")
			}
			blank()
			shuffled(t, b, random, x)
		}
		b.WriteString("]")
	default:
		b.WriteString(write(t, v))
	}
}

// TestCheckCodeChanges changes every figure a little and adds a letter to every free
// text: each change gives another code.
func TestCheckCodeChanges(t *testing.T) {
	codes := map[string]string{decode(t, Sample()).CheckCode(): "the sample"}
	figures := 0
	visit(tree(t, Sample()), "", func(path string, v any) {
		moved, isFigure := moved(path, v)
		if moved == nil {
			return
		}
		if isFigure {
			figures++
		}
		code := decode(t, changed(t, Sample(), path, moved)).CheckCode()
		if before, there := codes[code]; there {
			t.Errorf("%s changed, but the code %s is that of %s", path, code, before)
		}
		codes[code] = path
	})
	if figures < 120 {
		t.Errorf("only %d figures moved", figures)
	}
}

// moved returns a value slightly off, still within all bounds.
func moved(path string, v any) (other any, figure bool) {
	switch v := v.(type) {
	case json.Number:
		x, err := v.Float64()
		if err != nil {
			panic(err)
		}
		if strings.HasSuffix(path, ".months") {
			return x + 1, true
		}
		if strings.HasSuffix(path, "[2]") || !strings.HasSuffix(path, "]") {
			return x + 0.0001, true
		}
		return x - 0.0001, true // low and likely go down, so that they stay in order
	case string:
		if x, err := strconv.ParseFloat(v, 64); err == nil {
			return strconv.FormatFloat(x+0.01, 'f', 2, 64), true
		}
		name := path[strings.LastIndex(path, ".")+1:]
		if slices.Contains([]string{"source", "note", "us", "uk", "includes", "name", "town", "text"}, name) || strings.HasPrefix(path, "terms[") {
			return v + "x", false
		}
	case bool:
		return !v, false
	}
	return nil, false
}
