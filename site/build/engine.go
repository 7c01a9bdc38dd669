package build

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"underpaint/site/module"
)

// Engine is the engine for a browser, whole and as much of it as the customer's page
// needs, and the loader that starts either. All come from the same Go release, or
// the engine does not start.
type Engine struct {
	Code, Customer, Loader []byte

	packed map[string][]byte // by name, compressed with brotliOf; may be empty
}

const (
	engineName   = "engine.wasm"
	customerName = "customer.wasm"
	loaderName   = "wasm_exec.js"
)

// FindEngine reads a built engine. With it come the customer's engine and the loader
// that lie beside it, as they do in a folder that is already made, or else the whole
// engine for the customer too and the loader of the Go tool. Without a name they are
// those that a released program has in it; any other builds everything with the Go
// tool, which needs the sources.
func FindEngine(name string) (e Engine, err error) {
	switch {
	case name == "" && ready != nil:
		return readReady(ready)
	case name == "":
		return buildEngines()
	}
	if e.Code, err = readModule(name); err != nil {
		return Engine{}, err
	}
	beside := func(other string) string { return filepath.Join(filepath.Dir(name), other) }
	e.Customer, err = readModule(beside(customerName))
	if errors.Is(err, fs.ErrNotExist) {
		e.Customer, err = e.Code, nil
	}
	if err != nil {
		return Engine{}, err
	}
	e.Loader, err = os.ReadFile(beside(loaderName))
	if errors.Is(err, fs.ErrNotExist) {
		e.Loader, err = toolLoader(name, e.Code)
	}
	return e, err
}

func readModule(name string) ([]byte, error) {
	code, err := os.ReadFile(name)
	if err == nil && !bytes.HasPrefix(code, []byte(module.Start)) {
		err = fmt.Errorf("%s: expected a WebAssembly module, found something else", name)
	}
	return code, err
}

// toolLoader reads the Go tool's loader for an engine that brought none.
func toolLoader(name string, code []byte) ([]byte, error) {
	release, err := goTool("env", "GOVERSION")
	if err != nil {
		return nil, fmt.Errorf("%s: %s is not beside it, and %w", name, loaderName, err)
	}
	if !bytes.Contains(code, []byte(release)) {
		return nil, fmt.Errorf("%s: it was not built with the Go release here, %s; put the %s of its own release beside it", name, release, loaderName)
	}
	root, err := goTool("env", "GOROOT")
	if err != nil {
		return nil, err
	}
	return os.ReadFile(filepath.Join(root, "lib", "wasm", loaderName))
}

// goTool runs the Go tool for one line of text.
func goTool(args ...string) (string, error) {
	cmd := exec.Command("go", args...)
	cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	var complaints bytes.Buffer
	cmd.Stderr = &complaints
	out, err := cmd.Output()
	if errors.Is(err, exec.ErrNotFound) {
		return "", errors.New("the Go tool is not installed")
	}
	if err != nil {
		return "", fmt.Errorf("go %s: %s", strings.Join(args, " "), strings.TrimSpace(complaints.String()))
	}
	return strings.TrimSpace(string(out)), nil
}
