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

// mistake describes a panic. A panic is always an error in this program, never in the
// request.
type mistake struct {
	panicked string
	stack    []string // the running functions, first the one that panicked
}

// longestStack is far more calls than any answer needs.
const longestStack = 64

// mistakeOf describes a panic that was just recovered. Only a deferred function may call
// it, before it returns.
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

// report writes the mistake for whoever maintains the program. It ignores a failed write,
// because nobody is left to hear of it and the reply still says that something went wrong.
func (m mistake) report(to io.Writer) {
	if to == nil {
		to = os.Stderr
	}
	fmt.Fprintf(to, "underpaint: an error in the program: %s\n    %s\n", m.panicked, strings.Join(m.stack, "\n    "))
}

// broken makes the reply to a request that panicked. Only the shop gets the details,
// because a customer can do nothing with them.
func (m mistake) broken(forShop bool) *BrokenReply {
	r := &BrokenReply{Text: wording.Broken}
	if forShop {
		r.Told = &Told{m.panicked, m.stack}
	}
	return r
}
