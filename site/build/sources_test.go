package build

import (
	"bytes"
	"path"
	"regexp"
	"strings"
	"testing"
)

// What must hold for the sources of every page, without a browser.

func TestSourcesAskNobodyElseAndRunNoText(t *testing.T) {
	banned := regexp.MustCompile(`innerHTML|outerHTML|insertAdjacentHTML|document\.write|\beval\(|new Function|style="|onclick=`)
	reaching := regexp.MustCompile(`\bfetch\(|XMLHttpRequest|WebSocket|sendBeacon|import\(|\beval\(|new Function`)
	foreign := regexp.MustCompile(`(?:https?:)?//[a-z0-9-]+\.[a-z]`)
	for name, data := range sources(t) {
		if strings.HasPrefix(name, "vendor/") {
			// Libraries as their authors wrote them: they name themselves in a comment and
			// can make markup that nobody here asks for, but may not reach anywhere.
			if m := reaching.Find(data); m != nil {
				t.Errorf("pages/%s holds %q", name, m)
			}
			continue
		}
		if m := banned.Find(data); m != nil {
			t.Errorf("pages/%s holds %q", name, m)
		}
		if path.Ext(name) == ".txt" {
			continue // a licence, which names its authors
		}
		rest := bytes.ReplaceAll(data, []byte("http://www.w3.org/2000/svg"), nil)
		rest = regexp.MustCompile(`(?s)<pre class="licence".*?</pre>`).ReplaceAll(rest, nil)
		if m := foreign.Find(rest); m != nil {
			t.Errorf("pages/%s names another host: %q", name, m)
		}
	}
}

// TestOnlyTheFramedPageSpeaksToAnother: one place sends something to the page
// around a frame, and no page listens to another. Workers and their pages speak
// through objects of their own.
func TestOnlyTheFramedPageSpeaksToAnother(t *testing.T) {
	sends := regexp.MustCompile(`\b(?:parent|opener|top)\.postMessage|BroadcastChannel`)
	listens := regexp.MustCompile(`addEventListener\("message"|window\.onmessage`)
	found := map[string]int{}
	for name, data := range sources(t) {
		if path.Ext(name) != ".ts" {
			continue
		}
		found[name+" sends"] += len(sends.FindAll(data, -1))
		found[name+" listens"] += len(listens.FindAll(data, -1))
	}
	for what, n := range found {
		want := 0
		if what == "shared/embedded.ts sends" || what == "workers/offline.ts listens" {
			want = 1
		}
		if n != want {
			t.Errorf("%s %d times, expected %d", what, n, want)
		}
	}
}

// TestFirstVisit: only what a customer's page loads is counted.
func TestFirstVisit(t *testing.T) {
	f := arranged(t, parts(t))
	for name, counted := range map[string]bool{
		"index.html": true, "rates.json": true, f.dir() + "customer.wasm": true, f.dir() + "engine.wasm": false, f.dir() + "customer.js": true, f.dir() + "drawings/sides.json": true,
		f.dir() + "fonts/besley.woff2": true, f.dir() + "fonts/franklin.woff2": true,
		"about.html": false, "survey/index.html": false, f.dir() + "survey.js": false, f.dir() + "plain.css": false, f.dir() + "samples/two-door.json": false,
	} {
		if _, there := f.files[name]; !there {
			t.Fatalf("%s is not there", name)
		}
		var m Made
		m.count(f, name, []int{500, 7})
		if (m.FirstVisitBrotli == 7) != counted || m.Files != 2 || m.Bytes != 507 {
			t.Errorf("%s: counted as %+v, expected in the first visit %v", name, m, counted)
		}
	}
	var m Made
	for name, size := range map[string]int{"pickup.json": 30, "four_door_saloon.json": 50, "open_two_seater.json": 40, "sides.json": 7} {
		m.count(f, f.dir()+"drawings/"+name, []int{500, size})
	}
	if m.FirstVisitBrotli != 57 {
		t.Errorf("of opened-out drawings %d bytes are counted, expected the largest, 50, and 7 of the small ones", m.FirstVisitBrotli)
	}
}
