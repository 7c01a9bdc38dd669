package pages

import (
	"path"
	"regexp"
	"slices"
	"strings"
	"testing"
)

var imported = regexp.MustCompile(`(?m)^\s*(?:import|export)\b[^"';=]*?"(\.[^"]+)";|^@import "([^"]+)"`)

// imports are the sources that one names, by their path below this folder.
func imports(name string, text []byte) (all []string) {
	for _, m := range imported.FindAllSubmatch(text, -1) {
		all = append(all, path.Join(path.Dir(name), string(m[1])+string(m[2])))
	}
	return all
}

// mayImport: a page's folder leads to itself and to what is shared, and what is
// shared leads to no page.
func mayImport(from, to string) bool {
	top := func(name string) string { t, _, _ := strings.Cut(name, "/"); return t }
	return top(to) == top(from) || slices.Contains([]string{"shared", "styles", "vendor"}, top(to)) && top(from) != "vendor"
}

func TestImportsGoOneWay(t *testing.T) {
	files, err := Files()
	if err != nil {
		t.Fatal(err)
	}
	leads := map[string][]string{}
	edges := 0
	for name, text := range files {
		if kind := path.Ext(name); kind != ".ts" && kind != ".css" {
			continue
		}
		leads[name] = imports(name, text)
		for _, to := range leads[name] {
			edges++
			if !mayImport(name, to) {
				t.Errorf("%s imports %s, which is another page's", name, to)
			}
		}
	}
	if edges < 400 {
		t.Errorf("only %d imports found: the pattern above no longer fits", edges)
	}
	if c := circle(leads); c != nil {
		t.Errorf("these lead in a circle: %s", strings.Join(c, " → "))
	}
}

// circle is a way from a source back to itself, or nil.
func circle(leads map[string][]string) []string {
	done := map[string]bool{}
	var way []string
	var from func(name string) []string
	from = func(name string) []string {
		if at := slices.Index(way, name); at >= 0 {
			return append(slices.Clone(way[at:]), name)
		}
		if done[name] {
			return nil
		}
		way = append(way, name)
		for _, to := range leads[name] {
			if c := from(to); c != nil {
				return c
			}
		}
		way = way[:len(way)-1]
		done[name] = true
		return nil
	}
	for name := range leads {
		if c := from(name); c != nil {
			return c
		}
	}
	return nil
}

func TestCirclesAndOtherPagesAreSeen(t *testing.T) {
	if c := circle(map[string][]string{"a": {"b", "c"}, "b": {"c"}, "c": {"a"}}); len(c) != 4 && len(c) != 3 {
		t.Errorf("no circle seen: %v", c)
	}
	if c := circle(map[string][]string{"a": {"b", "c"}, "b": {"c"}}); c != nil {
		t.Errorf("a circle where there is none: %v", c)
	}
	if mayImport("why/page.ts", "survey/page.ts") || mayImport("shared/dom.ts", "why/page.ts") || !mayImport("why/page.ts", "shared/dom.ts") {
		t.Error("pages and what they share are mixed up")
	}
}
