package module

import (
	"encoding/binary"
	"fmt"
)

// Kinds of data of a function (internal/abi symtab.go, FUNCDATA). Where its offset is
// noData there is none of the kind.
const (
	mapsOfArgs   = 0 // which words hold pointers, by place: for collecting garbage and growing stacks
	mapsOfLocals = 1
	stackObjects = 2
	inlineTree   = 3 // which calls were inlined: recover reads it, and traces
	deferred     = 4

	noData = 1<<32 - 1
)

// Within a call of an inline tree (runtime symtabinl.go, inlinedCall).
const (
	inlinedSize = 16
	inlinedName = 4
	inlinedLine = 12
)

// keepData copies the data of one kind that a function names by an offset, as long as
// each kind says of itself: inlined is the number of calls in its inline tree. What is
// known to be read only for traces, or by the execution tracer, is taken out.
func (t *functionTables) keepData(kind int, offset, kept []byte, inlined int, names Names) error {
	at := int(binary.LittleEndian.Uint32(offset))
	if at == noData {
		return nil
	}
	if at >= len(t.data) {
		return fmt.Errorf("expected its data within the module, found some at %d", at)
	}
	r := reader{rest: t.data[at:]}
	switch kind {
	case mapsOfArgs, mapsOfLocals:
		maps, bits := r.word(), r.word()
		r.bytes(maps * ((bits + 7) / 8))
	case stackObjects:
		r.bytes(16*r.word() + 4) // the number has 64 bits
	case inlineTree:
		r.bytes(inlinedSize * inlined)
	case deferred:
		r.number()
		r.number()
	default:
		binary.LittleEndian.PutUint32(offset, noData)
		return nil
	}
	end := len(t.data) - len(r.rest)
	copy(kept[at:end], t.data[at:end])
	if kind == inlineTree {
		thinCalls(kept[at:end], names)
	}
	return r.err
}

// thinCalls empties what of inlined calls only traces read.
func thinCalls(calls []byte, names Names) {
	for ; len(calls) >= inlinedSize; calls = calls[inlinedSize:] {
		clear(calls[inlinedLine:inlinedSize])
		if names == DropNames {
			clear(calls[inlinedName : inlinedName+4])
		}
	}
}

// word is an unsigned number in 4 bytes.
func (r *reader) word() int {
	if b := r.bytes(4); r.err == nil {
		return int(binary.LittleEndian.Uint32(b))
	}
	return 0
}

// A place in the lookup says from which function on the one at an address is to be
// looked for, and then, for sixteen parts of it, how many further on: nothing, since
// each function has several places for itself (runtime symtab.go, findfunc).
const (
	placeSize = 4 + 16
	fromOne   = 16 // functions that are looked for from the same one on
)

// coarsen lets several functions in a row be looked for from the same one on, so that
// the lookup repeats itself. Measured on the customer's engine, compressed: the
// lookup has 6.0 KB, 1.5 by steps of 8, .8 by 16 and .4 by 32.
func (t *functionTables) coarsen() {
	for rest := t.lookup; len(rest) >= placeSize; rest = rest[placeSize:] {
		from := binary.LittleEndian.Uint32(rest)
		binary.LittleEndian.PutUint32(rest, from-from%fromOne)
		clear(rest[4:placeSize])
	}
}
