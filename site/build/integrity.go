package build

import (
	"fmt"
	"path"
	"regexp"
)

// loaded is what a page loads by itself: its script and its style.
var loaded = regexp.MustCompile(`<(?:script type="module" src|link rel="stylesheet" href)="([^"]+)"`)

// addIntegrity writes beside everything that a page names in its head the sum of its content
// (W3C Subresource Integrity), which a browser holds against what comes. A folder
// that was half copied, or whose scripts something on the way has changed, is then
// not run, also on a first visit, before the worker for offline use is there.
func (f folder) addIntegrity(page string) error {
	var missing error
	f.files[page] = loaded.ReplaceAllFunc(f.files[page], func(tag []byte) []byte {
		address := string(loaded.FindSubmatch(tag)[1])
		data, there := f.files[path.Join(path.Dir(page), address)]
		if !there {
			missing = fmt.Errorf("pages/%s: expected a file of the build, found %q", page, address)
		}
		return fmt.Appendf(nil, `%s integrity="%s"`, tag, integrity(data))
	})
	return missing
}
