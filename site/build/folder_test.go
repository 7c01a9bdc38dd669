package build

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"encoding/base64"
	"encoding/json"
	"io"
	"path"
	"regexp"
	"strings"
	"testing"

	"github.com/andybalholm/brotli"

	"underpaint/engine/rates"
)

func TestSameSourcesSameFolder(t *testing.T) {
	a, b := t.TempDir(), t.TempDir()
	for _, dir := range []string{a, b} {
		m, err := Build(dir, sample(t), small)
		if err != nil {
			t.Fatal(err)
		}
		total := 0
		for _, data := range tree(t, dir) {
			total += len(data)
		}
		if m.Files != len(tree(t, dir)) || m.Bytes != total {
			t.Errorf("%d files of %d bytes are said, %d of %d are there", m.Files, m.Bytes, len(tree(t, dir)), total)
		}
	}
	sameTrees(t, tree(t, a), tree(t, b))
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

// A script names files from where it lies itself, or from where its page lies: in
// the folder of the same name at the top.
func TestEveryReferenceOfAPageExists(t *testing.T) {
	f := arranged(t, parts(t))
	reference := regexp.MustCompile(`(?:src|href)="([^"#]+)"`)
	imported := regexp.MustCompile(`(?:from |new URL\()"([\w./-]+)"`)
	fromPage := regexp.MustCompile(`new URL\("([\w./-]+)", location\.href\)`)
	checked := 0
	check := func(name, base string, pattern *regexp.Regexp, data []byte) {
		for _, m := range pattern.FindAllSubmatch(data, -1) {
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
	for name, data := range f.files {
		switch path.Ext(name) {
		case ".html":
			check(name, path.Dir(name), reference, data)
		case ".js":
			check(name, path.Dir(strings.TrimPrefix(name, f.dir())), fromPage, data)
			check(name, path.Dir(name), imported, fromPage.ReplaceAll(data, nil))
		}
	}
	if checked < 40 {
		t.Errorf("only %d references found: the patterns above no longer fit", checked)
	}
}

// A page with sums is known by its script, wherever it lies: without its mark it
// is not built.
func TestMissingMarkFailsTheBuild(t *testing.T) {
	added := func(text string) map[string][]byte {
		p := parts(t)
		p["later/index.html"] = []byte(text)
		return p
	}
	without := func(name, mark string) map[string][]byte {
		p := parts(t)
		if !bytes.Contains(p[name], []byte(mark)) {
			t.Fatalf("%s has no %s to take out", name, mark)
		}
		p[name] = bytes.ReplaceAll(p[name], []byte(mark), []byte("x"))
		return p
	}
	page := `<meta name="build" content="unbuilt"><script src="../build/customer.js"></script>`
	for _, c := range []struct {
		parts map[string][]byte
		names string // in the complaint; "" when it is built
	}{
		{without("index.html", markSettings), "index.html"},
		{without("index.html", markShopText), "index.html"},
		{without("survey/index.html", markSettings), "survey/index.html"},
		{without("sw.js", markFiles), "sw.js"},
		{without("about.html", markBuildDir), "about.html"},
		{without("words.html", markBuildDir), "words.html"},
		{added(page), ""},
		{added(strings.Replace(page, markSettings, "", 1)), "later/index.html"},
		{added(page + page), "later/index.html"},
		{added(strings.Replace(page, "../", "", 1)), "later/index.html"},
		{added(`<link href="../build/customer.css">`), ""},
	} {
		f, err := arrange(c.parts, sample(t), nil)
		if c.names != "" {
			if err == nil || !strings.Contains(err.Error(), "pages/"+c.names) {
				t.Errorf("expected a fault of %s, got %v", c.names, err)
			}
			continue
		}
		if err != nil || bytes.Contains(f.files["later/index.html"], []byte("unbuilt")) {
			t.Errorf("a new page was not built: %v", err)
		}
	}
}

// What a visitor without scripts reads comes from the rates, as text.
func TestShopTextIsWrittenAndEscaped(t *testing.T) {
	f := arranged(t, parts(t))
	for _, must := range []string{"an hour</li>", "Rates check code " + sample(t).CheckCode, "strip and survey", "Not in a range", "may have newer ones"} {
		if !bytes.Contains(f.files["index.html"], []byte(must)) {
			t.Errorf("index.html lacks %q", must)
		}
	}
	var shop struct{ Shop struct{ Name string } }
	if err := json.Unmarshal(rates.Sample(), &shop); err != nil || shop.Shop.Name == "" {
		t.Fatal("no shop name in the sample", err)
	}
	text, _, err := shopText(bytes.Replace(rates.Sample(), []byte(shop.Shop.Name), []byte("<b>Shop</b>"), 1))
	if err != nil || strings.Contains(text, "<b>") || !strings.Contains(text, "&lt;b&gt;Shop") {
		t.Errorf("a name with markup: %v\n%.200s", err, text)
	}
	if _, _, err := shopText([]byte("{}")); err == nil {
		t.Error("refused rates were written out")
	}
}

// The list for offline use carries sums in the form of the W3C Subresource
// Integrity recommendation.
func TestListingHoldsTrueSums(t *testing.T) {
	f := arranged(t, parts(t))
	text := regexp.MustCompile(`files: (\[.*?\])\}`).FindSubmatch(f.files["sw.js"])
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
		if l.Shop != (l.Path == f.dir()+"engine.wasm") {
			t.Errorf("%s: kept only where the shop is: %v", l.Path, l.Shop)
		}
		names[l.Path] = true
	}
	for name := range f.files {
		wanted := name != ratesName && name != "build.json" && name != "sw.js"
		if names[name] != wanted {
			t.Errorf("%s: in the list %v, expected %v", name, names[name], wanted)
		}
	}
}

func TestVariantsUnpackToTheFile(t *testing.T) {
	dir := t.TempDir()
	if _, err := Build(dir, sample(t), small); err != nil {
		t.Fatal(err)
	}
	all, unpacked := tree(t, dir), 0
	for name, data := range all {
		var reader io.Reader
		switch path.Ext(name) {
		case ".br":
			reader = brotli.NewReader(strings.NewReader(data))
		case ".gz":
			z, err := gzip.NewReader(strings.NewReader(data))
			if err != nil {
				t.Fatal(err)
			}
			reader = z
		default:
			continue
		}
		plain := all[strings.TrimSuffix(name, path.Ext(name))]
		if back, err := io.ReadAll(reader); err != nil || string(back) != plain || len(data) >= len(plain) {
			t.Errorf("%s gives something else, or is no smaller (%v)", name, err)
		}
		unpacked++
	}
	if unpacked < 70 {
		t.Errorf("only %d variants", unpacked)
	}
}
