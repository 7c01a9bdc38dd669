package main

import (
	"embed"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"strings"
)

//go:embed pages
var sources embed.FS

// maxRates is the largest rates file taken, in bytes; the page refuses a
// larger one too.
const maxRates = 2 << 20

// made says what a build came to. Sizes are bytes.
type made struct {
	ID               string
	EngineBytes      int
	EngineBrotli     int
	FirstVisitBrotli int
}

// build writes the whole folder. An engine path of "" builds ./wasm first.
// The output folder may exist; files of older builds in it stay, so that a
// visitor who is in the middle of one can finish.
func build(outDir, ratesPath, enginePath string) (made, error) {
	rates, err := readRates(ratesPath)
	if err != nil {
		return made{}, err
	}
	engine, err := engineBytes(enginePath)
	if err != nil {
		return made{}, err
	}
	loader, err := engineLoader()
	if err != nil {
		return made{}, err
	}
	parts, err := readSources()
	if err != nil {
		return made{}, err
	}
	parts["engine.wasm"] = engine
	parts["wasm_exec.js"] = loader
	f, err := arrange(parts, rates)
	if err != nil {
		return made{}, err
	}
	return f.write(outDir)
}

// readSources reads the embedded pages by their path under pages/.
func readSources() (map[string][]byte, error) {
	parts := map[string][]byte{}
	err := fs.WalkDir(sources, "pages", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		data, err := sources.ReadFile(name)
		parts[strings.TrimPrefix(name, "pages/")] = data
		return err
	})
	return parts, err
}

func readRates(name string) ([]byte, error) {
	data, err := os.ReadFile(name)
	if err != nil {
		return nil, err
	}
	if len(data) > maxRates {
		return nil, fmt.Errorf("%s: expected at most %d bytes, found %d", name, maxRates, len(data))
	}
	return data, nil
}

// engineBytes reads the engine, or builds it when no path is given.
func engineBytes(enginePath string) ([]byte, error) {
	if enginePath != "" {
		return os.ReadFile(enginePath)
	}
	dir, err := os.MkdirTemp("", "engine")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	target := filepath.Join(dir, "engine.wasm")
	cmd := exec.Command("go", "build", "-trimpath", "-ldflags=-s -w", "-o", target, "underpaint/wasm")
	cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	if text, err := cmd.CombinedOutput(); err != nil {
		return nil, fmt.Errorf("building the engine: %w\n%s", err, text)
	}
	return os.ReadFile(target)
}

// engineLoader reads the loader that belongs to the compiler in use: loader
// and engine must come from the same Go release, so it is never kept here.
func engineLoader() ([]byte, error) {
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		return nil, fmt.Errorf("asking for GOROOT: %w", err)
	}
	return os.ReadFile(filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm", "wasm_exec.js"))
}

// isPage says whether a source file keeps its own name at the top of the
// folder. All others go into the folder of the build.
func isPage(name string) bool {
	return path.Ext(name) == ".html" || name == "sw.js"
}
