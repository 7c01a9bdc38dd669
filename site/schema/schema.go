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
