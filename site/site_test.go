package main

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"encoding/base64"
	"encoding/json"
	"io"
	"net/http"
	"net/http/httptest"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/andybalholm/brotli"

	"underpaint/engine/rates"
)

// parts is a full set of sources with a small engine in the place of the real
// one, so that these tests need no compiler.
func parts(t *testing.T) map[string][]byte {
	t.Helper()
	all, err := readSources()
	if err != nil {
		t.Fatal(err)
	}
	all["engine.wasm"] = bytes.Repeat([]byte("engine "), 1000)
	all["wasm_exec.js"] = []byte("// loader")
	return all
}

func builtIn(t *testing.T, dir string) folder {
	t.Helper()
	f, err := arrange(parts(t), rates.Sample())
	if err != nil {
		t.Fatal(err)
	}
	if _, err := f.write(dir); err != nil {
		t.Fatal(err)
	}
	return f
}

func TestSameSourcesSameFolder(t *testing.T) {
	a, b := t.TempDir(), t.TempDir()
	first := builtIn(t, a)
	builtIn(t, b)
	for name := range first.files {
		for _, suffix := range []string{"", ".br", ".gz"} {
			one, errA := os.ReadFile(filepath.Join(a, name+suffix))
			two, errB := os.ReadFile(filepath.Join(b, name+suffix))
			if (errA == nil) != (errB == nil) || !bytes.Equal(one, two) {
				t.Errorf("%s%s differs between two builds", name, suffix)
			}
		}
	}
}

func TestBuildIDFollowsContent(t *testing.T) {
	base := parts(t)
	id := buildID(base)
	for name := range base {
		changed := parts(t)
		changed[name] = append(bytes.Clone(changed[name]), ' ')
		if buildID(changed) == id {
			t.Errorf("a change of %s leaves the id as it was", name)
		}
	}
}

func TestEveryReferenceOfAPageExists(t *testing.T) {
	f := builtIn(t, t.TempDir())
	reference := regexp.MustCompile(`(?:src|href)="([^"#]+)"`)
	imported := regexp.MustCompile(`(?:from "|new URL\(")([\w./-]+)"`)
	checked := 0
	for name, data := range f.files {
		var found [][][]byte
		base := ""
		switch filepath.Ext(name) {
		case ".html":
			base = path.Dir(name)
			found = reference.FindAllSubmatch(data, -1)
		case ".js":
			base = path.Dir(name)
			found = imported.FindAllSubmatch(data, -1)
		}
		for _, m := range found {
			target := path.Join(base, string(m[1]))
			if strings.HasSuffix(string(m[1]), "/") {
				target = path.Join(target, "index.html")
			}
			checked++
			if _, ok := f.files[target]; !ok {
				t.Errorf("%s names %s, which is not there", name, target)
			}
		}
	}
	if checked < 40 {
		t.Errorf("only %d references found: the patterns above no longer fit", checked)
	}
}

func TestMissingMarkFailsTheBuild(t *testing.T) {
	for name, mark := range map[string]string{"index.html": markSettings, "survey/index.html": markSettings, "sw.js": markFiles, "about.html": markBuildDir, "words.html": markBuildDir} {
		p := parts(t)
		p[name] = bytes.ReplaceAll(p[name], []byte(mark), []byte("x"))
		if _, err := arrange(p, rates.Sample()); err == nil || !strings.Contains(err.Error(), name) {
			t.Errorf("%s without %s was built all the same", name, mark)
		}
	}
}

// What a visitor without scripts reads comes from the rates, as text.
func TestShopTextIsWrittenAndEscaped(t *testing.T) {
	f := builtIn(t, t.TempDir())
	for _, must := range []string{"an hour</li>", "Rates check code ", "strip and survey", "Not in a range"} {
		if !bytes.Contains(f.files["index.html"], []byte(must)) {
			t.Errorf("index.html lacks %q", must)
		}
	}
	var shop struct{ Shop struct{ Name string } }
	if err := json.Unmarshal(rates.Sample(), &shop); err != nil || shop.Shop.Name == "" {
		t.Fatal("no shop name in the sample", err)
	}
	text, err := shopText(bytes.Replace(rates.Sample(), []byte(shop.Shop.Name), []byte("<b>Shop</b>"), 1))
	if err != nil || strings.Contains(text, "<b>") || !strings.Contains(text, "&lt;b&gt;Shop") {
		t.Errorf("a name with markup: %v\n%.200s", err, text)
	}
	if _, err := shopText([]byte("{}")); err == nil {
		t.Error("refused rates were written out")
	}
}

// The list for offline use carries sums in the form of the W3C Subresource
// Integrity recommendation.
func TestListingHoldsTrueSums(t *testing.T) {
	f := builtIn(t, t.TempDir())
	text := regexp.MustCompile(`files: (\[.*\]) \};`).FindSubmatch(f.files["sw.js"])
	if text == nil {
		t.Fatal("no list in sw.js")
	}
	var all []listed
	if err := json.Unmarshal(text[1], &all); err != nil {
		t.Fatal(err)
	}
	names := map[string]bool{}
	for _, l := range all {
		sum := sha256.Sum256(f.files[l.Path])
		if l.Integrity != "sha256-"+base64.StdEncoding.EncodeToString(sum[:]) {
			t.Errorf("%s: wrong sum", l.Path)
		}
		names[l.Path] = true
	}
	for name := range f.files {
		wanted := name != "rates.json" && name != "build.json" && name != "sw.js"
		if names[name] != wanted {
			t.Errorf("%s: in the list %v, expected %v", name, names[name], wanted)
		}
	}
}

