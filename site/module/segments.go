package module

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"slices"
)

// widestGap is the longest run of zeros that is written out rather than left to a
// new segment. The Go linker leaves out runs of eight, which makes tens of
// thousands of segments, each with an address that does not compress. Measured on
// the customer's engine, compressed: runs of 16 gain little, 32 a seventeenth of
// the whole, 64 a little more, 4096 no more than that.
const widestGap = 64

// segment is a part of memory that a module fills before it starts.
type segment struct {
	at   int
	data []byte
}

// Shrink makes a module smaller for its way to a visitor: its data in as few segments
// as sense, with the zeros between them, without what only stack traces need, see
// [dropTraces], and without functions that nothing in a page comes to, see
// [unreached]. All else of its code and of the memory it starts with is the same.
func Shrink(code []byte, names Names) ([]byte, error) {
	all, err := sections(code)
	if err != nil {
		return nil, err
	}
	var isCut []bool
	for k, s := range all {
		if s.id == dataSection {
			if all[k].body, isCut, err = shrinkData(s.body, names); err != nil {
				return nil, err
			}
		}
	}
	out := []byte(Start)
	for _, s := range all {
		if s.id == codeSection && isCut != nil {
			if s.body, err = withTraps(s.body, isCut); err != nil {
				return nil, err
			}
		}
		out = append(out, s.id)
		out = binary.AppendUvarint(out, uint64(len(s.body)))
		out = append(out, s.body...)
	}
	return out, nil
}

// shrinkData makes a data section smaller, and says which functions are cut, as
// [functionTables.cutUnreached] does. A module of another release of Go, which may lay
// its tables differently and call other functions, keeps them all: isCut is nil.
func shrinkData(body []byte, names Names) (smaller []byte, isCut []bool, err error) {
	memory, err := memoryOf(body)
	if err != nil {
		return nil, nil, err
	}
	t, err := findTables(memory)
	if t != nil && err == nil && bytes.Contains(memory, []byte(release)) {
		isCut, err = t.shrink(memory, names)
	}
	return writeSegments(segmentsOf(memory)), isCut, err
}

func (t *functionTables) shrink(memory []byte, names Names) (isCut []bool, err error) {
	if err := t.findData(memory); err != nil {
		return nil, err
	}
	if isCut, err = t.cutUnreached(names); err != nil {
		return nil, err
	}
	t.coarsen()
	return isCut, t.dropTraces(names)
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
