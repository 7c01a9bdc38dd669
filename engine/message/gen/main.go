// Command gen reads the reply structs of package message and generates the Go code that
// writes them as JSON, and their types in TypeScript. Start with [read]; run it with
//
//	go generate ./engine/message
//
// Generated code needs no reflection, which keeps the engine small. The test of this
// package fails when the generated files are out of date.
package main

import (
	"fmt"
	"os"
	"path/filepath"
)

// types is the file of the TypeScript types, relative to the folder of package message.
const types = "../../site/pages/shared/replies.ts"

func main() {
	if err := generate("."); err != nil {
		fmt.Fprintln(os.Stderr, "gen:", err)
		os.Exit(1)
	}
}

// generate writes both files for the package in dir.
func generate(dir string) error {
	files, err := generated(dir)
	if err != nil {
		return err
	}
	for name, text := range files {
		if err := os.WriteFile(filepath.Join(dir, name), text, 0o644); err != nil {
			return err
		}
	}
	return nil
}

// generated returns the contents of both files, by file name.
func generated(dir string) (map[string][]byte, error) {
	all, err := read(dir)
	if err != nil {
		return nil, err
	}
	code, err := golang(all)
	if err != nil {
		return nil, err
	}
	text, err := typescript(all)
	return map[string][]byte{written: code, types: []byte(text)}, err
}
