package strict

import (
	"bytes"
	"errors"
	"io"
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/go-json-experiment/json/jsontext"
)

// This file turns errors of the tokeniser into sentences for people who edit the file in
// a text editor and do not know JSON's grammar.

// Unmarked returns the text without the byte order mark that some editors put in front of
// UTF-8. It is a slice of data.
func Unmarked(data []byte) []byte { return bytes.TrimPrefix(data, []byte("\xef\xbb\xbf")) }

// refuseWhole checks what can be checked before reading: the length, whether the text is
// empty, and the marks of another encoding.
func refuseWhole(data []byte, most int) error {
	switch {
	case len(data) > most:
		return &Error{
			Found:    strconv.Itoa(len(data)) + " bytes",
			Expected: "at most " + strconv.Itoa(most) + " bytes",
		}
	case bytes.HasPrefix(data, []byte("\xff\xfe")), bytes.HasPrefix(data, []byte("\xfe\xff")):
		return &Error{Found: "UTF-16 text", Line: 1, Column: 1,
			Expected: "plain UTF-8 text (save it again with the encoding UTF-8)"}
	case len(bytes.Trim(Unmarked(data), " \t\r\n")) == 0:
		return &Error{Found: "an empty file", Expected: "some data", Line: 1, Column: 1}
	}
	return nil
}

// explain puts an error of the tokeniser in words. before is the offset at which the last
// good token ended.
func (p *parser) explain(err error, before int) error {
	d := p.doc
	at := skipSpace(d.data, before)
	var syn *jsontext.SyntacticError
	if errors.As(err, &syn) && int(syn.ByteOffset) > at {
		at = int(syn.ByteOffset)
	}
	if errors.Is(err, jsontext.ErrDuplicateName) {
		at = skipBetween(d.data, before)
		name := syn.JSONPointer.LastToken()
		return d.at(p.here(), quote(name)+" a second time", "each name only once", at)
	}
	if i := firstInvalid(d.data, min(before, len(d.data))); i >= 0 && i <= at {
		return d.at(p.here(), "byte 0x"+strconv.FormatUint(uint64(d.data[i]), 16),
			"UTF-8 text (save it again with the encoding UTF-8)", i)
	}
	if errors.Is(err, io.ErrUnexpectedEOF) || errors.Is(err, io.EOF) || at >= len(d.data) {
		return d.at(p.here(), "the end of the file", p.unfinished(before), len(d.data))
	}
	if at == before && at > 0 && wordByte(d.data[at-1]) && wordByte(d.data[at]) {
		// A valid start of a number with more after it, such as 007 or 0x10.
		start := wordStart(d.data, 0, at)
		return d.at(d.path(len(d.nodes)-1), quote(around(d.data, start)), p.wantedValue(start), start)
	}
	from := at
	if d.data[at] >= ' ' {
		from = wordStart(d.data, before, at)
	}
	return d.at(p.here(), spot(d.data, from), p.wanted(before, at), at)
}

// spot shows the text at an offset.
func spot(data []byte, at int) string {
	switch s := around(data, at); s {
	case "\n", "\r":
		return "the end of the line"
	case `"`:
		return "a quote"
	default:
		return quote(s)
	}
}

// here is the path of the member that has begun, or otherwise of the innermost container.
func (p *parser) here() string {
	if len(p.open) == 0 {
		return ""
	}
	in := p.open[len(p.open)-1]
	if p.nameAt >= 0 {
		return appendName(p.doc.path(in), p.name)
	}
	return p.doc.path(in)
}

// unfinished says what is still open where the text ends too early.
func (p *parser) unfinished(before int) string {
	if at := skipBetween(p.doc.data, before); at < len(p.doc.data) && p.doc.data[at] == '"' {
		return `a closing quote "`
	}
	if len(p.open) == 0 {
		return "a complete value"
	}
	line, _ := lineColumn(p.doc.data, p.doc.nodes[p.open[len(p.open)-1]].at)
	closing := "}"
	if !p.inObject() {
		closing = "]"
	}
	return "a closing " + closing + " for the bracket opened in line " + strconv.Itoa(line)
}

func (p *parser) inObject() bool {
	return len(p.open) > 0 && p.doc.nodes[p.open[len(p.open)-1]].kind == jsontext.KindBeginObject
}

