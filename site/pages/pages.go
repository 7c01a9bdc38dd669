package pages

import (
	"embed"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strings"
)

//go:embed *
var sources embed.FS

// kinds are the name endings that a page may consist of. The licence of a type face is a
// text beside it.
var kinds = []string{".css", ".html", ".js", ".json", ".svg", ".ts", ".woff2"}

// Files gives every source of the pages by its path below this folder, with
// forward slashes.
func Files() (map[string][]byte, error) { return read(sources) }

func read(tree fs.FS) (map[string][]byte, error) {
	files := map[string][]byte{}
	err := fs.WalkDir(tree, ".", func(name string, entry fs.DirEntry, err error) error {
		licence := path.Dir(name) == "fonts" && path.Ext(name) == ".txt"
		hidden := name != "." && strings.IndexAny(path.Base(name), "._") == 0
		switch {
		case err != nil:
			return err
		case hidden && entry.IsDir():
			return fs.SkipDir
		case hidden || entry.IsDir() || path.Ext(name) == ".go" || strings.HasSuffix(name, ".d.ts"):
			return nil
		case !licence && !slices.Contains(kinds, path.Ext(name)):
			return fmt.Errorf("site/pages/%s: expected a file that ends in one of %s", name, strings.Join(kinds, ", "))
		}
		files[name], err = fs.ReadFile(tree, name)
		return err
	})
	return files, err
}
