package strict

import (
	"strconv"

	"github.com/go-json-experiment/json/jsontext"
)

// Field is one value of a document together with its place in it. The zero
// Field belongs to no document: its getters return zero values and its Err is
// never nil.
type Field struct {
	doc *document
	id  int // index of the node, -1 for a missing value
}

// errNoDocument is the complaint of the zero Field.
var errNoDocument = &Error{Expected: "a document that could be read", Found: "none"}

// Err returns the first complaint made through any Field of the document, as
// an *Error, or nil.
func (f Field) Err() error {
	if f.doc == nil {
		return errNoDocument
	}
	if f.doc.first == nil {
		return nil
	}
	return f.doc.first
}

// node returns the value to read, or nil if there is nothing to read: no document, a
// missing member or an earlier complaint.
func (f Field) node() *node {
	if f.doc == nil || f.id < 0 || f.doc.first != nil {
		return nil
	}
	return &f.doc.nodes[f.id]
}

// Path returns the place of the value, such as "periods[2].years". It is empty at the top
// and for a missing value.
func (f Field) Path() string {
	if f.doc == nil || f.id < 0 {
		return ""
	}
	return f.doc.path(f.id)
}

// Complain records that the value is not what was expected. It describes what was found
// from the value itself.
func (f Field) Complain(expected string) {
	if n := f.node(); n != nil {
		f.ComplainFound(n.describe(), expected)
	}
}

// ComplainFound records a complaint in the caller's own words.
func (f Field) ComplainFound(found, expected string) {
	if n := f.node(); n != nil {
		f.doc.first = f.doc.at(f.Path(), found, expected, n.at)
	}
}

// Kind returns "object", "array", "string", "number", "true/false" or "null", or "" if
// there is nothing to read.
func (f Field) Kind() string {
	n := f.node()
	if n == nil {
		return ""
	}
	switch n.kind {
	case jsontext.KindBeginObject:
		return "object"
	case jsontext.KindBeginArray:
		return "array"
	case jsontext.KindString:
		return "string"
	case jsontext.KindNumber:
		return "number"
	case jsontext.KindNull:
		return "null"
	}
	return "true/false"
}

// IsNull reports whether the value is null.
func (f Field) IsNull() bool {
	n := f.node()
	return n != nil && n.kind == jsontext.KindNull
}

// describe says in plain words what a value is.
func (n *node) describe() string {
	switch n.kind {
	case jsontext.KindBeginObject:
		return "a group { } of " + count(len(n.kids), "entry", "entries")
	case jsontext.KindBeginArray:
		return "a list [ ] of " + count(len(n.kids), "entry", "entries")
	case jsontext.KindString:
		return quote(n.text)
	case jsontext.KindNumber:
		return shorten(n.text)
	case jsontext.KindTrue:
		return "true"
	case jsontext.KindFalse:
		return "false"
	}
	return "null"
}

func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + many
}

// is returns the value if it has the kind, and otherwise complains.
func (f Field) is(kind jsontext.Kind, expected string) *node {
	n := f.node()
	if n == nil {
		return nil
	}
	if n.kind != kind {
		f.Complain(expected)
		return nil
	}
	return n
}

// Apart returns the same value with its own complaints, so that it can be read even if
// something else in the document is wrong.
func (f Field) Apart() Field {
	if f.doc == nil {
		return f
	}
	own := *f.doc
	own.first = nil
	return Field{doc: &own, id: f.id}
}
