package folder

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

// Engine is the engine for a browser and the loader that starts it. Both come
// from the same Go release, or the engine does not start.
type Engine struct{ Code, Loader []byte }

const (
	engineName = "engine.wasm"
	loaderName = "wasm_exec.js"
)

// FindEngine reads a built engine, with the loader that lies beside it (as both
// do in a folder that is already made) or else that of the Go tool. Without a
// name it builds both with the Go tool, which needs the sources.
func FindEngine(name string) (Engine, error) {
	if name == "" {
		return buildEngine()
	}
	code, err := os.ReadFile(name)
	if err != nil {
		return Engine{}, err
	}
	if !bytes.HasPrefix(code, []byte(module.Start)) {
		return Engine{}, fmt.Errorf("%s: expected a WebAssembly module, found something else", name)
	}
	loader, err := os.ReadFile(filepath.Join(filepath.Dir(name), loaderName))
	if errors.Is(err, fs.ErrNotExist) {
		loader, err = toolLoader(name, code)
	}
	return Engine{code, loader}, err
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

func buildEngine() (Engine, error) {
	if _, err := goTool("list", "underpaint/wasm"); err != nil {
		return Engine{}, fmt.Errorf("the engine cannot be built here: %w; run this in the folder of the sources, or name a built engine with --engine FILE", err)
	}
	dir, err := os.MkdirTemp("", "engine")
	if err != nil {
		return Engine{}, err
	}
	defer os.RemoveAll(dir)
	target := filepath.Join(dir, engineName)
	// Neither paths nor the state of a working copy go into the engine: the same
	// sources give the same bytes.
	cmd := exec.Command("go", "build", "-trimpath", "-buildvcs=false", "-ldflags=-s -w", "-o", target, "underpaint/wasm")
	cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	if text, err := cmd.CombinedOutput(); err != nil {
		return Engine{}, fmt.Errorf("building the engine: %w\n%s", err, text)
	}
	code, err := os.ReadFile(target)
	if err != nil {
		return Engine{}, err
	}
	if code, err = module.JoinSegments(code); err != nil {
		return Engine{}, fmt.Errorf("building the engine: %w", err)
	}
	loader, err := toolLoader(target, code)
	return Engine{code, loader}, err
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
