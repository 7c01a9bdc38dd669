package strict

import (
	"bytes"
	"errors"
	"io"
	"strconv"

	"github.com/go-json-experiment/json/jsontext"
)

// Bounds on a whole document (assumption: the largest file of the project has
// about 110 kB and 8,200 values, so each bound leaves ample room).
const (
	MaxBytes   = 4 << 20 // length of the text in bytes
	MaxDepth   = 32      // nested objects and arrays
	MaxRequest = 48 << 20
	MaxMembers = 20000 // object members and array items in total
)

// node is one value. Nodes are in one slice in file order, so a parent comes before its
// children.
type node struct {
	kind   jsontext.Kind
	parent int    // index of the enclosing node, -1 for the top
	at     int    // byte offset of the value
	nameAt int    // byte offset of the member name, if it has one
	name   string // member name, inside an object
	index  int    // position among the siblings
	text   string // decoded string, or the number as written
	kids   []int  // members or items in file order
	byName map[string]int
}

// document holds what all Fields of one file share.
type document struct {
	data  []byte
	nodes []node
	first *Error
}

// parser holds the state of one Parse.
type parser struct {
	doc  *document
	dec  *jsontext.Decoder
	open []int // the containers around the next token, outermost first
	name string
	// nameAt is the offset of name, or -1 if no member has begun.
	nameAt int
}

// Parse reads a document, which must be one JSON value and nothing else. Any error is an
// *Error. The document keeps a reference to data for counting lines, so callers must not
// change data afterwards.
func Parse(data []byte) (Field, error) { return parseUpTo(data, MaxBytes) }

// ParseRequest reads a document that may contain a whole file as a text, so it may be
// longer: up to MaxRequest bytes.
func ParseRequest(data []byte) (Field, error) { return parseUpTo(data, MaxRequest) }

func parseUpTo(data []byte, most int) (Field, error) {
	if err := refuseWhole(data, most); err != nil {
		return Field{}, err
	}
	data = Unmarked(data)
	doc := &document{data: data}
	p := &parser{doc: doc, dec: jsontext.NewDecoder(bytes.NewBuffer(data)), nameAt: -1}
	for {
		more, err := p.step()
		if err != nil {
			return Field{}, err
		}
		if !more {
			break
		}
	}
	if err := p.refuseRest(); err != nil {
		return Field{}, err
	}
	return Field{doc: doc, id: 0}, nil
}

// step reads one token and reports whether the document continues.
func (p *parser) step() (more bool, err error) {
	before := int(p.dec.InputOffset())
	at := skipBetween(p.doc.data, before)
	tok, rerr := p.dec.ReadToken()
	if rerr != nil {
		return false, p.explain(rerr, before)
	}
	kind := tok.Kind()
	switch {
	case kind == jsontext.KindEndObject || kind == jsontext.KindEndArray:
		p.open = p.open[:len(p.open)-1]
	case p.wantsName():
		p.name, p.nameAt = tok.String(), at
	default:
		if err := p.add(tok, at); err != nil {
			return false, err
		}
	}
	return len(p.open) > 0, nil
}

// wantsName reports whether the next text is the name of a member.
func (p *parser) wantsName() bool {
	return len(p.open) > 0 && p.nameAt < 0 &&
		p.doc.nodes[p.open[len(p.open)-1]].kind == jsontext.KindBeginObject
}

// add makes a node of the token and puts it under the innermost container.
func (p *parser) add(tok jsontext.Token, at int) error {
	d, id := p.doc, len(p.doc.nodes)
	if id > MaxMembers {
		return d.at("", "more", "at most "+strconv.Itoa(MaxMembers)+" entries in all", at)
	}
	n := node{kind: tok.Kind(), parent: -1, at: at, name: p.name, nameAt: p.nameAt}
	switch n.kind {
	case jsontext.KindString:
		n.text = tok.String()
	case jsontext.KindNumber:
		n.text = tok.String()
	}
	if len(p.open) > 0 {
		n.parent = p.open[len(p.open)-1]
		up := &d.nodes[n.parent]
		n.index = len(up.kids)
		up.kids = append(up.kids, id)
	}
	d.nodes = append(d.nodes, n)
	p.name, p.nameAt = "", -1
	switch n.kind {
	case jsontext.KindNumber:
		if _, err := strconv.ParseFloat(n.text, 64); err != nil {
			return d.at(d.path(id), shorten(n.text), "a smaller number", at)
		}
	case jsontext.KindBeginObject, jsontext.KindBeginArray:
		p.open = append(p.open, id)
		if len(p.open) > MaxDepth {
			return d.at("", "more", "at most "+strconv.Itoa(MaxDepth)+" brackets { or [ inside each other", at)
		}
	}
	return nil
}

// refuseRest makes sure that only white space follows the value.
func (p *parser) refuseRest() error {
	before := int(p.dec.InputOffset())
	if _, err := p.dec.ReadToken(); errors.Is(err, io.EOF) {
		return nil
	}
	at := skipBetween(p.doc.data, before)
	return p.doc.at("", quote(around(p.doc.data, at)), "nothing more after the end of the data", at)
}

// skipBetween returns the offset of the first byte at or after i that is not white space,
// a comma or a colon: the start of the next token if there is one.
func skipBetween(data []byte, i int) int {
	for i < len(data) && bytes.IndexByte([]byte(" \t\r\n,:"), data[i]) >= 0 {
		i++
	}
	return i
}

// path is the path from the top to a node.
func (d *document) path(id int) string {
	if id <= 0 {
		return ""
	}
	n := &d.nodes[id]
	up := d.path(n.parent)
	if d.nodes[n.parent].kind == jsontext.KindBeginArray {
		return up + "[" + strconv.Itoa(n.index) + "]"
	}
	return appendName(up, n.name)
}

// at returns the error for one place in the text.
func (d *document) at(path, found, expected string, offset int) *Error {
	line, column := lineColumn(d.data, offset)
	return &Error{Path: path, Found: found, Expected: expected, Line: line, Column: column}
}
