package serve

import (
	"bytes"
	"io"
	"io/fs"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"underpaint/engine/rates"
	"underpaint/site/build"
)

// builtIn makes a folder with a small engine in the place of the real one, so
// that these tests need no compiler, and gives the name of the build.
func builtIn(t *testing.T, dir string) string {
	t.Helper()
	r, err := build.Check(rates.Sample(), "2026-06-04")
	if err != nil {
		t.Fatal(err)
	}
	m, err := build.Build(dir, r, build.Engine{Code: bytes.Repeat([]byte("engine "), 1000), Customer: bytes.Repeat([]byte("less "), 1000), Loader: []byte("// loader")})
	if err != nil {
		t.Fatal(err)
	}
	return m.ID
}

func TestPagesCarryThePolicyOfTheServer(t *testing.T) {
	dir := t.TempDir()
	builtIn(t, dir)
	found := 0
	err := filepath.WalkDir(dir, func(name string, _ fs.DirEntry, err error) error {
		if err != nil || filepath.Ext(name) != ".html" {
			return err
		}
		data, err := os.ReadFile(name)
		found++
		if !bytes.Contains(data, []byte(`<meta http-equiv="Content-Security-Policy" content="`+build.Policy+`">`)) {
			t.Errorf("%s: another policy than the server's", name)
		}
		return err
	})
	if err != nil || found != 12 {
		t.Errorf("%d pages, expected 12 (%v)", found, err)
	}
}

// TestHostsCarryThePolicyOfTheServer: what shops are given for nginx; that nginx then
// sends it is measured by tests/load.
func TestHostsCarryThePolicyOfTheServer(t *testing.T) {
	conf, err := os.ReadFile("../hosts/nginx.conf")
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{`Content-Security-Policy "` + build.Policy + `; frame-ancestors $frames" always;`, `set $frames "'none'";`, `set $frames "'self'";`} {
		if !bytes.Contains(conf, []byte(want)) {
			t.Errorf("hosts/nginx.conf: expected %s", want)
		}
	}
	for kind, name := range types {
		if !bytes.Contains(conf, []byte("\t"+strings.Split(name, ";")[0]+" "+kind[1:]+";\n")) {
			t.Errorf("hosts/nginx.conf: expected the kind %s for %s", name, kind)
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
	h := handler(dir)
	engine := "/v-" + builtIn(t, dir) + "/engine.wasm"
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
		{"GET", "/rates.json", "br, gzip", 200, "application/json; charset=utf-8", "", "no-cache"},
		{"GET", "/index.html.br", "", 404, "text/plain; charset=utf-8", "", ""},
		{"GET", "/../site_test.go", "", 404, "text/plain; charset=utf-8", "", ""},
		{"POST", "/", "", 405, "text/plain; charset=utf-8", "", ""},
	} {
		r := get(t, h, c.method, c.target, c.accept)
		got := []string{r.Header.Get("Content-Type"), r.Header.Get("Content-Encoding"), r.Header.Get("Cache-Control")}
		if r.StatusCode != c.status || got[0] != c.kind || got[1] != c.coding || got[2] != c.cache {
			t.Errorf("%s %s (%s): %d %q, expected %d %q %q %q", c.method, c.target, c.accept, r.StatusCode, got, c.status, c.kind, c.coding, c.cache)
		}
		headersAsSaid(t, c.method+" "+c.target, r, c.target == "/" || c.target == "/index.html")
	}
}

// headersAsSaid: every answer, refusals too, has all of them and no other.
func headersAsSaid(t *testing.T, what string, r *http.Response, mayBeFramed bool) {
	t.Helper()
	frames := framedByNone
	if mayBeFramed {
		frames = framedByOwn
	}
	want := map[string]string{
		"Content-Security-Policy":      build.Policy + frames,
		"X-Content-Type-Options":       "nosniff",
		"Referrer-Policy":              "no-referrer",
		"Cross-Origin-Opener-Policy":   "same-origin",
		"Cross-Origin-Resource-Policy": "same-origin",
	}
	for name, value := range want {
		if got := r.Header.Values(name); len(got) != 1 || got[0] != value {
			t.Errorf("%s: %s is %q, expected %q", what, name, got, value)
		}
	}
	plain := []string{"Content-Type", "Content-Encoding", "Content-Length", "Cache-Control", "Vary", "Accept-Ranges", "Last-Modified", "Location", "Allow"}
	for name := range r.Header {
		if _, ours := want[name]; !ours && !slices.Contains(plain, name) {
			t.Errorf("%s: an answer has a header that nobody means it to have: %s", what, name)
		}
	}
}

// TestEveryFileOfAFolderIsServed: a kind of file that a page needs and the server
// does not know would only be missed in a browser.
func TestEveryFileOfAFolderIsServed(t *testing.T) {
	dir := t.TempDir()
	builtIn(t, dir)
	h, served := handler(dir), 0
	err := filepath.WalkDir(dir, func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() || filepath.Ext(name) == ".br" || filepath.Ext(name) == ".gz" {
			return err
		}
		target, _ := filepath.Rel(dir, name)
		want, err := os.ReadFile(name)
		r := get(t, h, "GET", "/"+filepath.ToSlash(target), "")
		headersAsSaid(t, target, r, target == "index.html")
		if got, _ := io.ReadAll(r.Body); r.StatusCode != http.StatusOK || !bytes.Equal(got, want) {
			t.Errorf("%s: %d", target, r.StatusCode)
		}
		served++
		return err
	})
	if err != nil || served < 40 {
		t.Errorf("%d files served (%v)", served, err)
	}
}
