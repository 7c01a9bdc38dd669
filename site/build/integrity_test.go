package build

import (
	"crypto/sha256"
	"encoding/base64"
	"path"
	"regexp"
	"strings"
	"testing"
)

var (
	tags       = regexp.MustCompile(`(?i)<(script|link)\b([^>]*)>`)
	attributes = regexp.MustCompile(`([a-z-]+)\s*=\s*"([^"]*)"`)
)

// TestPagesNameTheSumsOfWhatTheyLoad: on all pages every script and every
// style sheet has its own SHA-256 beside it.
func TestPagesNameTheSumsOfWhatTheyLoad(t *testing.T) {
	f := arranged(t, parts(t))
	scripts, styles := 0, 0
	for page, source := range f.files {
		if path.Ext(page) != ".html" {
			continue
		}
		for _, found := range tags.FindAllSubmatch(source, -1) {
			tag := map[string]string{}
			for _, a := range attributes.FindAllSubmatch(found[2], -1) {
				tag[string(a[1])] = string(a[2])
			}
			address := tag["href"]
			switch kind := string(found[1]) + tag["rel"]; kind {
			case "script":
				scripts, address = scripts+1, tag["src"]
			case "linkstylesheet":
				styles++
			default: // the icon, what comes next: nothing that a page runs
				continue
			}
			sum := sha256.Sum256(f.files[path.Join(path.Dir(page), address)])
			if want := "sha256-" + base64.StdEncoding.EncodeToString(sum[:]); tag["integrity"] != want {
				t.Errorf("%s: %s with the sum %q, expected %s", page, address, tag["integrity"], want)
			}
		}
	}
	if scripts != 6 || styles != 12 {
		t.Errorf("%d scripts, %d style sheets", scripts, styles)
	}
}

// TestNothingIsSealedThatIsNotThere: a page that names a missing file is not built.
func TestNothingIsSealedThatIsNotThere(t *testing.T) {
	p := parts(t)
	p["index.html"] = []byte(strings.Replace(string(p["index.html"]), `"build/customer.css"`, `"build/costumer.css"`, 1))
	if _, err := arrange(p, sample(t), nil); err == nil || !strings.Contains(err.Error(), "costumer.css") {
		t.Errorf("built with a style sheet that is missing: %v", err)
	}
}
