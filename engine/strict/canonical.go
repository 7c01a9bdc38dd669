package strict

import (
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/go-json-experiment/json/jsontext"
)

// Canonical writes the value in one fixed form: no white space, members sorted by name
// in the order of RFC 8785 (UTF-16 code units), strings with the fewest escapes, and
// numbers in the shortest form with the same value. Two documents that differ only in
// these have the same canonical text.
//
// It is RFC 8785 with one refinement: a number that [Field.Decimal] accepts keeps all its
// digits even where a float64 does not, because prices are read exactly.
//
// It returns nil if there is nothing to read.
func Canonical(f Field) []byte {
	if f.node() == nil {
		return nil
	}
	w := NewWriter()
	f.doc.canonical(w, f.id)
	return w.Bytes()
}

func (d *document) canonical(w *Writer, id int) {
	n := &d.nodes[id]
	switch n.kind {
	case jsontext.KindBeginObject:
		kids := slices.Clone(n.kids)
		slices.SortFunc(kids, func(a, b int) int { return compareUTF16(d.nodes[a].name, d.nodes[b].name) })
		w.Object(func() {
			for _, k := range kids {
				w.Key(d.nodes[k].name)
				d.canonical(w, k)
			}
		})
	case jsontext.KindBeginArray:
		w.Array(func() {
			for _, k := range n.kids {
				d.canonical(w, k)
			}
		})
	case jsontext.KindString:
		w.String(n.text)
	case jsontext.KindNumber:
		canonicalNumber(w, n.text)
	case jsontext.KindNull:
		w.Null()
	default:
		w.Bool(n.kind == jsontext.KindTrue)
	}
}

// canonicalNumber writes a number literal in its shortest form.
func canonicalNumber(w *Writer, text string) {
	if !decimalLiteral(text) {
		x, err := strconv.ParseFloat(text, 64)
		if err != nil {
			panic("engine: internal error: number not checked when read")
		}
		w.Number(x)
		return
	}
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	if text == "-0" {
		text = "0"
	}
	w.raw(text)
}

// compareUTF16 orders two strings by their UTF-16 code units (RFC 8785,
// section 3.2.3). It differs from the order of code points only if one character is
// beyond U+FFFF, because its surrogates sort before U+E000.
func compareUTF16(a, b string) int {
	for a != "" && b != "" {
		ra, na := utf8.DecodeRuneInString(a)
		rb, nb := utf8.DecodeRuneInString(b)
		if ra != rb {
			if (ra > 0xffff) != (rb > 0xffff) {
				return unit(ra) - unit(rb)
			}
			return int(ra - rb)
		}
		a, b = a[na:], b[nb:]
	}
	return len(a) - len(b)
}

// unit is the first UTF-16 code unit of a character.
func unit(r rune) int {
	if r > 0xffff {
		return 0xd800 + int(r-0x10000)>>10
	}
	return int(r)
}
