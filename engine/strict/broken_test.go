package strict

import (
	"encoding/json"
	"errors"
	"strings"
	"testing"
)

// broken lists documents that Parse rejects, with the whole sentence that the page shows.
// Grammar: RFC 8259 and RFC 7493. ours marks documents that RFC 8259 allows and this
// package rejects. For the others the standard library's reader must agree that they are
// not JSON.
var broken = []struct {
	name, text, want string
	ours             bool
}{
	{"empty", "", "the file: expected some data, found an empty file (line 1)", false},
	{"blank", " \r\n\t", "the file: expected some data, found an empty file (line 1)", false},
	{"BOM and nothing else", "\xef\xbb\xbf \n", "the file: expected some data, found an empty file (line 1)", false},
	{"BOM twice", "\xef\xbb\xbf\xef\xbb\xbf{}", "the file: expected a number, a text in double quotes, a list [ ] or a group { }, found \"\\ufeff\" (line 1)", false},
	{"BOM after the value", "{}\xef\xbb\xbf", "the file: expected nothing more after the end of the data, found \"\\ufeff\" (line 1)", false},
	{"UTF-16", "\xff\xfe{\x00}\x00", "the file: expected plain UTF-8 text (save it again with the encoding UTF-8), found UTF-16 text (line 1)", false},
	{"UTF-16 the other way", "\xfe\xff\x00{\x00}", "the file: expected plain UTF-8 text (save it again with the encoding UTF-8), found UTF-16 text (line 1)", false},
	{"invalid UTF-8 in a text", "{\"a\":\n\"x\xff\"}", "a: expected UTF-8 text (save it again with the encoding UTF-8), found byte 0xff (line 2)", true},
	{"invalid UTF-8 in a name", "{\"\xc3\x28\":1}", "the file: expected UTF-8 text (save it again with the encoding UTF-8), found byte 0xc3 (line 1)", true},
	{"invalid UTF-8 outside", "[1]\xff", `the file: expected nothing more after the end of the data, found "\xff" (line 1)`, false},
	{"lone surrogate", `{"a":"\ud800"}`, `a: expected a complete character after \u, found "\\" (line 1)`, true},
	{"name twice", "{\"a\":1,\n\"a\":2}", `the file: expected each name only once, found "a" a second time (line 2)`, true},
	{"name twice, escaped", `{"a":1,"\u0061":2}`, `the file: expected each name only once, found "a" a second time (line 1)`, true},
	{"name twice, inside", `{"x":[1,{"q":1,"q":2}]}`, `x[1]: expected each name only once, found "q" a second time (line 1)`, true},
	{"name twice, __proto__", `{"__proto__":1,"__proto__":2}`, `the file: expected each name only once, found "__proto__" a second time (line 1)`, true},
	{"trailing value", `{"a":1} {"b":2}`, `the file: expected nothing more after the end of the data, found "{" (line 1)`, false},
	{"trailing word", "{\"a\":1}\nx", `the file: expected nothing more after the end of the data, found "x" (line 2)`, false},
	{"trailing zero byte", "{}\x00", `the file: expected nothing more after the end of the data, found "\x00" (line 1)`, false},
	{"trailing bracket", "{}}", `the file: expected nothing more after the end of the data, found "}" (line 1)`, false},
	{"NaN", `{"rate":NaN}`, `rate: expected a number, a text in double quotes, true, false or null, found "NaN" (line 1)`, false},
	{"Infinity", `[Infinity]`, `the file: expected a number, a text in double quotes, true, false or null, found "Infinity" (line 1)`, false},
	{"minus Infinity", `{"a":-Infinity}`, `a: expected a plain number such as 12.5 (no leading zero or plus sign, digits on both sides of the point), found "-Infinity" (line 1)`, false},
	{"undefined", `{"a":undefined}`, `a: expected a number, a text in double quotes, true, false or null, found "undefined" (line 1)`, false},
	{"capital True", `{"a":True}`, `a: expected a number, a text in double quotes, true, false or null, found "True" (line 1)`, false},
	{"1e999", "{\"a\":{\n\"b\":[1e999]}}", "a.b[0]: expected a smaller number, found 1e999 (line 2)", true},
	{"minus 1e309", `-1e309`, "the file: expected a smaller number, found -1e309 (line 1)", true},
	{"leading zero", `{"a":007}`, `a: expected a plain number such as 12.5 (no leading zero or plus sign, digits on both sides of the point), found "007" (line 1)`, false},
	{"hexadecimal", `{"a":0x10}`, `a: expected a plain number such as 12.5 (no leading zero or plus sign, digits on both sides of the point), found "0x10" (line 1)`, false},
	{"plus sign", `{"a":+5}`, `a: expected a plain number such as 12.5 (no leading zero or plus sign, digits on both sides of the point), found "+5" (line 1)`, false},
	{"no digit before the point", `{"a":.5}`, `a: expected a plain number such as 12.5 (no leading zero or plus sign, digits on both sides of the point), found ".5" (line 1)`, false},
	{"no digit after the point", `{"a":5.}`, `a: expected a plain number such as 12.5 (no leading zero or plus sign, digits on both sides of the point), found "5." (line 1)`, false},
	{"decimal comma", `{"rate":12,50}`, `the file: expected a name in double quotes (a decimal has a point, as in 12.50), found "50" (line 1)`, false},
	{"currency sign", `{"rate":€12}`, `rate: expected a number, a text in double quotes, a list [ ] or a group { }, found "€" (line 1)`, false},
	{"comma before }", "{\"a\":1,\n}", `the file: expected no comma before the closing bracket, found "," (line 1)`, false},
	{"comma before ]", `{"a":[1,]}`, `a: expected no comma before the closing bracket, found "," (line 1)`, false},
	{"two commas", `{"a":[1,,2]}`, `a: expected one comma, not two, found "," (line 1)`, false},
	{"two commas in a group", `{"a":1,,"b":2}`, `the file: expected one comma, not two, found "," (line 1)`, false},
	{"no comma", "{\"a\":1\n\"b\":2}", `the file: expected a comma , or a closing } here, found a quote (line 2)`, false},
	{"no comma in a list", `[1 2]`, `the file: expected a comma , or a closing ] here, found "2" (line 1)`, false},
	{"no colon", `{"a" 1}`, `a: expected a colon : between the name and its value, found "1" (line 1)`, false},
	{"equals sign", `{"a"=1}`, `a: expected a colon : between the name and its value, found "=" (line 1)`, false},
	{"wrong bracket", `{"a":[1}`, `a: expected a comma , or a closing ] here, found "}" (line 1)`, false},
	{"cut short", "{\n\"a\":[1,2", "a: expected a closing ] for the bracket opened in line 2, found the end of the file (line 2)", false},
	{"cut short in a text", `{"a":"x`, `a: expected a closing quote ", found the end of the file (line 1)`, false},
	{"cut short in a word", `tru`, "the file: expected a complete value, found the end of the file (line 1)", false},
	{"single quotes", `{'a':1}`, `the file: expected straight double quotes ", found "'" (line 1)`, false},
	{"curly quotes", `{“a”:1}`, `the file: expected straight double quotes ", found "“" (line 1)`, false},
	{"bare name", `{a:1}`, `the file: expected a name in double quotes, found "a" (line 1)`, false},
	{"comment", "{\n// hours\n\"a\":1}", `the file: expected no comments (this format has none), found "/" (line 2)`, false},
	{"line break in a text", "{\"a\":\"x\ny\"}", `a: expected a closing quote " before the end of the line, found the end of the line (line 1)`, false},
	{"backslash", `{"a":"c:\dir"}`, `a: expected \\ for a backslash inside a text, found "\\" (line 1)`, false},
	{"stray quote", `{"a":"b"c"}`, `the file: expected a comma , or a closing } here, found "c" (line 1)`, false},
	{"closing bracket only", `}`, `the file: expected a number, a text in double quotes, a list [ ] or a group { }, found "}" (line 1)`, false},
	{"nested too deep", strings.Repeat("[", MaxDepth+1) + strings.Repeat("]", MaxDepth+1), "the file: expected at most 32 brackets { or [ inside each other, found more (line 1)", true},
}

