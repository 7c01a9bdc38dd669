package strict

import (
	"strings"

	"github.com/go-json-experiment/json/jsontext"
)

// Indented writes the value for people to read: members in the order of the file, one
// per line, and lists of plain values on one line. It has the same meaning as the value
// and the same [Canonical] form. It returns nil if there is nothing to read.
func Indented(f Field) []byte {
	if f.node() == nil {
		return nil
	}
	return append(f.doc.indented(nil, f.id, 0), '\n')
}

func (d *document) indented(out []byte, id, depth int) []byte {
	n := &d.nodes[id]
	open, end, object := byte('['), byte(']'), n.kind == jsontext.KindBeginObject
	if object {
		open, end = '{', '}'
	}
	if !object && n.kind != jsontext.KindBeginArray || len(n.kids) == 0 {
		w := NewWriter()
		d.canonical(w, id)
		return append(out, w.Bytes()...)
	}
	lines := object || !d.allPlain(n.kids)
	out = append(out, open)
	for i, k := range n.kids {
		if i > 0 {
			out = append(out, ',')
		}
		if lines {
			out = append(out, '\n')
			out = append(out, strings.Repeat(" ", depth+1)...)
		} else if i > 0 {
			out = append(out, ' ')
		}
		if object {
			w := NewWriter()
			w.String(d.nodes[k].name)
			out = append(append(out, w.Bytes()...), ": "...)
		}
		out = d.indented(out, k, depth+1)
	}
	if lines {
		out = append(out, '\n')
		out = append(out, strings.Repeat(" ", depth)...)
	}
	return append(out, end)
}

// allPlain reports whether the nodes are all short and none contains others.
func (d *document) allPlain(kids []int) bool {
	for _, k := range kids {
		if n := &d.nodes[k]; n.kind == jsontext.KindBeginObject || n.kind == jsontext.KindBeginArray || len(n.text) > longestQuote {
			return false
		}
	}
	return true
}

// Member is a named value in JSON. Without a value it means that the member is to be
// removed.
type Member struct {
	Name  string
	Value []byte
}

// Replaced writes an object like [Indented], with some members replaced, removed, or
// added at the end if the object does not have them.
func Replaced(f Field, with []Member) []byte {
	n := f.node()
	if n == nil || n.kind != jsontext.KindBeginObject {
		return nil
	}
	w := NewWriter()
	w.Object(func() {
		put := map[string]bool{}
		for _, k := range n.kids {
			name, value := f.doc.nodes[k].name, Canonical(Field{doc: f.doc, id: k})
			for _, m := range with {
				if m.Name == name {
					value, put[name] = m.Value, true
				}
			}
			if value == nil {
				continue
			}
			w.Key(name)
			w.JSON(value)
		}
		for _, m := range with {
			if !put[m.Name] && m.Value != nil {
				w.Key(m.Name)
				w.JSON(m.Value)
			}
		}
	})
	out, err := Parse(w.Bytes())
	if err != nil {
		panic("engine: internal error: a replaced member is not JSON")
	}
	return Indented(out)
}
