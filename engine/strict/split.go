package strict

import (
	"bytes"
	"strconv"

	"github.com/go-json-experiment/json/jsontext"
)

// Part is one entry of a long list, to be read separately.
type Part struct {
	Data []byte // one JSON value, a slice of the text it comes from
	Line int    // the line of the text on which it begins
}

// SplitList reads a document in which the member called name is a list too long to hold
// in memory, such as years of finished jobs. It returns the document with that list
// empty, and the entries as slices of the text, which [Part.Parse] reads one at a time.
// So the largest entry bounds the memory. The text may have at most mostBytes and the
// list mostItems.
func SplitList(data []byte, name string, mostBytes, mostItems int) (head Field, parts []Part, err error) {
	if err := refuseWhole(data, mostBytes); err != nil {
		return head, nil, err
	}
	data = Unmarked(data)
	dec := jsontext.NewDecoder(bytes.NewBuffer(data))
	open := findList(dec, data, name)
	if open < 0 {
		// The list is not there, and the ordinary reading says what is wrong.
		head, err := parseUpTo(data, mostBytes)
		return head, nil, err
	}
	line, _ := lineColumn(data, open)
	for at := open + 1; dec.PeekKind() != jsontext.KindEndArray; {
		start := skipBetween(data, int(dec.InputOffset()))
		line += bytes.Count(data[at:min(start, len(data))], []byte("\n"))
		at = start
		if len(parts) == mostItems {
			return head, nil, &Error{Path: name, Found: "more", Expected: "at most " + strconv.Itoa(mostItems) + " entries", Line: line}
		}
		value, rerr := dec.ReadValue()
		if rerr != nil {
			return head, nil, explainPart(data, name, len(parts), start, line, mostBytes)
		}
		parts = append(parts, Part{data[start : start+len(value)], line})
	}
	end := skipBetween(data, int(dec.InputOffset()))
	// The rest is read without the entries, but with their line breaks, so that errors name
	// the right line.
	rest := append(bytes.Clone(data[:open+1]), bytes.Repeat([]byte("\n"), bytes.Count(data[open:end], []byte("\n")))...)
	head, err = parseUpTo(append(rest, data[end:]...), mostBytes)
	return head, parts, err
}

// findList reads up to the opening bracket of the member, or returns −1 if there is none.
func findList(dec *jsontext.Decoder, data []byte, name string) (open int) {
	if tok, err := dec.ReadToken(); err != nil || tok.Kind() != jsontext.KindBeginObject {
		return -1
	}
	for {
		tok, err := dec.ReadToken()
		if err != nil || tok.Kind() == jsontext.KindEndObject {
			return -1
		}
		own := tok.String() == name
		at := skipBetween(data, int(dec.InputOffset()))
		if own && at < len(data) && data[at] == '[' {
			if _, err := dec.ReadToken(); err != nil {
				return -1
			}
			return at
		}
		if err := dec.SkipValue(); err != nil {
			return -1
		}
	}
}

// explainPart says what is wrong with the entry that begins at start.
func explainPart(data []byte, name string, n, start, line, mostBytes int) error {
	_, err := parseUpTo(data[start:], mostBytes)
	if e, ok := err.(*Error); ok && start < len(data) {
		return e.Within(name+"["+strconv.Itoa(n)+"]", line)
	}
	return &Error{Path: name, Found: "the end of the file", Expected: "a closing ] for the list that begins above", Line: line}
}

// Parse reads the entry. Errors name its place within the entry: see Error.Within.
func (p Part) Parse() (Field, error) { return Parse(p.Data) }

// Within converts an error in an entry to an error in the whole document, where the entry
// is at path and begins on line.
func (e *Error) Within(path string, line int) *Error {
	own := *e
	switch {
	case own.Path == "":
		own.Path = path
	case own.Path[0] == '[':
		own.Path = path + own.Path
	default:
		own.Path = path + "." + own.Path
	}
	if own.Line > 0 {
		own.Line += line - 1
		own.Column = 0
	}
	return &own
}
