package build

import (
	"bytes"
	"path"
	"strings"
	"testing"
)

// TestOneScriptAndOneStyleAPage: each page has the files that its folder names, and
// the folder has no script but those and the workers'.
func TestOneScriptAndOneStyleAPage(t *testing.T) {
	want := map[string]bool{"worker.js": true, "sw.js": true, loaderName: true}
	for name := range sources(t) {
		switch folder, file := path.Split(name); file {
		case scriptSource, styleSource:
			want[strings.TrimSuffix(folder, "/")+strings.Replace(path.Ext(file), "ts", "js", 1)] = true
		}
	}
	made := parts(t)
	for name := range want {
		if len(made[name]) == 0 {
			t.Errorf("%s is not made", name)
		}
	}
	for name := range made {
		if kind := path.Ext(name); (kind == ".js" || kind == ".css" || kind == ".ts") && !want[name] {
			t.Errorf("%s: no page asks for it", name)
		}
	}
	if len(want) != 6+7+3 {
		t.Errorf("%d scripts and style sheets, expected 16: %v", len(want), want)
	}
}

// TestFaultsOfSourcesStopTheBuild: each is named by the file it is in.
func TestFaultsOfSourcesStopTheBuild(t *testing.T) {
	for _, c := range []struct{ name, old, new, says string }{
		{"survey/page.ts", "../shared/trustedtypes.ts", "../shared/trustedtype.ts", "pages/survey/page.ts: expected an imported file that exists"},
		{"rates/page.css", "../styles/all.css", "../styles/al.css", "pages/rates/page.css: expected an imported file that exists"},
		{"why/page.ts", "import ", "import { ", "why/page.ts"},
		{"why/index.html", `{{define "title"}}`, `{{define "name"}}`, "pages/why/index.html"},
		{"why/index.html", `{{define "main" -}}`, `{{define "rest" -}}`, "pages/why/index.html"},
		{"why/index.html", `{{- end}}`, ``, "pages/why/index.html"},
	} {
		broken := sources(t)
		if !bytes.Contains(broken[c.name], []byte(c.old)) {
			t.Fatalf("%s has no %q to change", c.name, c.old)
		}
		broken[c.name] = bytes.Replace(broken[c.name], []byte(c.old), []byte(c.new), 1)
		if _, err := assemble(broken); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s with %q: expected a fault that says %q, got %v", c.name, c.new, c.says, err)
		}
	}
}

// TestEveryPageNamesTheOthers: the foot leads everywhere else, and not to the page itself.
func TestEveryPageNamesTheOthers(t *testing.T) {
	for name, foot := range map[string]string{
		"index.html":         `<footer>` + "\n" + `<p id="foot-links"><a href="about.html">About the figures</a> <a href="words.html">Words</a> <a`,
		"survey/index.html":  `<p id="foot-links"><a href="../">The customer's page</a> <a href="../rates/">Rates</a> <a`,
		"figures/index.html": `<p id="foot-links"><a href="../">The customer's page</a> <a href="../about.html">About the figures</a> <a`,
	} {
		if !bytes.Contains(parts(t)[name], []byte(foot)) {
			t.Errorf("%s: expected the foot %s", name, foot)
		}
	}
}
