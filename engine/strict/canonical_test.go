package strict

import (
	"bytes"
	"math/rand"
	"strconv"
	"strings"
	"testing"

	"github.com/go-json-experiment/json/jsontext"
	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"
)

func canonical(t *testing.T, text string) string {
	t.Helper()
	return string(Canonical(parse(t, text)))
}

func TestCanonicalPublished(t *testing.T) {
	for _, row := range []struct{ name, text, want string }{
		{"RFC 8785, 3.2.2", `{
  "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
  "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
  "literals": [null, true, false]
}`, `{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\u000f\nA'B\"\\\\\"/"}`},
		{"RFC 8785, 3.2.3", `{
  "\u20ac": "Euro Sign", "\r": "Carriage Return", "\ufb33": "Hebrew Letter Dalet With Dagesh", "1": "One",
  "\ud83d\ude00": "Emoji: Grinning Face", "\u0080": "Control", "\u00f6": "Latin Small Letter O With Diaeresis"
}`, `{"\r":"Carriage Return","1":"One","` + "\u0080" + `":"Control","ö":"Latin Small Letter O With Diaeresis",` +
			`"€":"Euro Sign","😀":"Emoji: Grinning Face","` + "\ufb33" + `":"Hebrew Letter Dalet With Dagesh"}`},
	} {
		if got := canonical(t, row.text); got != row.want {
			t.Errorf("%s:\n got %s\nwant %s", row.name, got, row.want)
		}
	}
}

// The refinement of RFC 8785: decimals are read exactly, so they keep digits that a
// float64 does not hold.
func TestCanonicalNumbers(t *testing.T) {
	for _, group := range [][]string{
		{"0", "-0", "0.0", "-0.000", "0e5", "-0E-7", "1e-999"},
		{"12.5", "12.50", "1.25e1", "12.500000", "0.125E+2"},
		{"100", "1e2", "100.00", "1.00E2"},
		{"0.000001", "1e-6"},
		{"123456789012.123456"},
		{"123456789012.123457"}, // the same float64 as the previous one
		{"1e+300", "1E300", "1.0e300"},
	} {
		for _, text := range group {
			if got := canonical(t, text); got != group[0] {
				t.Errorf("%s: %s, want %s", text, got, group[0])
			}
		}
	}
}

// A tree can be written in random spellings: member order, white space, escapes and
// number forms vary, but the meaning does not.
type tree struct {
	kind  int // 0 object, 1 array, 2 string, 3 number, 4 word
	text  string
	names []string
	kids  []tree
}

var spellings = [][]string{
	{"0", "-0", "0.0"}, {"1.5", "15e-1", "1.50"}, {"100", "1e2", "1.0E+2"}, {"-0.25", "-25e-2"}, {"1e-7", "0.0000001"}, {"1e+21", "1000000000000000000000"},
}

var names = []string{"a", "b", "__proto__", "", "é", "€", "\U0001F600", "\ufb33", "z\n", `q"`, "rate", "hours"}

func randomTree(r *rand.Rand, depth int) tree {
	kind := r.Intn(5)
	if depth == 0 {
		kind = 2 + r.Intn(3)
	}
	n := tree{kind: kind}
	switch kind {
	case 0:
		for _, i := range r.Perm(len(names))[:r.Intn(6)] {
			n.names = append(n.names, names[i])
			n.kids = append(n.kids, randomTree(r, depth-1))
		}
	case 1:
		for range r.Intn(4) {
			n.kids = append(n.kids, randomTree(r, depth-1))
		}
	case 2:
		n.text = names[r.Intn(len(names))]
	case 3:
		n.text = strconv.Itoa(r.Intn(len(spellings)))
	case 4:
		n.text = []string{"true", "false", "null"}[r.Intn(3)]
	}
	return n
}

// spell writes a tree in one of its many forms.
func spell(r *rand.Rand, n tree) string {
	blank := func() string { return []string{"", " ", "\n", "\t\r\n"}[r.Intn(4)] }
	var parts []string
	switch n.kind {
	case 0:
		for _, i := range r.Perm(len(n.kids)) {
			parts = append(parts, blank()+quoted(r, n.names[i])+blank()+":"+blank()+spell(r, n.kids[i])+blank())
		}
		return "{" + strings.Join(parts, ",") + blank() + "}"
	case 1:
		for _, k := range n.kids {
			parts = append(parts, blank()+spell(r, k)+blank())
		}
		return "[" + strings.Join(parts, ",") + blank() + "]"
	case 2:
		return quoted(r, n.text)
	case 3:
		i, _ := strconv.Atoi(n.text)
		return spellings[i][r.Intn(len(spellings[i]))]
	}
	return n.text
}

