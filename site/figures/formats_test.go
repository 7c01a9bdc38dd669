package figures

import (
	"regexp"
	"slices"
	"testing"
)

func TestFormats(t *testing.T) {
	all, err := Formats()
	if err != nil || len(all) < 8 || !slices.Contains(all, "body 1") {
		t.Fatalf("%q, %v", all, err)
	}
	for _, f := range all {
		if !regexp.MustCompile(`^[a-z ]+ [1-9][0-9]*$`).MatchString(f) {
			t.Errorf("%q: expected a kind and a number", f)
		}
	}
}
