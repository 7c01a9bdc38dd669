package folder

import (
	"bytes"
	"path"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// TestPagesNameWhatTheirScriptsLeadTo: all of it, once, and nothing else. What is
// imported is found here without the build's own pattern.
func TestPagesNameWhatTheirScriptsLeadTo(t *testing.T) {
	f := arranged(t, parts(t))
	preloaded := regexp.MustCompile(`<link rel="modulepreload" href="([^"]+)" integrity="[^"]+">`)
	entry := regexp.MustCompile(`<script type="module" src="([^"]+)" integrity="[^"]+">`)
	pages := 0
	for page, html := range f.files {
		m := entry.FindSubmatch(html)
		if path.Ext(page) != ".html" || m == nil {
			continue
		}
		pages++
		at := func(address []byte) string { return path.Join(path.Dir(page), string(address)) }
		want := map[string]bool{}
		reached(f, at(m[1]), want)
		delete(want, at(m[1]))
		got := map[string]bool{}
		for _, m := range preloaded.FindAllSubmatch(html, -1) {
			if got[at(m[1])] {
				t.Errorf("%s names %s twice", page, m[1])
			}
			got[at(m[1])] = true
		}
		for name := range want {
			if !got[name] {
				t.Errorf("%s does not name %s", page, name)
			}
		}
		for name := range got {
			if !want[name] {
				t.Errorf("%s names %s, which its script does not lead to", page, name)
			}
		}
		if len(got) < 20 && page != figuresPage { // its script only shortens tables
			t.Errorf("%s names %d scripts, expected at least 20", page, len(got))
		}
	}
	if pages != 6 {
		t.Errorf("%d pages with a script, expected 6", pages)
	}
}

// reached collects what a script imports, by splitting its lines.
func reached(f folder, name string, all map[string]bool) {
	if all[name] {
		return
	}
	all[name] = true
	for line := range bytes.Lines(f.files[name]) {
		s := string(line)
		if !strings.HasPrefix(s, "import ") && !strings.HasPrefix(s, "export {") && !strings.HasPrefix(s, "export *") {
			continue
		}
		if words := strings.Split(s, `"`); len(words) == 3 {
			reached(f, path.Join(path.Dir(name), words[1]), all)
		}
	}
}

func TestImportsOfScripts(t *testing.T) {
	p := map[string][]byte{
		"a.js":   []byte("import { b } from \"./b.js\";\nimport \"./c/d.js\";\nconst text = 'import { x } from \"./x.js\";';\n"),
		"b.js":   []byte("import { a } from \"./a.js\";\nexport { d } from \"./c/d.js\";\nexport const from = \"./x.js\";\n"),
		"c/d.js": []byte("import {\n  e,\n} from \"../e.js\";\n"),
		"e.js":   []byte("const later = () => import(\"./x.js\");\n"),
	}
	got, err := imports("a.js", p)
	if err != nil || !slices.Equal(got, []string{"b.js", "c/d.js", "e.js"}) {
		t.Errorf("found %v (%v)", got, err)
	}
	delete(p, "e.js")
	if _, err := imports("a.js", p); err == nil || !strings.Contains(err.Error(), "c/d.js") {
		t.Errorf("an import that leads nowhere: %v", err)
	}
}
