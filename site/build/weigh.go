package build

import (
	"encoding/json"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"underpaint/site/module"
)

// Measured says on out what a built folder comes to and gives an error when that is
// over budget. Sizes are those of the files that are there, not of a new build.
func Measured(dir string, out io.Writer) error {
	m, err := measure(dir)
	if err != nil {
		return err
	}
	fmt.Fprintf(out, "brotli: the customer's engine %d of %d, the whole engine %d of %d, a customer's first visit %d of %d\n",
		m.EngineBrotli, customerBudget, m.WholeBrotli, wholeBudget, m.FirstVisitBrotli, firstVisitBudget)
	return m.OverBudget()
}

// measure counts the files of a folder's last build as the build itself did.
func measure(dir string) (Made, error) {
	dir, err := filepath.EvalSymlinks(dir) // a walk does not follow one
	if err != nil {
		return Made{}, err
	}
	text, err := os.ReadFile(filepath.Join(dir, "build.json"))
	if err != nil {
		return Made{}, err
	}
	var build struct{ ID string }
	if err := json.Unmarshal(text, &build); err != nil || build.ID == "" {
		return Made{}, fmt.Errorf("%s: expected the name of a build in build.json", dir)
	}
	f := folder{id: build.ID, files: map[string][]byte{}}
	sizes := map[string][]int{}
	err = filepath.WalkDir(dir, func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		info, err := d.Info()
		if err != nil {
			return err
		}
		within, err := filepath.Rel(dir, name)
		within = filepath.ToSlash(within)
		if strings.HasPrefix(within, "v-") && !strings.HasPrefix(within, f.dir()) {
			return err // of an older build
		}
		plain := strings.TrimSuffix(strings.TrimSuffix(within, ".br"), ".gz")
		f.files[plain] = nil
		sizes[plain] = append(sizes[plain], int(info.Size()))
		return err
	})
	m := Made{ID: f.id}
	for name, s := range sizes {
		m.count(f, name, s) // WalkDir is in order, so a file comes before its variants
	}
	return m, err
}

// WriteWeights builds the customer's engine with names, which add nothing else, and
// writes where its bytes go.
func WriteWeights(out io.Writer) error {
	code, err := compile(customerProgram, "-w")
	if err != nil {
		return err
	}
	packages, err := goTool("list", "-deps", customerProgram)
	if err != nil {
		return err
	}
	bySection, byPackage, err := module.Weigh(code, strings.Fields(packages))
	if err != nil {
		return err
	}
	fmt.Fprintf(out, "%10s %10s\n", "bytes", "brotli")
	for _, w := range bySection {
		fmt.Fprintf(out, "%10d %10d  %s\n", w.Bytes, len(brotliOf(w.Text)), w.Name)
	}
	fmt.Fprintf(out, "\ncode by package (compressed alone, which is a little more than its part)\n%10s %10s %10s\n", "bytes", "brotli", "functions")
	for _, w := range byPackage {
		fmt.Fprintf(out, "%10d %10d %10d  %s\n", w.Bytes, len(brotliOf(w.Text)), w.Parts, w.Name)
	}
	return nil
}
