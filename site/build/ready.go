package build

import (
	"bytes"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"github.com/andybalholm/brotli"
)

// A released program (build tag release) has the engines in it, compressed as a host hands
// them out, so that it makes the folder without Go, without the sources and without
// compressing the engines anew, which takes longer than all the rest.

const (
	readyFolder = "ready" // beside this file, written by WriteReady, not kept in the sources
	packedEnd   = ".br"
)

// WriteReady builds the engines and writes them into dir in the form in which a released
// program embeds them.
func WriteReady(dir string) error {
	e, err := buildEngines()
	if err != nil {
		return err
	}
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	for name, data := range map[string][]byte{engineName + packedEnd: brotliOf(e.Code), customerName + packedEnd: brotliOf(e.Customer), loaderName: e.Loader} {
		if err := putInPlace(filepath.Join(dir, name), data); err != nil {
			return err
		}
	}
	return nil
}

// readReady reads what WriteReady wrote.
func readReady(files fs.FS) (e Engine, err error) {
	e.packed = map[string][]byte{}
	unpack := func(name string) ([]byte, error) {
		packed, err := fs.ReadFile(files, readyFolder+"/"+name+packedEnd)
		if err != nil {
			return nil, err
		}
		e.packed[name] = packed
		data, err := io.ReadAll(brotli.NewReader(bytes.NewReader(packed)))
		if err != nil {
			return nil, fmt.Errorf("%s%s: %w", name, packedEnd, err)
		}
		return data, nil
	}
	if e.Code, err = unpack(engineName); err != nil {
		return Engine{}, err
	}
	if e.Customer, err = unpack(customerName); err != nil {
		return Engine{}, err
	}
	e.Loader, err = fs.ReadFile(files, readyFolder+"/"+loaderName)
	return e, err
}
