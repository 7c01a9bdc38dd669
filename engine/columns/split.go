package columns

import (
	"strconv"
	"strings"
)

// record is one row of the text, cells unquoted.
type record struct {
	line  int
	cells []string
	fault *Refusal // what is wrong with the row; the cells before it are complete
}

// splitter splits a text into records. With a separator of 0 every row is one cell.
type splitter struct {
	text string
	sep  byte
	at   int
	line int // line of the text that at is on, from 1
}

// next reads a record into rec, reusing its cells, and reports whether there was one.
func (s *splitter) next(rec *record) bool {
	if s.at >= len(s.text) {
		return false
	}
	rec.line, rec.cells, rec.fault = s.line, rec.cells[:0], nil
	for {
		cell, found, expected := s.cell()
		if expected == "" && len(rec.cells) == MaxCells {
			found, expected = "more cells", "at most "+strconv.Itoa(MaxCells)+" cells in a row"
		}
		if expected != "" {
			rec.fault = &Refusal{Line: s.line, Column: len(rec.cells) + 1, Found: found, Expected: expected}
			s.skipLine()
			return true
		}
		rec.cells = append(rec.cells, cell)
		if !s.separator() {
			s.endLine()
			return true
		}
	}
}

// cell reads one cell and stops at the separator or line end after it. If it cannot, it
// returns what it found and expected.
func (s *splitter) cell() (cell, found, expected string) {
	if s.at < len(s.text) && s.text[s.at] == '"' {
		return s.quoted()
	}
	end := s.at
	for end < len(s.text) && !s.ends(s.text[end]) {
		end++
	}
	cell = s.text[s.at:end]
	if len(cell) > MaxCell {
		return "", "a cell of " + strconv.Itoa(len(cell)) + " bytes", longest
	}
	s.at = end
	return cell, "", ""
}

const longest = "at most 10000 bytes in a cell"

// quoted reads a cell in quotation marks. It searches no further than the longest cell
// can reach, so that a quotation mark that is never closed spoils only its own row.
func (s *splitter) quoted() (cell, found, expected string) {
	from := s.at + 1
	reach := s.text[:min(len(s.text), from+2*MaxCell+1)]
	doubled := false
	for i := from; ; i += 2 {
		k := strings.IndexByte(reach[i:], '"')
		if k < 0 {
			return "", "a quotation mark that is not closed", "a second one at the end of the cell, within 10000 bytes"
		}
		i += k
		if i+1 < len(s.text) && s.text[i+1] == '"' {
			doubled = true
			if i+2 > len(reach) {
				return "", "a longer cell", longest
			}
			continue
		}
		cell = s.text[from:i]
		if i+1 < len(s.text) && !s.ends(s.text[i+1]) {
			return "", "text after the closing quotation mark", "a separator or the end of the row"
		}
		s.line += lines(cell)
		s.at = i + 1
		break
	}
	if doubled {
		cell = strings.ReplaceAll(cell, `""`, `"`)
	}
	if len(cell) > MaxCell {
		return "", "a cell of " + strconv.Itoa(len(cell)) + " bytes", longest
	}
	return cell, "", ""
}

func (s *splitter) ends(b byte) bool {
	return b == '\n' || b == '\r' || b == s.sep && s.sep != 0
}

// separator skips a separator and reports whether there was one.
func (s *splitter) separator() bool {
	if s.sep != 0 && s.at < len(s.text) && s.text[s.at] == s.sep {
		s.at++
		return true
	}
	return false
}

// endLine skips one line end: \r\n, \n or \r.
func (s *splitter) endLine() {
	if s.at >= len(s.text) {
		return
	}
	if s.text[s.at] == '\r' && s.at+1 < len(s.text) && s.text[s.at+1] == '\n' {
		s.at++
	}
	s.at++
	s.line++
}

// skipLine moves to the next line after a fault.
func (s *splitter) skipLine() {
	k := strings.IndexAny(s.text[s.at:], "\r\n")
	if k < 0 {
		s.at = len(s.text)
		return
	}
	s.at += k
	s.endLine()
}

// lines counts the line ends in a cell.
func lines(cell string) (n int) {
	for i := range len(cell) {
		if cell[i] == '\n' || cell[i] == '\r' && (i+1 == len(cell) || cell[i+1] != '\n') {
			n++
		}
	}
	return n
}
