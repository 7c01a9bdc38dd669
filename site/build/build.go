package build

import (
	"maps"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"

	"underpaint/site/pages"
)

// Made says what a build came to. Sizes are bytes; of a file with compressed
// variants Brotli counts the smallest.
type Made struct {
	ID               string // name of the build, from its content
	Files            int    // of this build, variants included
	Bytes            int    // of all of them
	EngineBytes      int    // the customer's engine, unpacked
	EngineBrotli     int
	WholeBrotli      int // the whole engine, which the shop's pages load
	FirstVisitBrotli int // what a customer's first visit loads until the range has settled
	largestDrawing   int
}

// Build writes the whole folder, or nothing when something is wrong. outDir may
// exist; the files of older builds in it stay, so that a visitor who is in the
// middle of one can finish.
func Build(outDir string, r *Rates, e Engine) (Made, error) {
	sources, err := pages.Files()
	if err != nil {
		return Made{}, err
	}
	parts, err := assemble(sources)
	if err != nil {
		return Made{}, err
	}
	parts[engineName], parts[customerName], parts[loaderName] = e.Code, e.Customer, e.Loader
	f, err := arrange(parts, r, e.packed)
	if err != nil {
		return Made{}, err
	}
	return f.write(outDir)
}

// write puts the folder on disk with its compressed variants, in the order in
// which a visitor misses nothing: the files of the build, the rates, the pages.
func (f folder) write(outDir string) (Made, error) {
	m := Made{ID: f.id}
	names := slices.SortedFunc(maps.Keys(f.files), func(a, b string) int {
		if d := turn(a) - turn(b); d != 0 {
			return d
		}
		return strings.Compare(a, b)
	})
	for _, name := range names {
		data := f.files[name]
		target := filepath.Join(outDir, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(target), 0o755); err != nil {
			return m, err
		}
		sizes, err := writeWithVariants(target, data, f.variants(name))
		if err != nil {
			return m, err
		}
		m.count(f, name, sizes)
	}
	return m, nil
}

// turn says when a file is written.
func turn(name string) int {
	switch {
	case strings.HasPrefix(name, "v-"):
		return 0
	case isPage(name):
		return 2
	}
	return 1
}

// variants are the compressed forms of a file, brotli first; empty ones for the
// rates, which a shop replaces alone, and for type faces, which are compressed already.
func (f folder) variants(name string) []variant {
	if name == ratesName || path.Ext(name) == ".woff2" {
		return []variant{{".br", nil}, {".gz", nil}}
	}
	v, made := f.packed[name]
	if !made {
		v = []variant{{".br", brotliOf(f.files[name])}, {".gz", gzipOf(f.files[name])}}
		f.packed[name] = v
	}
	return v
}

// count adds one file, with the sizes it was written in. A customer's first visit
// loads everything but the other pages with their own files, the whole engine, the
// samples and the opened-out drawings of five bodies: of the six the largest is counted.
// What the worker for offline use fetches afterwards is not in it.
func (m *Made) count(f folder, name string, sizes []int) {
	m.Files += len(sizes)
	for _, size := range sizes {
		m.Bytes += size
	}
	small := slices.Min(sizes)
	switch path.Base(name) {
	case customerName:
		m.EngineBytes, m.EngineBrotli = sizes[0], small
	case engineName:
		m.WholeBrotli = small
		return
	}
	if path.Base(path.Dir(name)) == "drawings" && path.Base(name) != sidesName {
		m.FirstVisitBrotli += max(0, small-m.largestDrawing)
		m.largestDrawing = max(m.largestDrawing, small)
		return
	}
	if path.Base(name) == shareName {
		return
	}
	if name == customersPage || path.Ext(name) != ".html" && !f.ofAnotherPage(name) {
		m.FirstVisitBrotli += small
	}
}

// ofAnotherPage says whether a file is the script or the style of another page than
// the customer's, or a sample.
func (f folder) ofAnotherPage(name string) bool {
	within := strings.TrimPrefix(name, f.dir())
	if strings.HasPrefix(within, "samples/") {
		return true
	}
	of, kind := strings.TrimSuffix(within, path.Ext(within)), path.Ext(within)
	_, isPage := f.files[of+"/index.html"]
	return (kind == ".js" || kind == ".css") && (isPage || of == plainFolder)
}
