// Package schemas compares a JSON Schema of the site with what the program accepts.
// Start with [Compare]. Only tests import it.
package schemas

import (
	"encoding/json"
	"os"
	"slices"
	"strings"
	"testing"
)

// Compare fails the test unless every group of the schema, by its path, has the given
// members and accepts no others, and unless every group is compared. It returns the
// schema.
func Compare(t *testing.T, file string, want map[string][]string) map[string]any {
	t.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	var s map[string]any
	if err := json.Unmarshal(text, &s); err != nil {
		t.Fatal(err)
	}
	compared := 0
	groups(s, "", func(path string, group map[string]any) {
		known, there := want[path]
		if !there {
			t.Errorf("the schema has a group %q that the program does not", path)
			return
		}
		compared++
		var got []string
		for name := range group["properties"].(map[string]any) {
			got = append(got, name)
		}
		if !SameSet(got, known) {
			t.Errorf("%s: schema has %v, the program knows %v", path, got, known)
		}
		if group["additionalProperties"] != false {
			t.Errorf("%s takes unknown members", path)
		}
	})
	if compared != len(want) {
		t.Errorf("%d groups compared, want %d", compared, len(want))
	}
	return s
}

// groups calls f with every description of an object that names its members.
func groups(v any, path string, f func(path string, group map[string]any)) {
	group, ok := v.(map[string]any)
	if !ok {
		return
	}
	if _, closed := group["additionalProperties"]; closed {
		f(path, group)
	}
	for name, x := range group {
		groups(x, strings.TrimPrefix(path+"."+name, "."), f)
	}
}

// At returns the description at a path of the schema.
func At(s map[string]any, path string) map[string]any {
	for _, name := range strings.Split(path, ".") {
		s, _ = s[name].(map[string]any)
	}
	return s
}

// SameSet says whether two lists hold the same entries in any order.
func SameSet(a, b []string) bool {
	a, b = slices.Clone(a), slices.Clone(b)
	slices.Sort(a)
	slices.Sort(b)
	return slices.Equal(a, b)
}
