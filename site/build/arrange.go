package build

import (
	"bytes"
	"crypto/sha256"
	"encoding/base64"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"html"
	"maps"
	"path"
	"slices"
	"strings"

	"underpaint/site/figures"
)

// Marks in the sources that a build fills in. Each must be there, or the build
// fails: a page that kept its mark would look for files that do not exist.
const (
	markBuildDir = `build/`            // in pages, after =" or ="../: a file of this build
	markSettings = `content="unbuilt"` // in pages with sums: build id and engine size
	markFiles    = `BUILT_FILES`       // in sw.js: build id and list of files
	markScript   = `<script`           // pages with a script have settings
	markFigures  = `<!--figures-->`    // in the page of figures: every figure with its source
)

// Where a page takes the shop's name, and the dates of its rates. Pages with sums
// write both anew from the rates that they open: mostly the same words, so that
// nothing below moves under a finger.
const (
	markShopName  = `<!--shop name-->`
	markRatesLine = `<!--rates line-->`
)

const (
	ratesName       = "rates.json"
	customersFolder = "customer" // of the sources; in the site it lies at the top
	customersPage   = "index.html"
	figuresFolder   = "figures"
	figuresPage     = figuresFolder + "/index.html"
	sidesName       = "sides.json" // the small drawings of all bodies in one file
)

// isPage says whether a source file keeps its own name at the top of the
// folder. All others go into the folder of the build.
func isPage(name string) bool {
	return path.Ext(name) == ".html" || name == "sw.js"
}

// toTop leads from a page to the top of the folder: a page of its own folder
// has an address without a file name, on any host.
func toTop(name string) string { return strings.Repeat("../", strings.Count(name, "/")) }

// folder is a built site in memory: path to content.
type folder struct {
	id     string
	files  map[string][]byte
	packed map[string][]variant // compressed forms, which take seconds: made once
}

func (f folder) dir() string { return "v-" + f.id + "/" }

// listed is one file that must come from this build.
type listed struct {
	Path      string `json:"path"`
	Integrity string `json:"integrity"`
	Shop      bool   `json:"shop,omitempty"` // only where a page of the shop is used
}

// arrange names the build after its content and puts every file in its place. packed has
// parts that are compressed already, by name.
func arrange(parts map[string][]byte, r *Rates, packed map[string][]byte) (folder, error) {
	f := folder{id: buildID(parts), files: map[string][]byte{ratesName: r.text}, packed: map[string][]variant{}}
	for name, data := range packed {
		f.packed[f.dir()+name] = []variant{{".br", data}, {".gz", gzipOf(parts[name])}}
	}
	var pages []string
	for _, name := range slices.Sorted(maps.Keys(parts)) {
		if !isPage(name) {
			f.files[f.dir()+name] = parts[name]
		} else if path.Ext(name) == ".html" {
			pages = append(pages, name)
		}
	}
	for _, name := range pages {
		headed := strings.NewReplacer(markShopName, r.shopName, markRatesLine, html.EscapeString(r.Line)).Replace(string(parts[name]))
		if err := f.page(name, []byte(headed), parts); err != nil {
			return folder{}, err
		}
	}
	if err := f.fill(customersPage, markShopText, r.shopText); err != nil {
		return folder{}, err
	}
	tables, err := figures.Tables()
	if err != nil {
		return folder{}, err
	}
	if err := f.fill(figuresPage, markFigures, tables); err != nil {
		return folder{}, err
	}
	if err := f.shared(r.address); err != nil {
		return folder{}, err
	}
	list, err := json.Marshal(f.listing())
	if err != nil {
		return folder{}, err
	}
	f.files["build.json"] = fmt.Appendf(nil, "{\"id\":%q}\n", f.id)
	f.files["sw.js"] = parts["sw.js"]
	return f, f.fill("sw.js", markFiles, fmt.Sprintf("{id: %q, files: %s}", f.id, list))
}

// page puts a page in its place, with the addresses of this build.
func (f folder) page(name string, source []byte, parts map[string][]byte) error {
	before := `="` + toTop(name)
	if !bytes.Contains(source, []byte(before+markBuildDir)) {
		return fmt.Errorf("pages/%s: expected %s in it", name, before+markBuildDir)
	}
	f.files[name] = bytes.ReplaceAll(source, []byte(before+markBuildDir), []byte(before+f.dir()))
	if err := f.addIntegrity(name); err != nil {
		return err
	}
	if bytes.Contains(source, []byte(markScript)) || bytes.Contains(source, []byte(markSettings)) {
		return f.fill(name, markSettings, f.settings(engineOf(name), parts))
	}
	return nil
}

// engineOf is the engine that a page loads.
func engineOf(page string) string {
	if page == customersPage {
		return customerName
	}
	return engineName
}

// settings are the name of the build, the size of a page's engine, unpacked and as it
// is loaded, and the sum that the page holds against what it loads.
func (f folder) settings(engine string, parts map[string][]byte) string {
	name := f.dir() + engine
	f.files[name] = parts[engine]
	return fmt.Sprintf(`content="%s %d %s" data-engine="%s"`, f.id, len(parts[engine]), sizeText(len(f.variants(name)[0].data)), integrity(parts[engine]))
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
// which the shop may replace without a new build, and the picture for other sites.
func (f folder) listing() []listed {
	var all []listed
	for _, name := range slices.Sorted(maps.Keys(f.files)) {
		if name == ratesName || path.Base(name) == shareName {
			continue
		}
		all = append(all, listed{name, integrity(f.files[name]), name == f.dir()+engineName})
	}
	return all
}

// integrity is the SHA-256 of a file in the form of the W3C Subresource Integrity
// recommendation.
func integrity(data []byte) string {
	sum := sha256.Sum256(data)
	return "sha256-" + base64.StdEncoding.EncodeToString(sum[:])
}
