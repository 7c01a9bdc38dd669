package main

import (
	"io"
	"testing"
)

func TestCommandLine(t *testing.T) {
	for _, args := range [][]string{nil, {"mend"}, {"engines"}, {"build"}, {"build", "-out", t.TempDir()}, {"build", "-out", t.TempDir(), "-rates", "none.json"}, {"serve"}, {"build", "x"}} {
		if err := run(args, io.Discard); err == nil {
			t.Errorf("%q: expected an error", args)
		}
	}
}
