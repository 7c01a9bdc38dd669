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

// TestDocumentsNameRealTargets: whatever the documents say to make is in the Makefile, and
// every target that is explained there is in the table of commands.
func TestDocumentsNameRealTargets(t *testing.T) {
	read := func(name string) string {
		text, err := os.ReadFile("../" + name)
		if err != nil {
			t.Fatal(err)
		}
		return string(text)
	}
	makefile, developers := read("Makefile"), read("DEVELOPERS.md")
	targets := map[string]bool{}
	for _, m := range regexp.MustCompile(`(?m)^([a-z-]+):`).FindAllStringSubmatch(makefile, -1) {
		targets[m[1]] = true
	}
	named := regexp.MustCompile("(?m)(?:`|^    )make ([a-z-]+)").FindAllStringSubmatch(read("README.md")+developers, -1)
	if len(targets) < 15 || len(named) < 20 {
		t.Errorf("only %d targets, named %d times", len(targets), len(named))
	}
	for _, m := range named {
		if !targets[m[1]] {
			t.Errorf("there is no target for make %s", m[1])
		}
	}
	for _, m := range regexp.MustCompile(`(?m)^([a-z-]+):[^\n]* ## `).FindAllStringSubmatch(makefile, -1) {
		if !regexp.MustCompile("(?m)^\\| `make " + m[1] + "[ `]").MatchString(developers) {
			t.Errorf("make %s is not in the table of DEVELOPERS.md", m[1])
		}
	}
}
