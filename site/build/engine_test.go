package build

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"underpaint/site/module"
)

// TestEngineThatIsBuilt: the loader beside it is taken, so that neither the Go
// tool nor the sources are needed.
func TestEngineThatIsBuilt(t *testing.T) {
	name := builtEngine(t)
	t.Setenv("PATH", t.TempDir())
	e, err := FindEngine(name)
	if err != nil || !bytes.Equal(e.Code, small.Code) || !bytes.Equal(e.Customer, small.Customer) || !bytes.Equal(e.Loader, small.Loader) {
		t.Errorf("not what lies there: %v", err)
	}
}

// TestWholeEngineAloneIsForTheCustomerToo: it answers all that the smaller one does.
func TestWholeEngineAloneIsForTheCustomerToo(t *testing.T) {
	name := builtEngine(t)
	beside := filepath.Join(filepath.Dir(name), customerName)
	if err := os.WriteFile(beside, []byte("<!doctype html>"), 0o600); err != nil {
		t.Fatal(err)
	}
	wantFault(t, name, customerName, "expected a WebAssembly module")
	if err := os.Remove(beside); err != nil {
		t.Fatal(err)
	}
	if e, err := FindEngine(name); err != nil || !bytes.Equal(e.Customer, small.Code) {
		t.Errorf("not the whole engine for the customer: %v", err)
	}
}

// TestEngineThatCannotBeHad says in each case what to do.
func TestEngineThatCannotBeHad(t *testing.T) {
	write := func(data []byte) string {
		name := filepath.Join(t.TempDir(), engineName)
		if err := os.WriteFile(name, data, 0o600); err != nil {
			t.Fatal(err)
		}
		return name
	}
	t.Run("outside the sources", func(t *testing.T) {
		t.Chdir(t.TempDir())
		wantFault(t, "", "folder of the sources", "--engine FILE")
	})
	t.Run("without the Go tool", func(t *testing.T) {
		t.Setenv("PATH", t.TempDir())
		wantFault(t, "", "the Go tool is not installed", "--engine FILE")
	})
	t.Run("without the Go tool and the loader", func(t *testing.T) {
		name := write(small.Code)
		t.Setenv("PATH", t.TempDir())
		wantFault(t, name, "wasm_exec.js is not beside it", "the Go tool is not installed")
	})
	t.Run("of another Go release", func(t *testing.T) { wantFault(t, write(small.Code), "Go release", "beside it") })
	t.Run("no engine", func(t *testing.T) { wantFault(t, write([]byte("<!doctype html>")), "expected a WebAssembly module") })
	t.Run("no file", func(t *testing.T) { wantFault(t, filepath.Join(t.TempDir(), "none.wasm"), "none.wasm") })
}

func wantFault(t *testing.T, name string, says ...string) {
	t.Helper()
	_, err := FindEngine(name)
	for _, must := range says {
		if err == nil || !strings.Contains(err.Error(), must) {
			t.Errorf("expected %q in the fault, got %v", must, err)
		}
	}
}

// TestEngineFromTheSources builds the real one: a module, with the loader of the
// Go release that is written in it.
func TestEngineFromTheSources(t *testing.T) {
	t.Setenv("GOFLAGS", "-buildvcs=true") // the build has to overrule it
	e, err := FindEngine("")
	if err != nil {
		t.Fatal(err)
	}
	release, err := goTool("env", "GOVERSION")
	if err != nil || !bytes.HasPrefix(e.Code, []byte(module.Start)) || !bytes.Contains(e.Code, []byte(release)) {
		t.Errorf("not a module of %s (%v)", release, err)
	}
	if !bytes.Contains(e.Loader, []byte("globalThis.Go = class")) {
		t.Error("the loader does not define Go")
	}
	if bytes.Contains(e.Code, []byte("vcs.revision")) {
		t.Error("the state of a working copy is in the engine")
	}
	if again, err := FindEngine(""); err != nil || !bytes.Equal(again.Code, e.Code) || !bytes.Equal(again.Customer, e.Customer) {
		t.Errorf("a second time it is another (%v)", err)
	}
}
