// Command gen writes, from the reply structs of package message, the Go code that
// writes them as JSON and their types in TypeScript. Start with [read]; run it with
//
//	go generate ./engine/message
//
// Nothing that ships looks at types while it runs, which keeps the engine small; the
// test of this package fails when the generated files are not up to date.
package main

import (
	"fmt"
	"os"
	"path/filepath"
)

// types is the file with the types in TypeScript, from the folder of package message.
const types = "../../site/pages/shared/replies.ts"

func main() {
	if err := generate("."); err != nil {
		fmt.Fprintln(os.Stderr, "gen:", err)
		os.Exit(1)
	}
}

// generate writes both files for the package in a folder.
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

// generated is what belongs in both files, by their names.
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
