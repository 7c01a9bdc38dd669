package build

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"

	"underpaint/site/module"
)

// The programs that become the two engines.
const (
	wholeProgram    = "underpaint/wasm"
	customerProgram = "underpaint/wasm/customer"
)

// plain are the packages compiled without inlining (-l): they read files and write
// texts, once for a page or a reply, and what is inlined is loaded again at every
// place where it is. None of them is at work while cars are imagined.
var noInline = []string{
	"underpaint/engine/car", "underpaint/engine/carfile", "underpaint/engine/columns",
	"underpaint/engine/evidence", "underpaint/engine/exposure", "underpaint/engine/message", "underpaint/engine/pastjobs",
	"underpaint/engine/pastjobs/scores", "underpaint/engine/rates", "underpaint/engine/session", "underpaint/engine/strict", "underpaint/engine/wording",
	"github.com/shopspring/decimal", "fmt", "io/fs", "math/big", "os", "reflect", "strconv", "strings", "syscall/...", "time",
}

// buildEngines builds both engines from the sources.
func buildEngines() (e Engine, err error) {
	if _, err := goTool("list", wholeProgram); err != nil {
		return Engine{}, fmt.Errorf("the engine cannot be built here: %w; run this in the folder of the sources, or name a built engine with --engine FILE", err)
	}
	if e.Code, err = compile(wholeProgram, "-s -w"); err != nil {
		return Engine{}, err
	}
	if e.Customer, err = compile(customerProgram, "-s -w"); err != nil {
		return Engine{}, err
	}
	e.Loader, err = toolLoader(wholeProgram, e.Code)
	return e, err
}

// compile builds one program. The flags of the linker leave out what only debuggers
// read; stack traces keep functions, files and lines.
// Neither paths nor the state of a working copy go into it: the same sources give the
// same bytes.
func compile(program, linking string) ([]byte, error) {
	dir, err := os.MkdirTemp("", "engine")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	target := filepath.Join(dir, engineName)
	args := []string{"build", "-trimpath", "-buildvcs=false", "-ldflags=" + linking, "-o", target}
	for _, p := range noInline {
		args = append(args, "-gcflags="+p+"=-l")
	}
	cmd := exec.Command("go", append(args, program)...)
	cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	if text, err := cmd.CombinedOutput(); err != nil {
		return nil, fmt.Errorf("building the engine: %w\n%s", err, text)
	}
	code, err := os.ReadFile(target)
	if err != nil {
		return nil, err
	}
	if code, err = module.Join(code); err != nil {
		return nil, fmt.Errorf("building the engine: %w", err)
	}
	return code, nil
}