func TestSourcesAskNobodyElseAndRunNoText(t *testing.T) {
	banned := regexp.MustCompile(`innerHTML|outerHTML|insertAdjacentHTML|document\.write|\beval\(|new Function|style="|onclick=`)
	foreign := regexp.MustCompile(`(?:https?:)?//[a-z0-9-]+\.[a-z]`)
	for name, data := range parts(t) {
		if ext := filepath.Ext(name); ext == ".wasm" || name == "wasm_exec.js" {
			continue
		}
		if m := banned.Find(data); m != nil {
			t.Errorf("pages/%s holds %q", name, m)
		}
		rest := bytes.ReplaceAll(data, []byte("http://www.w3.org/2000/svg"), nil)
		if m := foreign.Find(rest); m != nil {
			t.Errorf("pages/%s names another host: %q", name, m)
		}
	}
}

func TestPagesCarryThePolicyOfTheServer(t *testing.T) {
	meta := strings.TrimSuffix(policy, "; frame-ancestors 'self'")
	for name, data := range parts(t) {
		if filepath.Ext(name) == ".html" && !bytes.Contains(data, []byte(`<meta http-equiv="Content-Security-Policy" content="`+meta+`">`)) {
			t.Errorf("pages/%s: another policy than the server's", name)
		}
	}
}

func get(t *testing.T, h http.Handler, method, target, accept string) *http.Response {
	t.Helper()
	r := httptest.NewRequest(method, target, nil)
	r.Header.Set("Accept-Encoding", accept)
	w := httptest.NewRecorder()
	h.ServeHTTP(w, r)
	return w.Result()
}

func TestServer(t *testing.T) {
	dir := t.TempDir()
	f := builtIn(t, dir)
	h := handler(dir)
	engine := "/v-" + f.id + "/engine.wasm"
	for _, c := range []struct {
		method, target, accept string
		status                 int
		kind, coding, cache    string
	}{
		{"GET", "/", "gzip, deflate, br", 200, "text/html; charset=utf-8", "br", "no-cache"},
		{"GET", "/survey", "", 301, "text/html; charset=utf-8", "", ""},
		{"GET", "/survey/", "", 200, "text/html; charset=utf-8", "", "no-cache"},
		{"GET", "/index.html", "gzip", 200, "text/html; charset=utf-8", "gzip", "no-cache"},
		{"GET", engine, "br;q=0, gzip;q=0.5", 200, "application/wasm", "gzip", "public, max-age=31536000, immutable"},
		{"GET", engine, "", 200, "application/wasm", "", "public, max-age=31536000, immutable"},
		{"HEAD", "/rates.json", "", 200, "application/json; charset=utf-8", "", "no-cache"},
		{"GET", "/none.html", "br", 404, "text/plain; charset=utf-8", "", ""},
		{"GET", "/index.html.br", "", 404, "text/plain; charset=utf-8", "", ""},
		{"GET", "/../site_test.go", "", 404, "text/plain; charset=utf-8", "", ""},
		{"POST", "/", "", 405, "text/plain; charset=utf-8", "", ""},
	} {
		r := get(t, h, c.method, c.target, c.accept)
		got := []string{r.Header.Get("Content-Type"), r.Header.Get("Content-Encoding"), r.Header.Get("Cache-Control")}
		if r.StatusCode != c.status || got[0] != c.kind || got[1] != c.coding || got[2] != c.cache {
			t.Errorf("%s %s (%s): %d %q, expected %d %q %q %q", c.method, c.target, c.accept, r.StatusCode, got, c.status, c.kind, c.coding, c.cache)
		}
		if r.Header.Get("Content-Security-Policy") != policy || r.Header.Get("X-Content-Type-Options") != "nosniff" {
			t.Errorf("%s %s: security headers are missing", c.method, c.target)
		}
	}
}

func TestVariantsUnpackToTheFile(t *testing.T) {
	dir := t.TempDir()
	f := builtIn(t, dir)
	h := handler(dir)
	for _, target := range []string{"/", "/v-" + f.id + "/page.js", "/v-" + f.id + "/engine.wasm"} {
		plain, _ := io.ReadAll(get(t, h, "GET", target, "").Body)
		small := get(t, h, "GET", target, "br")
		if back, err := io.ReadAll(brotli.NewReader(small.Body)); err != nil || !bytes.Equal(back, plain) {
			t.Errorf("%s: brotli gives something else (%v)", target, err)
		}
		z, err := gzip.NewReader(get(t, h, "GET", target, "gzip").Body)
		if err != nil {
			t.Fatal(err)
		}
		if back, err := io.ReadAll(z); err != nil || !bytes.Equal(back, plain) {
			t.Errorf("%s: gzip gives something else (%v)", target, err)
		}
	}
}

func TestCommandLine(t *testing.T) {
	for _, args := range [][]string{nil, {"mend"}, {"build"}, {"build", "-out", t.TempDir()}, {"build", "-out", t.TempDir(), "-rates", "none.json"}, {"serve"}, {"build", "x"}} {
		if err := run(args, io.Discard); err == nil {
			t.Errorf("%q: expected an error", args)
		}
	}
	large := filepath.Join(t.TempDir(), "large.json")
	if err := os.WriteFile(large, make([]byte, maxRates+1), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := readRates(large); err == nil {
		t.Error("a rates file over the limit was read")
	}
}