func TestBrokenDocuments(t *testing.T) {
	for _, row := range broken {
		t.Run(row.name, func(t *testing.T) {
			f, err := Parse([]byte(row.text))
			if err == nil {
				t.Fatalf("%q was accepted", row.text)
			}
			if err.Error() != row.want {
				t.Errorf("%q:\n got %s\nwant %s", row.text, err, row.want)
			}
			var e *Error
			if !errors.As(err, &e) || e.Line < 1 || e.Column < 1 {
				t.Errorf("%q: error without a place: %#v", row.text, err)
			}
			if f.Err() == nil {
				t.Error("the Field of a refused document says that all is well")
			}
			if valid := json.Valid([]byte(row.text)); valid != row.ours {
				t.Errorf("%q: encoding/json says valid = %v, the table %v", row.text, valid, row.ours)
			}
		})
	}
}

func TestLineAndColumn(t *testing.T) {
	for _, row := range []struct {
		text         string
		line, column int
	}{
		{"{\"a\":\n  NaN}", 2, 3},
		{"{\"a\":\r\n  NaN}", 2, 3},
		{"{\"a\":\r  NaN}", 2, 3},
		{"[\"äöü\", NaN]", 1, 9}, // characters, not bytes
		{"\n\n\n[1,\n2,\n x]", 6, 2},
	} {
		_, err := Parse([]byte(row.text))
		var e *Error
		if !errors.As(err, &e) || e.Line != row.line || e.Column != row.column {
			t.Errorf("%q: %+v, want line %d, column %d", row.text, e, row.line, row.column)
		}
	}
}