// wanted says what was expected at offset at. Common slips in hand-written files have
// their own sentences.
func (p *parser) wanted(before, at int) string {
	rest := p.doc.data[at:]
	start := skipBetween(p.doc.data, before)
	inString := start < at && p.doc.data[start] == '"'
	switch c := rest[0]; {
	case inString && len(rest) > 5 && rest[1] == 'u' && wordStart(rest, 2, 6) == 2:
		return "a complete character after \\u"
	case inString && c == '\\', inString && at > 0 && p.doc.data[at-1] == '\\':
		return `\\ for a backslash inside a text`
	case inString && c < ' ':
		return `a closing quote " before the end of the line`
	case inString && !p.wantsName():
		return "a text without a stray quote"
	case c == '/' || c == '#':
		return "no comments (this format has none)"
	case c == '\'' || strings.HasPrefix(string(rest[:min(3, len(rest))]), "“"),
		strings.HasPrefix(string(rest[:min(3, len(rest))]), "”"):
		return `straight double quotes "`
	case c == ',' && firstOf(p.doc.data, at+1, "}]"):
		return "no comma before the closing bracket"
	case c == ',' && (firstOf(p.doc.data, at+1, ",") || lastVisible(p.doc.data, at) == ','):
		return "one comma, not two"
	case p.nameAt >= 0 && skipSpace(p.doc.data, before) == at && c != ':':
		return "a colon : between the name and its value"
	case p.wantsName() && c != ',' && lastVisible(p.doc.data, at) != ',' && lastVisible(p.doc.data, at) != '{':
		return "a comma , or a closing } here"
	case p.wantsName() && c >= '0' && c <= '9':
		return "a name in double quotes (a decimal has a point, as in 12.50)"
	case p.wantsName():
		return "a name in double quotes"
	case p.needsComma(before):
		return "a comma , or a closing ] here"
	}
	return p.wantedValue(start)
}

// needsComma reports whether a list continues without a comma.
func (p *parser) needsComma(before int) bool {
	if len(p.open) == 0 || p.inObject() || len(p.doc.nodes[p.open[len(p.open)-1]].kids) == 0 {
		return false
	}
	at := skipSpace(p.doc.data, before)
	return at < len(p.doc.data) && p.doc.data[at] != ','
}

// wantedValue lists the kinds of JSON value, with a hint for numbers and words that are
// almost right.
func (p *parser) wantedValue(start int) string {
	if start >= len(p.doc.data) {
		return "a value"
	}
	switch c := p.doc.data[start]; {
	case c == '+' || c == '-' || c == '.' || c >= '0' && c <= '9':
		return "a plain number such as 12.5 (no leading zero or plus sign, digits on both sides of the point)"
	case c >= 'A' && c <= 'Z' || c >= 'a' && c <= 'z':
		return "a number, a text in double quotes, true, false or null"
	}
	return "a number, a text in double quotes, a list [ ] or a group { }"
}

func skipSpace(data []byte, i int) int {
	for i < len(data) && (data[i] == ' ' || data[i] == '\t' || data[i] == '\r' || data[i] == '\n') {
		i++
	}
	return i
}

// firstOf reports whether the first byte from i on that is not white space is one of
// those given.
func firstOf(data []byte, i int, bytes string) bool {
	i = skipSpace(data, i)
	return i < len(data) && strings.IndexByte(bytes, data[i]) >= 0
}

// lastVisible is the last byte before at that is not white space, or 0.
func lastVisible(data []byte, at int) byte {
	for i := at - 1; i >= 0; i-- {
		if skipSpace(data, i) == i {
			return data[i]
		}
	}
	return 0
}

// wordStart goes back from at to the start of the word or number around it, no
// further than the end of the last good token.
func wordStart(data []byte, before, at int) int {
	for at > before && at-1 < len(data) && wordByte(data[at-1]) {
		at--
	}
	return at
}

// around returns the word at offset at, or the one character there.
func around(data []byte, at int) string {
	end := at
	for end < len(data) && end-at < 4*longestQuote && wordByte(data[end]) {
		end++
	}
	if end == at && at < len(data) {
		_, size := utf8.DecodeRune(data[at:])
		end = at + size
	}
	return string(data[at:end])
}

func wordByte(c byte) bool {
	return c == '+' || c == '-' || c == '.' || c == '_' || c >= '0' && c <= '9' ||
		c >= 'A' && c <= 'Z' || c >= 'a' && c <= 'z'
}

// firstInvalid finds the first byte from offset i on that is not UTF-8, or -1.
func firstInvalid(data []byte, i int) int {
	for i < len(data) {
		r, size := utf8.DecodeRune(data[i:])
		if r == utf8.RuneError && size == 1 {
			return i
		}
		i += size
	}
	return -1
}
