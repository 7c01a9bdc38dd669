package main

import (
	"bytes"
	"crypto/sha256"
	"encoding/base64"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"maps"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
)

// Marks in the sources that a build fills in. Each must be there, or the build
// fails: a page that kept its mark would look for files that do not exist.
const (
	markBuildDir = `build/`            // in pages, after =" or ="../: a file of this build
	markSettings = `content="unbuilt"` // in pages with sums: build id and engine size
	markFiles    = `/*files*/`         // in sw.js: build id and list of files
)

// withSums are the pages that load the engine.
var withSums = []string{"index.html", "survey/index.html"}

// toTop leads from a page to the top of the folder: a page of its own folder
// has an address without a file name, on any host.
func toTop(name string) string { return strings.Repeat("../", strings.Count(name, "/")) }

// folder is a built site in memory: path to content.
type folder struct {
	id     string
	files  map[string][]byte
	engine []byte // the engine compressed, which takes seconds: made once
}

// listed is one file that must come from this build, with its SHA-256 in the
// form of the W3C Subresource Integrity recommendation.
type listed struct {
	Path      string `json:"path"`
	Integrity string `json:"integrity"`
}

// arrange names the build after its content and puts every file in its place.
func arrange(parts map[string][]byte, rates []byte) (folder, error) {
	id := buildID(parts)
	f := folder{id: id, files: map[string][]byte{"rates.json": rates}, engine: brotliOf(parts["engine.wasm"])}
	dir := "v-" + id + "/"
	for _, name := range slices.Sorted(maps.Keys(parts)) {
		if !isPage(name) {
			f.files[dir+name] = parts[name]
		}
	}
	for name, data := range parts {
		if path.Ext(name) != ".html" {
			continue
		}
		before := `="` + toTop(name)
		if !bytes.Contains(data, []byte(before+markBuildDir)) {
			return folder{}, fmt.Errorf("pages/%s: expected %s in it", name, before+markBuildDir)
		}
		f.files[name] = bytes.ReplaceAll(data, []byte(before+markBuildDir), []byte(before+dir))
	}
	settings := fmt.Sprintf(`content="%s %d %s"`, id, len(parts["engine.wasm"]), sizeText(len(f.engine)))
	for _, name := range withSums {
		if err := f.fill(name, markSettings, settings); err != nil {
			return folder{}, err
		}
	}
	text, err := shopText(rates)
	if err != nil {
		return folder{}, err
	}
	if err := f.fill("index.html", markShopText, text); err != nil {
		return folder{}, err
	}
	list, err := json.Marshal(f.listing())
	if err != nil {
		return folder{}, err
	}
	f.files["build.json"] = fmt.Appendf(nil, "{\"id\":%q}\n", id)
	f.files["sw.js"] = parts["sw.js"]
	return f, f.fill("sw.js", markFiles, fmt.Sprintf("id: %q, files: %s", id, list))
}

// buildID is the first ten hexadecimal characters of the SHA-256 of all names
// and contents.
func buildID(parts map[string][]byte) string {
	sum := sha256.New()
	for _, name := range slices.Sorted(maps.Keys(parts)) {
		one := sha256.Sum256(parts[name])
		fmt.Fprintf(sum, "%s %x\n", name, one)
	}
	return hex.EncodeToString(sum.Sum(nil))[:10]
}

// sizeText says how much a visitor loads, in megabytes to one place, upward.
func sizeText(size int) string {
	tenths := (size + 99_999) / 100_000
	return fmt.Sprintf("%d.%d MB", tenths/10, tenths%10)
}

func (f folder) fill(name, mark, text string) error {
	if n := bytes.Count(f.files[name], []byte(mark)); n != 1 {
		return fmt.Errorf("pages/%s: expected %s once, found it %d times", name, mark, n)
	}
	f.files[name] = bytes.Replace(f.files[name], []byte(mark), []byte(text), 1)
	return nil
}

// listing is every file the worker for offline use keeps, but for the rates,
// which the shop may replace without a new build.
func (f folder) listing() []listed {
	var all []listed
	for _, name := range slices.Sorted(maps.Keys(f.files)) {
		if name == "rates.json" {
			continue
		}
		sum := sha256.Sum256(f.files[name])
		all = append(all, listed{name, "sha256-" + base64.StdEncoding.EncodeToString(sum[:])})
	}
	return all
}

// write puts the folder on disk with its compressed variants. The pages go
// last, so that an interrupted write leaves the older pages working.
func (f folder) write(outDir string) (made, error) {
	m := made{ID: f.id}
	names := slices.SortedFunc(maps.Keys(f.files), func(a, b string) int {
		if isPage(a) != isPage(b) {
			if isPage(a) {
				return 1
			}
			return -1
		}
		return bytes.Compare([]byte(a), []byte(b))
	})
	for _, name := range names {
		data := f.files[name]
		target := filepath.Join(outDir, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(target), 0o755); err != nil {
			return m, err
		}
		packed := f.engine
		if path.Base(name) != "engine.wasm" {
			packed = brotliOf(data)
		}
		small, err := writeWithVariants(target, data, packed)
		if err != nil {
			return m, err
		}
		m.count(name, len(data), small)
	}
	return m, nil
}

// count adds one file to the sizes. A customer's first visit loads everything
// but the other pages with their own files, the opened-out drawings of five
// bodies and the sample cars; all drawings are counted, which errs on the large
// side.
func (m *made) count(name string, raw, small int) {
	if path.Base(name) == "engine.wasm" {
		m.EngineBytes, m.EngineBrotli = raw, small
	}
	if path.Ext(name) != ".html" && !strings.Contains(name, "/survey/") || name == "index.html" {
		m.FirstVisitBrotli += small
	}
}
