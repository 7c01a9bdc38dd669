package folder

import (
	"bytes"
	"fmt"
	"path"
	"regexp"
	"strings"
)

// Scripts name each other, so that a browser learns of each only when it has read
// the one before: a chain of round trips to the host. A page therefore names at its
// head all that its script leads to (HTML Living Standard, link type
// "modulepreload").

var (
	entryScript  = regexp.MustCompile(`<script type="module" src="([^"]+)"></script>\n`)
	staticImport = regexp.MustCompile(`(?m)^(?:import|export)\s*(?:[^"'();=]*\bfrom\s*)?"(\.[^"]+)";`)
)

// imports are the scripts that a script leads to, itself left out: the nearest
// first, each once.
func imports(entry string, parts map[string][]byte) ([]string, error) {
	known := map[string]bool{entry: true}
	found := []string{entry}
	for k := 0; k < len(found); k++ {
		for _, m := range staticImport.FindAllSubmatch(parts[found[k]], -1) {
			name := path.Join(path.Dir(found[k]), string(m[1]))
			if _, there := parts[name]; !there {
				return nil, fmt.Errorf("pages/%s: expected an imported script that exists, found %q", found[k], m[1])
			}
			if !known[name] {
				known[name] = true
				found = append(found, name)
			}
		}
	}
	return found[1:], nil
}

// preload names in a page, which has its addresses already, what its script leads to.
func (f folder) preload(page string, parts map[string][]byte) error {
	for _, m := range entryScript.FindAllSubmatch(f.files[page], -1) {
		entry := strings.TrimPrefix(string(m[1]), toTop(page)+f.dir())
		all, err := imports(entry, parts)
		if err != nil {
			return err
		}
		links := bytes.Clone(m[0])
		for _, name := range all {
			links = fmt.Appendf(links, "<link rel=\"modulepreload\" href=\"%s\">\n", toTop(page)+f.dir()+name)
		}
		f.files[page] = bytes.Replace(f.files[page], m[0], links, 1)
	}
	return nil
}
