package strict

import (
	"slices"
	"strings"

	"github.com/go-json-experiment/json/jsontext"
)

const (
	aGroup = "a group { } of named entries"
	aList  = "a list [ ]"
)

// indexFrom is the number of members from which an object gets an index.
const indexFrom = 16

// member finds a member of an object, or -1.
func (d *document) member(n *node, name string) int {
	if len(n.kids) < indexFrom {
		for _, k := range n.kids {
			if d.nodes[k].name == name {
				return k
			}
		}
		return -1
	}
	if n.byName == nil {
		n.byName = make(map[string]int, len(n.kids))
		for _, k := range n.kids {
			n.byName[d.nodes[k].name] = k
		}
	}
	if k, ok := n.byName[name]; ok {
		return k
	}
	return -1
}

// Get returns a required member of an object and complains if it is missing. The Field of
// a missing member returns zero values, like every Field after a complaint.
func (f Field) Get(name string) Field {
	n := f.is(jsontext.KindBeginObject, aGroup)
	if n == nil {
		return Field{doc: f.doc, id: -1}
	}
	k := f.doc.member(n, name)
	if k < 0 {
		f.doc.first = f.doc.at(appendName(f.Path(), name), "nothing", "this entry", n.at)
	}
	return Field{doc: f.doc, id: k}
}

// Has reports whether an object has a member, even if its value is null. Anything but an
// object is a complaint.
func (f Field) Has(name string) bool {
	n := f.is(jsontext.KindBeginObject, aGroup)
	return n != nil && f.doc.member(n, name) >= 0
}

// Names returns the names of an object's members in file order. Anything but
// an object is a complaint.
func (f Field) Names() []string {
	n := f.is(jsontext.KindBeginObject, aGroup)
	if n == nil {
		return nil
	}
	names := make([]string, len(n.kids))
	for i, k := range n.kids {
		names[i] = f.doc.nodes[k].name
	}
	return names
}

// Items returns the entries of an array in order. Anything but an array is a
// complaint.
func (f Field) Items() []Field {
	n := f.is(jsontext.KindBeginArray, aList)
	if n == nil {
		return nil
	}
	items := make([]Field, len(n.kids))
	for i, k := range n.kids {
		items[i] = Field{doc: f.doc, id: k}
	}
	return items
}

// Keys complains about the first member of an object that is not among the known names,
// and about anything that is not an object. Members may be absent.
func (f Field) Keys(known ...string) {
	n := f.is(jsontext.KindBeginObject, aGroup)
	if n == nil {
		return
	}
	for _, k := range n.kids {
		m := &f.doc.nodes[k]
		if !slices.Contains(known, m.name) {
			f.doc.first = f.doc.at(f.Path(), "the unknown name "+quote(m.name), expectedName(m.name, known), m.nameAt)
			return
		}
	}
}

// mostNames is the largest number of names that an error lists.
const mostNames = 12

// expectedName lists the names allowed, starting with the nearest if one is near.
func expectedName(found string, known []string) string {
	if len(known) == 0 {
		return "no entries here"
	}
	if near := Nearest(found, known); near != "" {
		return quote(near)
	}
	return "one of " + list(known)
}

// list enumerates names, limited to the first mostNames.
func list(names []string) string {
	var b strings.Builder
	for i, name := range names {
		switch {
		case i == mostNames:
			b.WriteString(", …")
			return b.String()
		case i > 0:
			b.WriteString(", ")
		}
		b.WriteString(quote(name))
	}
	return b.String()
}

// Nearest returns the known name most similar to the one found: the one with the fewest
// single-letter slips, if those are at most a third of its letters. Capitals do not count
// as slips. The first wins a tie. It returns "" if no name is near.
func Nearest(found string, known []string) string {
	best, least := "", -1
	from := []rune(strings.ToLower(shorten(found)))
	for _, name := range known {
		to := []rune(strings.ToLower(name))
		slips := distance(from, to)
		if 3*slips <= max(len(to), 3) && (least < 0 || slips < least) {
			best, least = name, slips
		}
	}
	return best
}

// distance counts the insertions, deletions, replacements and swaps of
// neighbours that turn a into b (optimal string alignment distance: Boytsov,
// "Indexing methods for approximate dictionary searching", 2011, section 2.1;
// citation from memory).
func distance(a, b []rune) int {
	before, last := make([]int, len(b)+1), make([]int, len(b)+1)
	row := make([]int, len(b)+1)
	for j := range last {
		last[j] = j
	}
	for i := 1; i <= len(a); i++ {
		row[0] = i
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			row[j] = min(last[j]+1, row[j-1]+1, last[j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
		before, last, row = last, row, before
	}
	return last[len(b)]
}
