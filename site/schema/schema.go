// Package schema holds the JSON Schemas of the files that people write or keep: a shop's
// rates, a car, past jobs. Start with [Of].
//
// The decoders in engine do not read them; tests beside each decoder compare the two.
package schema

import (
	"embed"
	"io/fs"
)

//go:embed *.schema.json
var files embed.FS

// Names are the kinds of file that have a schema.
var Names = []string{"rates", "car", "past-jobs"}

// Of returns the schema of a kind of file, one of [Names]. The error for another name is
// that of io/fs.
func Of(name string) ([]byte, error) { return fs.ReadFile(files, name+".schema.json") }
