package pages

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"
)

// TestFilesAreThoseOfTheFolder compares with the folder on disk, so that a page
// folder cannot be forgotten.
func TestFilesAreThoseOfTheFolder(t *testing.T) {
	files, err := Files()
	if err != nil {
		t.Fatal(err)
	}
	found := 0
	err = filepath.WalkDir(".", func(name string, entry os.DirEntry, err error) error {
		if err != nil || entry.IsDir() || filepath.Ext(name) == ".go" || strings.HasSuffix(name, ".d.ts") || strings.HasPrefix(filepath.Base(name), ".") {
			return err
		}
		want, err := os.ReadFile(name)
		if got, ok := files[filepath.ToSlash(name)]; !ok || string(got) != string(want) {
			t.Errorf("%s is not among the files, or not the same", name)
		}
		found++
		return err
	})
	if err != nil || found < 60 || len(files) != found {
		t.Errorf("%d files on disk, %d given (%v)", found, len(files), err)
	}
}

func TestWhatIsTakenAndWhatIsRefused(t *testing.T) {
	page := &fstest.MapFile{Data: []byte("x")}
	for _, c := range []struct {
		name  string
		taken bool
		fault string
	}{
		{"index.html", true, ""},
		{"later/index.html", true, ""},
		{"later/deeper/a.json", true, ""},
		{"pages.go", false, ""},
		{"later/a_test.go", false, ""},
		{".a.js.swp", false, ""},
		{"_draft.html", false, ""},
		{".hidden/a.js", false, ""},
		{"later/notes.txt", false, "later/notes.txt"},
		{"page.js~", false, "page.js~"},
		{"README", false, "README"},
	} {
		files, err := read(fstest.MapFS{c.name: page})
		if c.fault != "" {
			if err == nil || !strings.Contains(err.Error(), c.fault) {
				t.Errorf("%s: expected a fault that names it, got %v", c.name, err)
			}
			continue
		}
		if _, ok := files[c.name]; err != nil || ok != c.taken {
			t.Errorf("%s: taken %v, expected %v (%v)", c.name, ok, c.taken, err)
		}
	}
}
