package strict

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Error says where in the user's file something is wrong, what was found there and what
// was expected instead.
type Error struct {
	Path     string // "periods[2].years"; empty for the document as a whole
	Found    string // what the file has there, shortened
	Expected string // what the file should have there
	Line     int    // the first line is 1; 0 if there is no line to name
	Column   int    // in characters, the first is 1; 0 if there is none to name
}

// Error returns one sentence for the person who wrote the file, for example
//
//	labour.metal.rate: expected a number from 0 to 10000, found "abc" (line 12)
func (e *Error) Error() string {
	var b strings.Builder
	if e.Path == "" {
		b.WriteString("the file")
	} else {
		b.WriteString(e.Path)
	}
	b.WriteString(": expected ")
	b.WriteString(e.Expected)
	if e.Found != "" {
		b.WriteString(", found ")
		b.WriteString(e.Found)
	}
	if e.Line > 0 {
		b.WriteString(" (line ")
		b.WriteString(strconv.Itoa(e.Line))
		b.WriteString(")")
	}
	return b.String()
}

// longestQuote is the number of characters of a value that an error repeats, so that a
// message stays one readable line whatever the file contains.
const longestQuote = 40

// quote shows a text in double quotes, shortened, with everything invisible (control
// characters, reversed reading direction) escaped.
func quote(s string) string { return strconv.QuoteToGraphic(shorten(s)) }

// shorten cuts a text to longestQuote characters.
func shorten(s string) string {
	n := 0
	for i := range s {
		if n == longestQuote {
			return s[:i] + "…"
		}
		n++
	}
	return s
}

// appendName extends a path by a member name: plain names after a dot, others
// in brackets and quotes so that the path stays readable and unambiguous.
func appendName(path, name string) string {
	if !plainName(name) {
		return path + "[" + quote(name) + "]"
	}
	if path == "" {
		return name
	}
	return path + "." + name
}

func plainName(name string) bool {
	if name == "" || utf8.RuneCountInString(name) > longestQuote {
		return false
	}
	for i, r := range name {
		if r != '_' && !unicode.IsLetter(r) && (i == 0 || r != '-' && !unicode.IsDigit(r)) {
			return false
		}
	}
	return true
}

// lineColumn counts the line and the character column of a byte offset.
// Lines end with LF, CR LF or a lone CR.
func lineColumn(data []byte, at int) (line, column int) {
	at = min(at, len(data))
	line, start := 1, 0
	for i := 0; i < at; i++ {
		lone := data[i] == '\r' && (i+1 >= len(data) || data[i+1] != '\n')
		if data[i] == '\n' || lone {
			line, start = line+1, i+1
		}
	}
	return line, utf8.RuneCount(data[start:at]) + 1
}
