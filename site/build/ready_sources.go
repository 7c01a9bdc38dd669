//go:build !release

package build

import "io/fs"

// ready is nil: a program built from the sources builds the engines too.
var ready fs.FS
