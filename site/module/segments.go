package module

import (
	"encoding/binary"
	"errors"
	"fmt"
	"slices"
)

// widestGap is the longest run of zeros that is written out rather than left to a
// new segment. The Go linker leaves out runs of eight, which makes tens of
// thousands of segments, each with an address that does not compress. Measured on
// the customer's engine, compressed: 1,184 KB as linked, 1,169 with runs of 16, 1,109
// with 32, 1,108 with 64, 1,107 with 4096.
const widestGap = 64

// segment is a part of memory that a module fills before it starts.
type segment struct {
	at   int
	data []byte
}

// Join gives the same module with its memory in as few segments as sense. Memory
// before the program begins, code and everything else are the same. The error says
// what of the module was not understood.
func Join(code []byte) ([]byte, error) {
	all, err := sections(code)
	if err != nil {
		return nil, err
	}
	out := []byte(Start)
	for _, s := range all {
		if s.id == countSection {
			return nil, errors.New("expected no count of segments in the module: it would no longer be true")
		}
		if s.id == dataSection {
			memory, err := memoryOf(s.body)
			if err != nil {
				return nil, err
			}
			s.body = writeSegments(segmentsOf(memory))
		}
		out = append(out, s.id)
		out = binary.AppendUvarint(out, uint64(len(s.body)))
		out = append(out, s.body...)
	}
	return out, nil
}

// readSegments reads segments of memory 0 at constant addresses, the only kind
// that the linker writes (5.5.14), and puts them in order.
func readSegments(body []byte) (all []segment, err error) {
	r := reader{rest: body}
	for n := r.number(); n > 0 && r.err == nil; n-- {
		r.expect(0)
		at := r.address()
		all = append(all, segment{at, r.bytes(r.number())})
	}
	if r.err == nil && len(r.rest) > 0 {
		r.fail("the end of the data")
	}
	slices.SortStableFunc(all, func(a, b segment) int { return a.at - b.at })
	for k := 1; k < len(all) && r.err == nil; k++ {
		if all[k].at < all[k-1].at+len(all[k-1].data) {
			r.err = errors.New("expected segments apart from each other in the module")
		}
	}
	return all, r.err
}

// memoryOf is memory from address 0 to the end of the last segment of a data section.
func memoryOf(body []byte) (memory []byte, err error) {
	all, err := readSegments(body)
	if err != nil {
		return nil, err
	}
	for _, s := range all {
		if s.at > mostMemory {
			return nil, fmt.Errorf("expected data below address %d in the module, found some at %d", mostMemory, s.at)
		}
		memory = append(append(memory, make([]byte, s.at-len(memory))...), s.data...)
	}
	return memory, nil
}

// mostMemory is far above what any program here begins with.
const mostMemory = 1 << 28

// segmentsOf leaves out zeros at the ends and runs of more than widestGap.
func segmentsOf(memory []byte) (out []segment) {
	for at := 0; at < len(memory); {
		if memory[at] == 0 {
			at++
			continue
		}
		end, last := at, at
		for ; end < len(memory) && end-last <= widestGap+1; end++ {
			if memory[end] != 0 {
				last = end
			}
		}
		out = append(out, segment{at, memory[at : last+1]})
		at = last + 1
	}
	return out
}

func writeSegments(all []segment) []byte {
	out := binary.AppendUvarint(nil, uint64(len(all)))
	for _, s := range all {
		out = append(out, 0, 0x41)
		out = append(appendSigned(out, int64(int32(uint32(s.at)))), 0x0b)
		out = binary.AppendUvarint(out, uint64(len(s.data)))
		out = append(out, s.data...)
	}
	return out
}

// appendSigned writes a signed number in LEB128.
func appendSigned(out []byte, v int64) []byte {
	for {
		b := byte(v & 0x7f)
		v >>= 7
		if v == 0 && b&0x40 == 0 || v == -1 && b&0x40 != 0 {
			return append(out, b)
		}
		out = append(out, b|0x80)
	}
}
