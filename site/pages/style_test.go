package pages

import (
	"path"
	"regexp"
	"strings"
	"testing"
)

// sheets are the style sheets of the pages, without comments.
func sheets(t *testing.T) map[string]string {
	t.Helper()
	files, err := Files()
	if err != nil {
		t.Fatal(err)
	}
	all := map[string]string{}
	for name, text := range files {
		if path.Ext(name) == ".css" {
			all[name] = regexp.MustCompile(`(?s)/\*.*?\*/`).ReplaceAllString(string(text), "")
		}
	}
	if len(all) < 6 {
		t.Fatalf("only %d style sheets", len(all))
	}
	return all
}

// declarations gives every property with its value and the selector it stands under.
func declarations(css string) (all [][3]string) {
	for _, m := range regexp.MustCompile(`([^{};]+)\{([^{}]*)\}`).FindAllStringSubmatch(css, -1) {
		for _, d := range strings.Split(m[2], ";") {
			if key, value, ok := strings.Cut(d, ":"); ok {
				all = append(all, [3]string{strings.TrimSpace(m[1]), strings.TrimSpace(key), strings.TrimSpace(value)})
			}
		}
	}
	return all
}

// plainColours need no token: they follow the text or the settings of the device.
const plainColours = `none|currentColor|transparent|inherit|Canvas|CanvasText|Highlight`

// colours are the faults of one declaration outside :root.
func colours(key, value string) string {
	stray := regexp.MustCompile(`#[0-9a-fA-F]{3,8}\b|\b(?:rgba?|hsla?|lab|lch|oklch|color-mix)\(`)
	if m := stray.FindString(value); m != "" {
		return m
	}
	if regexp.MustCompile(`^(?:color|background|background-color|fill|stroke|accent-color|outline-color|border(?:-\w+)*-color)$`).MatchString(key) {
		bare := regexp.MustCompile(`var\(--[a-z-]+\)|\b(?:`+plainColours+`)\b|\s`).ReplaceAllString(value, "")
		if bare != "" {
			return bare
		}
	}
	return ""
}

func TestColoursAndSizesAreTokens(t *testing.T) {
	size := regexp.MustCompile(`^(?:inherit|var\(--(?:(?:fine|small|text|lead|head|title)(?:-in)?|talk|print(?:-tight)?)\))$`)
	var seen int
	for name, css := range sheets(t) {
		for _, d := range declarations(css) {
			selector, key, value := d[0], d[1], d[2]
			if strings.HasSuffix(selector, ":root") {
				if name != "styles/style.css" {
					t.Errorf("%s: tokens stand in style.css alone", name)
				}
				continue
			}
			seen++
			if c := colours(key, value); c != "" {
				t.Errorf("%s: %s { %s: %s }: %q is no token of style.css", name, selector, key, value, c)
			}
			if key == "font-size" && !size.MatchString(value) {
				t.Errorf("%s: %s { font-size: %s }: no size of the scale", name, selector, value)
			}
			if key == "font" && value != "inherit" {
				t.Errorf("%s: %s { font: %s }: the size is hidden in it", name, selector, value)
			}
		}
	}
	if seen < 800 {
		t.Errorf("only %d declarations found: the patterns above no longer fit", seen)
	}
}

// TestRedOxideIsForHeadingsAndRulesOnly, since a red that means something would be
// the beginning of traffic lights.
func TestRedOxideIsForHeadingsAndRulesOnly(t *testing.T) {
	found := 0
	for name, css := range sheets(t) {
		for _, d := range declarations(css) {
			if !strings.Contains(d[2], "--oxide") {
				continue
			}
			found++
			heading := d[1] == "color" && regexp.MustCompile(`^(?:h1, h2|\.paper-sheet h2\.title)$`).MatchString(d[0])
			rule := d[1] == "border-bottom" && d[0] == ".shop"
			if !heading && !rule {
				t.Errorf("%s: %s { %s: %s }: red oxide is for headings and rules only", name, d[0], d[1], d[2])
			}
		}
	}
	if found < 3 {
		t.Errorf("red oxide is found %d times", found)
	}
}
