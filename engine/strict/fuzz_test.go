package strict

import (
	"bytes"
	"encoding/json"
	"errors"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"
)

// FuzzParse checks that for any bytes Parse returns a readable error, or a document that
// the standard library also reads and all of whose getters return.
func FuzzParse(f *testing.F) {
	for _, row := range broken {
		f.Add([]byte(row.text))
	}
	f.Add([]byte(`{"periods":[{"years":2.5,"kept":"garage"}],"date":"2024-02-29","rate":"85.00","ok":true,"x":null}`))
	f.Add([]byte("[1e308,-0,1E-5,\"\\ud83d\\ude00\",{\"__proto__\":[]}]"))
	f.Fuzz(func(t *testing.T, data []byte) {
		kept := bytes.Clone(data)
		doc, err := Parse(data)
		if !bytes.Equal(kept, data) {
			t.Fatal("the input was changed")
		}
		if err != nil {
			readable(t, err)
			return
		}
		if !json.Valid(data) {
			t.Fatalf("%q accepted, encoding/json refuses it", data)
		}
		once := Canonical(doc)
		again, err := Parse(once)
		if err != nil || !bytes.Equal(once, Canonical(again)) {
			t.Fatalf("canonical text %q does not stay: %v", once, err)
		}
		for i := range getters {
			fresh, err := Parse(data)
			if err != nil {
				t.Fatal(err)
			}
			visit(fresh, getters[i])
			if fresh.Err() != nil {
				readable(t, fresh.Err())
			}
		}
	})
}

var getters = []func(Field){
	func(f Field) { f.Text(10) },
	func(f Field) { f.Number(-10, 10) },
	func(f Field) { f.Whole(-10, 10) },
	func(f Field) { f.Bool() },
	func(f Field) { f.OneOf("garage", "shed") },
	func(f Field) { f.Decimal() },
	func(f Field) { f.Date() },
	func(f Field) { f.Numbers(2, 0, 1) },
	func(f Field) { f.Keys("years", "kept") },
	func(f Field) { f.Get("years") },
	func(f Field) { f.Complain("something") },
}

// visit applies a getter to the leaves first and the containers after.
func visit(f Field, get func(Field)) {
	switch f.Kind() {
	case "object":
		for _, name := range f.Names() {
			visit(f.Get(name), get)
		}
	case "array":
		for _, item := range f.Items() {
			visit(item, get)
		}
	}
	get(f)
}

// readable checks that an error is one line of visible text that names a place.
func readable(t *testing.T, err error) {
	t.Helper()
	var e *Error
	text := err.Error()
	if !errors.As(err, &e) || e.Expected == "" || e.Found == "" || e.Line < 1 || e.Column < 1 {
		t.Fatalf("incomplete error %#v", err)
	}
	bad := strings.IndexFunc(text, func(r rune) bool { return !unicode.IsGraphic(r) })
	if bad >= 0 || !utf8.ValidString(text) || len(text) > 6000 {
		t.Fatalf("error text not readable: %q", text)
	}
}
