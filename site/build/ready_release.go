//go:build release

package build

import (
	"embed"
	"io/fs"
)

//go:embed ready
var embedded embed.FS

// ready has the engines of a released program.
var ready fs.FS = embedded
