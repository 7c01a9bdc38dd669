package build

import (
	"encoding/json"
	"html"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"underpaint/site/pages"
)

// What is in the folder, and whose it is (ASVS v5.0.0-15.1.2).

func componentsPage(t *testing.T) string {
	t.Helper()
	all, err := pages.Files()
	if err != nil {
		t.Fatal(err)
	}
	return html.UnescapeString(string(all["plain/components.html"]))
}

// licenceIn compares with the licence as its authors wrote it.
func licenceIn(t *testing.T, page, file string) {
	t.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(page, strings.TrimSpace(string(text))) {
		t.Errorf("components.html does not have %s word for word", filepath.Base(file))
	}
}

// modulesOf lists the modules by others in programs for one system: name and version to
// folder.
func modulesOf(t *testing.T, system, kind string, programs ...string) map[string]string {
	t.Helper()
	list := exec.Command("go", append([]string{"list", "-deps", "-f", "{{with .Module}}{{if not .Main}}{{.Path}} {{.Version}}\t{{.Dir}}{{end}}{{end}}"}, programs...)...)
	list.Env = append(os.Environ(), "GOOS="+system, "GOARCH="+kind)
	out, err := list.Output()
	if err != nil {
		t.Fatal(err)
	}
	modules := map[string]string{}
	for line := range strings.Lines(string(out)) {
		if name, dir, is := strings.Cut(strings.TrimSpace(line), "\t"); is {
			modules[name] = dir
		}
	}
	return modules
}

func TestEveryPartByOthersIsListedWithItsLicence(t *testing.T) {
	page := componentsPage(t)
	const program = "underpaint/engine/cmd/underpaint"
	for _, of := range []struct {
		system, kind string
		programs     []string
		atLeast      int
	}{
		{"js", "wasm", []string{wholeProgram, customerProgram}, 3},
		{"linux", "amd64", []string{program}, 6},
		{"darwin", "arm64", []string{program}, 6},
		{"windows", "amd64", []string{program}, 7},
	} {
		modules := modulesOf(t, of.system, of.kind, of.programs...)
		if len(modules) < of.atLeast {
			t.Errorf("%s: only %v found: the list is no longer made", of.system, modules)
		}
		for name, dir := range modules {
			if !strings.Contains(page, ">"+name+"<") {
				t.Errorf("%s: %s is in a program and not in components.html", of.system, name)
			}
			licences, err := filepath.Glob(filepath.Join(dir, "LICENSE*"))
			if err != nil || len(licences) != 1 {
				t.Fatalf("%s: licences %q (%v)", name, licences, err)
			}
			licenceIn(t, page, licences[0])
		}
	}
	tests, err := goTool("list", "-m", "-f", "{{.Path}} {{.Version}}\t{{.Dir}}", "github.com/leanovate/gopter")
	name, dir, _ := strings.Cut(tests, "\t")
	if err != nil || !strings.Contains(page, ">"+name+"<") {
		t.Errorf("%s tests the sums and is not in components.html (%v)", name, err)
	}
	licenceIn(t, page, filepath.Join(dir, "LICENSE"))
	root, err := goTool("env", "GOROOT")
	if err != nil {
		t.Fatal(err)
	}
	licenceIn(t, page, filepath.Join(root, "LICENSE"))
	licences := 0
	for name := range sources(t) {
		if (strings.HasPrefix(name, "vendor/") || path.Ext(name) == ".woff2") && !strings.Contains(page, ">"+name+"<") {
			t.Errorf("%s is by others and not in components.html", name)
		}
		if path.Ext(name) == ".txt" {
			licenceIn(t, page, filepath.Join("..", "pages", filepath.FromSlash(name)))
			licences++
		}
	}
	if licences != 2 {
		t.Errorf("%d licences of type faces, expected 2", licences)
	}
	text, err := os.ReadFile(filepath.Join("..", "package.json"))
	var pinned struct{ DevDependencies map[string]string }
	if err := json.Unmarshal(text, &pinned); err != nil {
		t.Fatal(err)
	}
	if code := "qrcode-generator"; err != nil || !strings.Contains(page, ">"+code+" "+pinned.DevDependencies[code]+"<") {
		t.Errorf("components.html names another %s than the pinned one (%v)", code, err)
	}
}

// TestTheFolderHoldsNothingElse: no working files, no maps to sources, nothing
// hidden (ASVS v5.0.0-13.4.1, 15.2.3).
func TestTheFolderHoldsNothingElse(t *testing.T) {
	dir := t.TempDir()
	m, err := Build(dir, sample(t), small)
	if err != nil {
		t.Fatal(err)
	}
	known := parts(t)
	inBuild := "v-" + m.ID + "/"
	mapped := regexp.MustCompile(`[#@] ?source(Mapping)?URL=`)
	for name, data := range tree(t, dir) {
		plain := strings.TrimSuffix(strings.TrimSuffix(name, ".br"), ".gz")
		source := strings.TrimPrefix(plain, inBuild)
		_, is := known[source]
		own := plain == "rates.json" || plain == "build.json"
		if !is && !own || is && isPage(source) == strings.HasPrefix(plain, inBuild) {
			t.Errorf("%s: nobody means it to be there", name)
		}
		if strings.HasPrefix(path.Base(name), ".") || strings.Contains(name, "/.") || path.Ext(plain) == ".map" || mapped.MatchString(data) {
			t.Errorf("%s is hidden, or leads to sources", name)
		}
	}
}

// TestEveryPageIsStrict: what no page may have, over the list of sources_test.go:
// handlers in markup of any name, addresses that run text, scripts and styles in
// the page itself, and what looks for its globals by the id of an element.
func TestEveryPageIsStrict(t *testing.T) {
	markup := regexp.MustCompile(`(?i)\son[a-z]+\s*=|javascript:|<script(?:\s[^>]*)?>[^<]|<style|<base|<iframe|<object|<embed|<form|http-equiv="refresh"|\ssrcdoc`)
	code := regexp.MustCompile(`setAttribute\("(?:on|style|srcdoc)|\bset(?:Timeout|Interval)\("|createContextualFragment|parseFromString|\.srcdoc\b|document\.(?:cookie|domain|all)|\bsetHTMLUnsafe|javascript:|window\[[^\]]`)
	checked := 0
	for name, data := range sources(t) {
		var found []byte
		switch {
		case strings.HasPrefix(name, "vendor/"):
			continue
		case path.Ext(name) == ".html":
			found = markup.Find(regexp.MustCompile(`(?s)<pre.*?</pre>`).ReplaceAll(data, nil))
		case path.Ext(name) == ".ts":
			found = code.Find(data)
		default:
			continue
		}
		checked++
		if found != nil {
			t.Errorf("pages/%s holds %q", name, found)
		}
	}
	if checked < 60 {
		t.Errorf("only %d files looked at", checked)
	}
}