// quoted escapes all characters that need it and some that do not.
func quoted(r *rand.Rand, s string) string {
	var b strings.Builder
	b.WriteByte('"')
	for _, c := range s {
		if c <= 0xffff && (c < ' ' || c == '"' || c == '\\' || r.Intn(3) == 0) {
			b.WriteString(`\u` + strconv.FormatInt(0x10000+int64(c), 16)[1:])
		} else {
			b.WriteRune(c)
		}
	}
	b.WriteByte('"')
	return b.String()
}

func TestCanonicalProperties(t *testing.T) {
	p := gopter.DefaultTestParameters()
	p.SetSeed(20260201)
	p.MinSuccessfulTests = 2000
	ps := gopter.NewProperties(p)
	read := func(text string) []byte {
		f, err := Parse([]byte(text))
		if err != nil {
			t.Fatalf("%q: %v", text, err)
		}
		return Canonical(f)
	}
	ps.Property("two spellings of one value have one canonical text", prop.ForAll(func(seed int64) bool {
		r := rand.New(rand.NewSource(seed))
		n := randomTree(r, 4)
		return bytes.Equal(read(spell(r, n)), read(spell(r, n)))
	}, gen.Int64()))
	ps.Property("the canonical text is its own canonical text", prop.ForAll(func(seed int64) bool {
		r := rand.New(rand.NewSource(seed))
		once := read(spell(r, randomTree(r, 4)))
		return bytes.Equal(once, read(string(once)))
	}, gen.Int64()))
	ps.Property("two different values have different canonical texts", prop.ForAll(func(seed int64) bool {
		r := rand.New(rand.NewSource(seed))
		n := randomTree(r, 4)
		other := tree{kind: 1, kids: []tree{n}}
		return !bytes.Equal(read(spell(r, n)), read(spell(r, other)))
	}, gen.Int64()))
	// Outside reference: the RFC 8785 form of the tokeniser's own package.
	ps.Property("it is the form of RFC 8785", prop.ForAll(func(seed int64) bool {
		r := rand.New(rand.NewSource(seed))
		text := spell(r, randomTree(r, 4))
		want := jsontext.Value(text)
		if err := want.Canonicalize(); err != nil {
			t.Fatal(err)
		}
		return bytes.Equal(read(text), want)
	}, gen.Int64()))
	ps.TestingRun(t)
}

func TestCanonicalOfAPart(t *testing.T) {
	f := parse(t, `{"z":1,"a":2}`)
	if got := string(Canonical(f)); got != `{"a":2,"z":1}` || f.Names()[0] != "z" {
		t.Errorf("%s; the document's own order is now %v", got, f.Names())
	}
	if got := string(Canonical(parse(t, `{"x":{"b":1,"a":[2.0]}}`).Get("x"))); got != `{"a":[2],"b":1}` {
		t.Errorf("%s", got)
	}
}

// TestIndented checks that the indented form has the same meaning, and that writing it
// again changes nothing.
func TestIndented(t *testing.T) {
	text := `{"b":[1,2.50,"x"],"a":{"list":[{"k":null},[]],"long":["` + strings.Repeat("y", 60) + `"]},"empty":{}}`
	f, err := Parse([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	first := Indented(f)
	g, err := Parse(first)
	if err != nil {
		t.Fatalf("%v in\n%s", err, first)
	}
	if string(Canonical(g)) != string(Canonical(f)) {
		t.Errorf("means something else:\n%s", first)
	}
	if again := Indented(g); string(again) != string(first) {
		t.Errorf("not settled:\n%s\n%s", first, again)
	}
	if !strings.HasPrefix(string(first), "{\n \"b\": [1, 2.5, \"x\"],\n \"a\": {\n  \"list\": [\n   {\n    \"k\": null\n") {
		t.Errorf("layout:\n%s", first)
	}
}
