package module

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
)

// Start are the first bytes of every module (5.5.16).
const Start = "\x00asm\x01\x00\x00\x00"

// Sections that are looked into (5.5.2).
const (
	customSection = 0
	importSection = 2
	codeSection   = 10
	dataSection   = 11
	countSection  = 12
)

var sectionNames = [...]string{"custom", "types", "imports", "functions", "tables", "memory", "globals", "exports", "start", "elements", "code", "data", "data count"}

// section is one section without its id and length.
type section struct {
	id   byte
	body []byte
}

func (s section) name() string {
	if int(s.id) < len(sectionNames) {
		return sectionNames[s.id]
	}
	return fmt.Sprintf("section %d", s.id)
}

func sections(code []byte) (all []section, err error) {
	rest, ok := bytes.CutPrefix(code, []byte(Start))
	if !ok {
		return nil, errors.New("expected a WebAssembly module, found something else")
	}
	r := reader{rest: rest}
	for len(r.rest) > 0 && r.err == nil {
		id := r.bytes(1)
		body := r.bytes(r.number())
		if r.err == nil {
			all = append(all, section{id[0], body})
		}
	}
	return all, r.err
}

// reader takes what it is asked for from the front; after its first error it
// gives nothing more.
type reader struct {
	rest []byte
	err  error
}

func (r *reader) bytes(n int) []byte {
	if r.err != nil {
		return nil
	}
	if n < 0 || n > len(r.rest) {
		r.err = errors.New("the module is cut short")
		return nil
	}
	out := r.rest[:n:n]
	r.rest = r.rest[n:]
	return out
}

// number is an unsigned number in LEB128 (5.2.2).
func (r *reader) number() int {
	v, n := binary.Uvarint(r.rest)
	if n <= 0 || v > 1<<32-1 {
		r.fail("a number of 32 bits")
		return 0
	}
	r.bytes(n)
	return int(v)
}

// address is the constant at which a segment begins: i32.const, a signed number
// in LEB128, end (5.4.7, 5.4.9). Memory ends at 4 GB, so the sign is part of it.
func (r *reader) address() int {
	r.expect(0x41)
	v, shift := int64(0), 0
	for r.err == nil {
		b := r.bytes(1)
		if r.err != nil || shift > 28 {
			r.fail("an address of 32 bits")
			return 0
		}
		v |= int64(b[0]&0x7f) << shift
		shift += 7
		if b[0] < 0x80 {
			if b[0]&0x40 != 0 {
				v -= 1 << shift
			}
			break
		}
	}
	r.expect(0x0b)
	return int(uint32(v))
}

func (r *reader) expect(want byte) {
	if b := r.bytes(1); r.err == nil && b[0] != want {
		r.fail(fmt.Sprintf("byte %#x", want))
	}
}

func (r *reader) fail(expected string) {
	if r.err == nil {
		r.err = errors.New("expected " + expected + " in the module")
	}
}
