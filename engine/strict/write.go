package strict

import (
	"math"
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/go-json-experiment/json/jsontext"
)

// Writer builds one JSON value without white space. Members are in the order of the
// calls, and numbers are the shortest that read back as the same float64 (the form of RFC
// 8785). It panics on calls that cannot give one valid value: a member without a name, a
// repeated name, a second value at the top, NaN or an infinity.
type Writer struct {
	out   []byte
	stack []level
	done  bool // the value at the top is complete
}

// level is one open object or array.
type level struct {
	object bool
	filled bool            // something has been written
	named  bool            // a name has been written and its value comes next
	names  map[string]bool // names so far, for objects
}

// NewWriter returns an empty Writer.
func NewWriter() *Writer { return &Writer{} }

// Bytes returns the text. The value at the top must be complete.
func (w *Writer) Bytes() []byte {
	if !w.done || len(w.stack) != 0 {
		panic("engine: internal error: JSON value not complete")
	}
	return w.out
}

// Object writes an object; body writes its members with Key and a value each.
func (w *Writer) Object(body func()) {
	w.container('{', '}', level{object: true, names: map[string]bool{}}, body)
}

// Array writes an array; body writes its items.
func (w *Writer) Array(body func()) {
	w.container('[', ']', level{}, body)
}

func (w *Writer) container(open, end byte, l level, body func()) {
	w.begin()
	w.out = append(w.out, open)
	w.stack = append(w.stack, l)
	body()
	if w.stack[len(w.stack)-1].named {
		panic("engine: internal error: JSON name without a value")
	}
	w.stack = w.stack[:len(w.stack)-1]
	w.out = append(w.out, end)
	w.end()
}

// Key writes the name of the next member.
func (w *Writer) Key(name string) {
	if len(w.stack) == 0 || !w.stack[len(w.stack)-1].object {
		panic("engine: internal error: JSON name outside an object: " + name)
	}
	top := &w.stack[len(w.stack)-1]
	name = valid(name)
	if top.named || top.names[name] {
		panic("engine: internal error: JSON name out of place or twice: " + name)
	}
	if top.filled {
		w.out = append(w.out, ',')
	}
	w.quoted(name)
	w.out = append(w.out, ':')
	top.named, top.filled = true, true
	top.names[name] = true
}

// String writes a string. Bytes that are not UTF-8 are written as U+FFFD.
func (w *Writer) String(s string) { w.begin(); w.quoted(valid(s)); w.end() }

// Number writes a finite number.
func (w *Writer) Number(x float64) {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		panic("engine: internal error: JSON has no number " + strconv.FormatFloat(x, 'g', -1, 64))
	}
	w.begin()
	w.out = jsontext.AppendFloat(w.out, x+0, 64) // −0 + 0 is +0
	w.end()
}

// Whole writes a whole number with all its digits. Readers that hold numbers
// as float64 lose digits beyond ±2^53.
func (w *Writer) Whole(n int64) { w.raw(strconv.FormatInt(n, 10)) }

// Bool writes true or false.
func (w *Writer) Bool(b bool) { w.raw(strconv.FormatBool(b)) }

// Null writes null.
func (w *Writer) Null() { w.raw("null") }

// raw writes a value that is already JSON.
func (w *Writer) raw(s string) { w.begin(); w.out = append(w.out, s...); w.end() }

// begin checks that a value is allowed here and writes the comma before it.
func (w *Writer) begin() {
	if len(w.stack) == 0 {
		if w.done {
			panic("engine: internal error: second JSON value at the top")
		}
		return
	}
	top := &w.stack[len(w.stack)-1]
	if top.object {
		if !top.named {
			panic("engine: internal error: JSON member without a name")
		}
		top.named = false
		return
	}
	if top.filled {
		w.out = append(w.out, ',')
	}
	top.filled = true
}

// end notes that a value is complete.
func (w *Writer) end() { w.done = len(w.stack) == 0 }

// quoted appends a string literal in the form of RFC 8785.
func (w *Writer) quoted(s string) {
	out, err := jsontext.AppendQuote(w.out, s)
	if err != nil {
		panic("engine: internal error: text is not UTF-8")
	}
	w.out = out
}

func valid(s string) string {
	if utf8.ValidString(s) {
		return s
	}
	return strings.ToValidUTF8(s, "\ufffd")
}

// Member writes a member that is a text.
func (w *Writer) Member(name, value string) {
	w.Key(name)
	w.String(value)
}

// MemberIf writes a member that may be left out when blank.
func (w *Writer) MemberIf(name, value string) {
	if value != "" {
		w.Member(name, value)
	}
}

// Texts writes a member that is a list of texts.
func (w *Writer) Texts(name string, values []string) {
	w.Key(name)
	w.Array(func() {
		for _, v := range values {
			w.String(v)
		}
	})
}

// Objects writes a member that is a list of n objects.
func (w *Writer) Objects(name string, n int, one func(i int)) {
	w.Key(name)
	w.Array(func() {
		for i := range n {
			w.Object(func() { one(i) })
		}
	})
}

// ObjectsIf is Objects, but writes nothing if n is 0.
func (w *Writer) ObjectsIf(name string, n int, one func(i int)) {
	if n > 0 {
		w.Objects(name, n, one)
	}
}

// JSON writes a value that is already JSON, unchanged. It must be valid.
func (w *Writer) JSON(text []byte) { w.raw(string(text)) }
