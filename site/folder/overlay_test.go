package folder

import (
	"errors"
	"go/parser"
	"go/token"
	"strings"
	"testing"
)

// TestEmbeddedFilesBecomeTexts: what the Go tool reads for a browser is Go, has the
// bytes of the file, and no longer imports embed; what is not understood is refused.
func TestEmbeddedFilesBecomeTexts(t *testing.T) {
	read := func(name string) ([]byte, error) {
		if name == "data/a.json" {
			return []byte("{\"a\": \"é\\n\"}\n"), nil
		}
		return nil, errors.New(name + " is not there")
	}
	good := "package p\n\nimport (\n\t_ \"embed\"\n\t\"sync\"\n)\n\n//go:embed data/a.json\nvar a []byte\n\nvar once sync.Once\n"
	out, err := withTexts(good, read)
	if err != nil || !strings.Contains(out, `var a = []byte("{\"a\": \"é\\n\"}\n")`) || strings.Contains(out, "embed") {
		t.Errorf("%v\n%s", err, out)
	}
	if _, err := parser.ParseFile(token.NewFileSet(), "p.go", out, 0); err != nil {
		t.Error(err)
	}
	for name, source := range map[string]string{
		"a folder":  strings.Replace(good, "a []byte", "a embed.FS", 1),
		"a text":    strings.Replace(good, "a []byte", "a string", 1),
		"not there": strings.Replace(good, "a.json", "b.json", 1),
		"used":      strings.Replace(good, "_ \"embed\"", "\"embed\"", 1),
	} {
		if _, err := withTexts(source, read); err == nil {
			t.Errorf("%s: passed", name)
		}
	}
}
