package tests

import (
	"os"
	"path/filepath"
	"regexp"
	"testing"
)

// TestPicturesOfTheReadme: each picture in the README exists, is small, says what it
// shows and that this is invented; and there are no unused pictures.
func TestPicturesOfTheReadme(t *testing.T) {
	text, err := os.ReadFile("../README.md")
	if err != nil {
		t.Fatal(err)
	}
	named := map[string]bool{}
	for _, m := range regexp.MustCompile(`!\[([^\]]*)\]\((site/pictures/[^)]+)\)`).FindAllStringSubmatch(string(text), -1) {
		named[filepath.Base(m[2])] = true
		info, err := os.Stat("../" + m[2])
		if err != nil || info.Size() > 60_000 || info.Size() == 0 {
			t.Errorf("%s: expected 1 to 60,000 bytes (%v)", m[2], err)
		}
		if len(m[1]) < 40 || !regexp.MustCompile(`(?i)invented`).MatchString(m[1]) {
			t.Errorf("%s: %q does not say what is on it and that it is invented", m[2], m[1])
		}
	}
	there, err := filepath.Glob("../site/pictures/*")
	if err != nil || len(there) != len(named) || len(there) == 0 {
		t.Errorf("%d pictures there, %d named (%v)", len(there), len(named), err)
	}
}
