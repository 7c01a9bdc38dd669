package pages

import (
	"path"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// layerOrder is what all.css says first. Print is the last layer, so that paper wins
// over every page.
const layerOrder = "@layer tokens, base, parts, page, print;"

// topLevel takes a style sheet apart into its statements and blocks: for each the text
// before its brace or semicolon, and the content of a block.
func topLevel(css string) (all [][2]string) {
	for css = strings.TrimSpace(css); css != ""; css = strings.TrimSpace(css) {
		end := strings.IndexAny(css, "{;")
		if end < 0 {
			return append(all, [2]string{css, ""})
		}
		head := strings.TrimSpace(css[:end])
		if css[end] == ';' {
			all, css = append(all, [2]string{head, ""}), css[end+1:]
			continue
		}
		start, depth := end+1, 1
		for end++; end < len(css) && depth > 0; end++ {
			switch css[end] {
			case '{':
				depth++
			case '}':
				depth--
			}
		}
		all, css = append(all, [2]string{head, css[start : end-1]}), css[end:]
	}
	return all
}

func TestTopLevel(t *testing.T) {
	got := topLevel(`@layer a, b; @import "./x.css" layer(a); @layer a { p { margin: 0 } @media print { q { top: 0 } } } @page { margin: 1mm }`)
	want := [][2]string{
		{"@layer a, b", ""}, {`@import "./x.css" layer(a)`, ""},
		{"@layer a", " p { margin: 0 } @media print { q { top: 0 } } "}, {"@page", " margin: 1mm "},
	}
	if !slices.Equal(got, want) {
		t.Errorf("expected %q, found %q", want, got)
	}
}

// TestEveryRuleIsInALayer: a rule outside the layers would win over all of them. What
// all pages have is put into its layer by all.css; the other sheets name theirs.
func TestEveryRuleIsInALayer(t *testing.T) {
	imported := regexp.MustCompile(`^@import "[./\w-]+\.css"(?: layer\((\w+)\))?$`)
	all := sheets(t)
	if css := strings.TrimSpace(all["styles/all.css"]); !strings.HasPrefix(css, layerOrder) {
		t.Errorf("styles/all.css: expected first %q", layerOrder)
	}
	for name, css := range all {
		inLayer := layerOf(name)
		for _, block := range topLevel(css) {
			head := block[0]
			layer, isLayer := strings.CutPrefix(head, "@layer ")
			switch m := imported.FindStringSubmatch(head); {
			case inLayer != "":
				if isLayer || m != nil && m[1] != "" {
					t.Errorf("%s: %s: expected no second layer within %s", name, head, inLayer)
				}
			case name == "styles/all.css":
				if m != nil && m[1] != strings.TrimSuffix(path.Base(strings.Split(head, `"`)[1]), ".css") {
					t.Errorf("%s: %s: expected the layer of that name", name, head)
				}
				if m == nil && head+";" != layerOrder && head != "@page" {
					t.Errorf("%s: %s: expected the order, imports and @page", name, head)
				}
			case m != nil && m[1] == "":
			case isLayer && slices.Contains(ownLayers(name), layer):
				if paper := strings.Contains(block[1], "@media print"); paper != (layer == "print") {
					t.Errorf("%s: %s: expected what is for paper in layer print, and nothing else there", name, head)
				}
			default:
				t.Errorf("%s: %s: expected an import or a layer of %v", name, head, ownLayers(name))
			}
		}
		if name != "styles/base.css" && strings.Contains(css, "!important") {
			t.Errorf("%s: !important, which turns the order of the layers round, is for base.css to hide with", name)
		}
	}
}

// layerOf is the layer that all.css puts a sheet into.
func layerOf(name string) string {
	switch folder, file := path.Split(name); {
	case folder == "styles/parts/":
		return "parts"
	case folder == "styles/" && slices.Contains([]string{"tokens.css", "base.css", "parts.css", "print.css"}, file):
		return strings.TrimSuffix(file, ".css")
	}
	return ""
}

// ownLayers are those that a sheet names itself: what several pages import is parts.
func ownLayers(name string) []string {
	if path.Base(name) == "page.css" {
		return []string{"page", "print"}
	}
	return []string{"parts", "print"}
}
