package module

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"strings"
)

// unreached are functions of Go's runtime that nothing in a page comes to, and with
// each its closures and, of a type, its methods. The linker keeps them, since other
// code could call them if a setting or another program asked for it. Every name has to
// be there in the Go release that go.mod names: a test goes red when one is gone.
var unreached = []string{
	// The execution tracer, which only runtime/trace starts.
	`(*traceAdvancerState) (*traceBuf) (*traceMap) (*traceRegionAlloc) (*traceSchedResourceState)
		(*traceStackTable) (*traceStringTable) (*traceTypeTable) traceEventWriter traceLocker traceWriter
		dumpStacksRec dumpTypesRec fpunwindExpand goStatusToTraceGoStatus makeTraceFrame makeTraceFrames
		startPCForTrace traceAcquire traceAcquireEnabled traceAdvance traceBufFlush traceCPUFlush traceReadCPU
		traceReader traceReaderAvailable traceRegisterLabelsAndReasons traceRelease traceStack traceStopReadCPU
		traceSyncBatch traceThreadDestroy`,
	// Profiles, which only runtime/pprof asks for.
	`(*bucket) (*profBuf) blockevent doRecordGoroutineProfile mProf_Free newBucket saveBlockEventStack
		saveblockevent saveg setprofilebucket stkbucket tryRecordGoroutineProfile tryRecordGoroutineProfileWB
		allGsSnapshotSortedForGC findGoroutineLeaks findMaybeRunnableGoroutines (*g).isMaybeRunnable`,
	// What the variable GODEBUG asks for, which a page does not set, and words about memory gone wrong just before the end.
	`(*mspan).reportZombies badPointer checkFinalizersAndCleanups clearCleanupContext dumpScanStats
		dumpgstatus endCheckmarks fmtNSAsMS gcDumpObject gcMarkRootCheck getCleanupContext postMallocgcDebug
		preMallocgcDebug printScavTrace runCheckmark schedtrace setCheckmark setCleanupContext setTinyBlockContext
		startCheckmarks`,
	// More threads than the one that a worker is, system calls that block, and C.
	`(*p).destroy addExtraM allocm asmcgocall cgocall entersyscall entersyscallHandleGCWait
		entersyscallWakeSysmon exitsyscall exitsyscallNoP exitsyscallTryGetP gcstopm handoffp lockextra mexit
		newextram newm newm1 oneNewExtraM reentersyscall runqgrab runqsteal startlockedm startm stoplockedm
		syscallingThread unlockextra`,
	// Cleanups, arenas, bubbles of tests, types of plugins: nothing here has any.
	`(*cleanupQueue).enqueue (*cleanupQueue).wake (*mspan).setUserArenaChunkToFault (*synctestBubble)
		scanConservative typesEqual`,
}

// traceWriters are the functions that write a stack trace, which is of no use once it
// has no names.
const traceWriters = `
	(*Frames) (*Func) (*hexdumper) (*unwinder).cgoCallers callCgoSymbolizer
	callers cgoContextPCs expandCgoFrames funcNamePiecesForPrint funcfile funcline1 funcpkgpath gcallers
	goroutineheader hexdumpMarker hexdumpWords isExportedRuntime printAncestorTraceback
	printAncestorTracebackFuncInfo printArgs printCgoTraceback printFuncName printOneCgoTraceback printcreatedby
	printcreatedby1 showframe showfuncinfo traceback1 traceback2 tracebackHexdump tracebackPCs tracebacksomeothers`

// cutNames are the functions to cut, by name.
func cutNames(traces Names) map[string]bool {
	cut := map[string]bool{}
	add := func(all string) {
		for _, name := range strings.Fields(all) {
			cut["runtime."+name] = false
		}
	}
	for _, names := range unreached {
		add(names)
	}
	if traces == DropNames {
		add(traceWriters)
	}
	return cut
}

// owner is the longest beginning of a function's name that is in cut: the name itself,
// or what it is a closure or a method of.
func owner(cut map[string]bool, name string) (string, bool) {
	for at := len(name); at > 0; at = strings.LastIndexByte(name[:at], '.') {
		if _, ok := cut[name[:at]]; ok {
			return name[:at], true
		}
	}
	return "", false
}

// cutUnreached empties what the records of the functions to cut name, and says of each
// function whether it is one of them, in the order of the code section.
func (t *functionTables) cutUnreached(names Names) (isCut []bool, err error) {
	cut := cutNames(names)
	isCut = make([]bool, t.functions)
	for k := range isCut {
		record, err := t.record(k)
		if err != nil {
			return nil, err
		}
		name, err := t.name(record)
		if err != nil {
			return nil, err
		}
		if _, isCut[k] = owner(cut, name); isCut[k] {
			empty(record)
		}
	}
	return isCut, nil
}

// empty takes from a record all tables and data.
func empty(record []byte) {
	clear(record[recordName+4 : recordCount])
	data := dataAt(record)
	clear(record[recordTables:data])
	for k := range int(record[recordData]) {
		binary.LittleEndian.PutUint32(record[data+4*k:], noData)
	}
}

// name is the name of the function of a record.
func (t *functionTables) name(record []byte) (string, error) {
	at := int(binary.LittleEndian.Uint32(record[recordName:]))
	if at >= len(t.names) {
		return "", fmt.Errorf("expected a name within the module, found one at %d", at)
	}
	name, _, _ := bytes.Cut(t.names[at:], []byte{0})
	return string(name), nil
}

// trap is the body of a function that was cut: no locals, unreachable, end. Whoever
// comes to it after all ends the engine there, and the page starts another.
var trap = []byte{0, 0x00, 0x0b}

// withTraps is the code section with traps in the place of some functions.
func withTraps(code []byte, isCut []bool) ([]byte, error) {
	r := reader{rest: code}
	all := bodies(&r)
	if r.err != nil {
		return nil, r.err
	}
	if len(all) != len(isCut) {
		return nil, fmt.Errorf("expected code for %d functions, as the table of functions says, found %d", len(isCut), len(all))
	}
	out := binary.AppendUvarint(nil, uint64(len(all)))
	for k, body := range all {
		if isCut[k] {
			body = trap
		}
		out = append(binary.AppendUvarint(out, uint64(len(body))), body...)
	}
	return out, nil
}
