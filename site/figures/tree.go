package figures

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
)

// node is a value of a data file. Objects keep the order in which they are written,
// as a reader of the page expects it.
type node struct {
	members []member // of an object
	items   []*node  // of an array
	scalar  string   // of anything else
	kind    rune     // 'o', 'a', 's' for text, 'n' for a number, 'b' for yes or no, '0' for nothing
}

type member struct {
	key   string
	value *node
}

// read takes a whole file apart.
func read(text []byte) (*node, error) {
	d := json.NewDecoder(bytes.NewReader(text))
	d.UseNumber()
	n, err := next(d)
	if err != nil {
		return nil, err
	}
	if _, err := d.Token(); err != io.EOF {
		return nil, fmt.Errorf("expected the end of the file at byte %d", d.InputOffset())
	}
	return n, nil
}

func next(d *json.Decoder) (*node, error) {
	token, err := d.Token()
	if err != nil {
		return nil, err
	}
	switch t := token.(type) {
	case json.Delim:
		if t == '{' {
			return object(d)
		}
		return array(d)
	case string:
		return &node{kind: 's', scalar: t}, nil
	case json.Number:
		return &node{kind: 'n', scalar: t.String()}, nil
	case bool:
		return &node{kind: 'b', scalar: map[bool]string{true: "yes", false: "no"}[t]}, nil
	}
	return &node{kind: '0'}, nil
}

func object(d *json.Decoder) (*node, error) {
	n := &node{kind: 'o'}
	for d.More() {
		key, err := d.Token()
		if err != nil {
			return nil, err
		}
		value, err := next(d)
		if err != nil {
			return nil, err
		}
		n.members = append(n.members, member{key.(string), value})
	}
	_, err := d.Token()
	return n, err
}

func array(d *json.Decoder) (*node, error) {
	n := &node{kind: 'a'}
	for d.More() {
		value, err := next(d)
		if err != nil {
			return nil, err
		}
		n.items = append(n.items, value)
	}
	_, err := d.Token()
	return n, err
}

// get is the member of that name, or nil.
func (n *node) get(key string) *node {
	if n == nil {
		return nil
	}
	for _, m := range n.members {
		if m.key == key {
			return m.value
		}
	}
	return nil
}

// text is what a text says, or "".
func (n *node) text() string {
	if n == nil || n.kind != 's' {
		return ""
	}
	return n.scalar
}
