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
	if len(all) < 15 {
		t.Fatalf("only %d style sheets", len(all))
	}
	return all
}

// declarations gives every property with its value and the selector it stands under.
func declarations(css string) (all [][3]string) {
	for _, m := range regexp.MustCompile(`([^{};]+)\{([^{}]*)\}`).FindAllStringSubmatch(css, -1) {
		for _, d := range strings.Split(m[2], ";") {
			if key, value, ok := strings.Cut(d, ":"); ok {
				all = append(all, [3]string{strings.Join(strings.Fields(m[1]), " "), strings.TrimSpace(key), strings.TrimSpace(value)})
			}
		}
	}
	return all
}

// tokenSheet holds the custom properties and nothing else.
const tokenSheet = "styles/tokens.css"

// plainColours need no token: they follow the text or the settings of the device.
const plainColours = `none|currentColor|transparent|inherit|Canvas|CanvasText|Highlight`

// colours are the faults of one declaration that is no token.
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
	size := regexp.MustCompile(`^(?:inherit|var\(--(?:(?:fine|small|text|lead|head|title)(?:-in)?|figure|talk|print(?:-tight)?)\))$`)
	face := regexp.MustCompile(`^(?:inherit|var\(--(?:serif|sans)\)|ui-monospace, monospace)$`)
	var seen, tokens int
	for name, css := range sheets(t) {
		for _, d := range declarations(css) {
			selector, key, value := d[0], d[1], d[2]
			if token := strings.HasPrefix(key, "--"); token || name == tokenSheet {
				if !token || name != tokenSheet || selector != ":root" {
					t.Errorf("%s: %s { %s: %s }: expected custom properties under :root of %s, and nothing else there", name, selector, key, value, tokenSheet)
				}
				tokens++
				continue
			}
			seen++
			if c := colours(key, value); c != "" {
				t.Errorf("%s: %s { %s: %s }: %q is no token", name, selector, key, value, c)
			}
			if key == "font-size" && !size.MatchString(value) {
				t.Errorf("%s: %s { font-size: %s }: no size of the scale", name, selector, value)
			}
			if key == "font-family" && selector != "@font-face" && !face.MatchString(value) {
				t.Errorf("%s: %s { font-family: %s }: not one of the two faces", name, selector, value)
			}
			if key == "font" && value != "inherit" {
				t.Errorf("%s: %s { font: %s }: the size is hidden in it", name, selector, value)
			}
		}
	}
	if seen < 800 || tokens < 40 {
		t.Errorf("only %d declarations and %d tokens found: the patterns above no longer fit", seen, tokens)
	}
}

// TestRedOxideMarksHeadsAndTheNextAction and nothing else, since a red that means something
// would be the beginning of traffic lights.
func TestRedOxideMarksHeadsAndTheNextAction(t *testing.T) {
	found := 0
	for name, css := range sheets(t) {
		for _, d := range declarations(css) {
			if name == tokenSheet || !strings.Contains(d[2], "--oxide") {
				continue
			}
			found++
			head := d[1] == "color" && regexp.MustCompile(`^(?:h2|\.paper-sheet h2\.title)$`).MatchString(d[0])
			action := d[0] == "button.go" && regexp.MustCompile(`^(?:background|border-color)$`).MatchString(d[1])
			if !head && !action {
				t.Errorf("%s: %s { %s: %s }: red oxide is for section heads and the next action only", name, d[0], d[1], d[2])
			}
		}
	}
	if found < 4 {
		t.Errorf("red oxide is found %d times", found)
	}
}
