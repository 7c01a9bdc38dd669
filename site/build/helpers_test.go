package build

import (
	"bytes"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"sync"
	"testing"

	"underpaint/engine/rates"
	"underpaint/site/module"
	"underpaint/site/pages"
)

// small stands in the place of the real engine, so that these tests need no
// compiler.
var small = Engine{Code: append([]byte(module.Start), bytes.Repeat([]byte("engine "), 1000)...), Customer: append([]byte(module.Start), bytes.Repeat([]byte("less "), 1000)...), Loader: []byte("// loader")}

func sources(t *testing.T) map[string][]byte {
	t.Helper()
	all, err := pages.Files()
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// assembled is what is made of the sources, which takes a moment: made once.
var assembled = sync.OnceValues(func() (map[string][]byte, error) {
	all, err := pages.Files()
	if err != nil {
		return nil, err
	}
	return assemble(all)
})

func parts(t *testing.T) map[string][]byte {
	t.Helper()
	made, err := assembled()
	if err != nil {
		t.Fatal(err)
	}
	all := maps.Clone(made)
	all[engineName], all[customerName], all[loaderName] = small.Code, small.Customer, small.Loader
	return all
}

func sample(t *testing.T) *Rates {
	t.Helper()
	r, err := Check(rates.Sample(), "2026-06-04")
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func arranged(t *testing.T, p map[string][]byte) folder {
	t.Helper()
	f, err := arrange(p, sample(t), nil)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// tree reads a folder on disk: path to content.
func tree(t *testing.T, dir string) map[string]string {
	t.Helper()
	all := map[string]string{}
	err := filepath.WalkDir(dir, func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		data, err := os.ReadFile(name)
		rel, _ := filepath.Rel(dir, name)
		all[filepath.ToSlash(rel)] = string(data)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// sameTrees says which files differ.
func sameTrees(t *testing.T, a, b map[string]string) {
	t.Helper()
	for name := range a {
		if other, ok := b[name]; !ok || other != a[name] {
			t.Errorf("%s differs or is in one folder only", name)
		}
	}
	for name := range b {
		if _, ok := a[name]; !ok {
			t.Errorf("%s is in one folder only", name)
		}
	}
}
