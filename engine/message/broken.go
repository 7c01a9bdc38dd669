package message

import (
	"fmt"
	"io"
	"os"
	"runtime"
	"strconv"
	"strings"

	"underpaint/engine/wording"
)

// mistake is what a panic told: a fault of this program, never of what it was asked.
type mistake struct {
	panicked string
	stack    []string // the functions that were running, the one that panicked first
}

// longestStack is far more calls than lead to any answer.
const longestStack = 64

// mistakeOf describes a panic that was just recovered from; only a deferred function
// that is about to return may ask.
func mistakeOf(value any) mistake {
	var calls [longestStack]uintptr
	frames := runtime.CallersFrames(calls[:runtime.Callers(1, calls[:])])
	m := mistake{panicked: fmt.Sprint(value)}
	panicking := false
	for more := true; more; {
		var f runtime.Frame
		f, more = frames.Next()
		if f.Function == "runtime.gopanic" {
			panicking, m.stack = true, nil
		} else if panicking && !(len(m.stack) == 0 && strings.HasPrefix(f.Function, "runtime.")) {
			m.stack = append(m.stack, f.Function+" ("+f.File+":"+strconv.Itoa(f.Line)+")")
		}
	}
	return m
}

// report writes the mistake for whoever looks after the program. Where that fails too,
// there is nobody left to tell: the reply still says that something went wrong.
func (m mistake) report(to io.Writer) {
	if to == nil {
		to = os.Stderr
	}
	fmt.Fprintf(to, "underpaint stopped on a mistake of its own: %s\n    %s\n", m.panicked, strings.Join(m.stack, "\n    "))
}

// broken is the reply to a request that came upon a mistake. What the panic told is for
// the shop alone: a customer can do nothing with it.
func (m mistake) broken(forShop bool) *BrokenReply {
	r := &BrokenReply{Text: wording.Broken}
	if forShop {
		r.Told = &Told{m.panicked, m.stack}
	}
	return r
}
