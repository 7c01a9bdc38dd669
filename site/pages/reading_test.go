package pages

import (
	"encoding/json"
	"math"
	"path"
	"regexp"
	"strings"
	"testing"

	"underpaint/engine/message"
	"underpaint/engine/rates"
)

// hardest is the school grade that the customer's page may ask for, a little above
// what was reached. Newspapers stand at about 9, from memory.
const hardest = 6.0

// grade is the Flesch-Kincaid grade level: Kincaid, Fishburne, Rogers and Chissom,
// Derivation of new readability formulas for Navy enlisted personnel, Research
// Branch Report 8-75 (1975), from memory.
func grade(sentences []string) float64 {
	words, syllables := 0, 0
	for _, s := range sentences {
		for _, w := range regexp.MustCompile(`[\p{L}\d][\p{L}\d'’,.-]*`).FindAllString(s, -1) {
			words++
			syllables += beats(w)
		}
	}
	return 0.39*float64(words)/float64(len(sentences)) + 11.8*float64(syllables)/float64(words) - 15.59
}

// beats counts the syllables of a word as its groups of vowels, less a silent e at
// the end: the usual rule of thumb, common practice, no published source. A figure
// counts as one, since nobody spells it out.
func beats(word string) int {
	word = strings.ToLower(strings.TrimRight(word, "'’,.-"))
	n := len(regexp.MustCompile(`[aeiouy]+`).FindAllString(word, -1))
	if strings.HasSuffix(word, "e") && !strings.HasSuffix(word, "le") && n > 1 {
		n--
	}
	return max(n, 1)
}

// sentencesOf cuts texts at full stops, each sentence once. Labels and lines of fewer
// than six words are left out: they are read at a glance and would make the page look
// easier than it is.
func sentencesOf(texts []string) (all []string) {
	seen := map[string]bool{}
	for _, text := range texts {
		for _, s := range regexp.MustCompile(`[.?!](?:\s|$)`).Split(text, -1) {
			if len(strings.Fields(s)) >= 6 && !seen[s] {
				seen[s] = true
				all = append(all, s)
			}
		}
	}
	return all
}

// TestGrade holds the formula to a sentence whose grade is quoted with 24 syllables
// and 13 words as 11.3 (an encyclopedia's example, from memory).
func TestGrade(t *testing.T) {
	got := grade([]string{"The Australian platypus is seemingly a hybrid of a mammal and reptilian creature"})
	if math.Abs(got-11.3) > 0.05 {
		t.Errorf("grade %.2f, expected 11.3", got)
	}
	for word, want := range map[string]int{"rust": 1, "gone": 1, "metal": 2, "table": 2, "condition": 3, "$140,000": 1, "the": 1} {
		if got := beats(word); got != want {
			t.Errorf("%s: %d syllables, expected %d", word, got, want)
		}
	}
}

// told are all texts that an answer of the engine carries.
func told(t *testing.T, e *message.Engine, request map[string]any) (all []string) {
	t.Helper()
	text, err := json.Marshal(request)
	if err != nil {
		t.Fatal(err)
	}
	var v map[string]any
	if err := json.Unmarshal(e.Ask(text), &v); err != nil {
		t.Fatal(err)
	}
	if v["kind"] == "refused" || v["kind"] == "broken" {
		t.Fatalf("%v: %v", request["ask"], v["text"])
	}
	var walk func(any)
	walk = func(v any) {
		switch v := v.(type) {
		case string:
			all = append(all, v)
		case map[string]any:
			for _, below := range v {
				walk(below)
			}
		case []any:
			for _, below := range v {
				walk(below)
			}
		}
	}
	walk(v)
	return all
}

func TestTheCustomersPageReadsEasily(t *testing.T) {
	files, err := Files()
	if err != nil {
		t.Fatal(err)
	}
	var page []string
	for name, text := range files {
		if strings.HasPrefix(name, "customer/") && strings.HasSuffix(name, ".ts") || strings.HasPrefix(name, "shared/") && path.Dir(name) == "shared" {
			page = append(page, strung(string(text))...)
		}
	}
	page = append(page, markup(string(files["customer/index.html"])))
	var car map[string]any
	if err := json.Unmarshal(files["samples/two-door.json"], &car); err != nil {
		t.Fatal(err)
	}
	var e message.Engine
	told(t, &e, map[string]any{"id": 1, "ask": "open", "rates": string(rates.Sample())})
	answers := told(t, &e, map[string]any{"id": 2, "ask": "range", "effort": "rough", "car": car})
	for what, texts := range map[string][]string{"page": page, "range": answers} {
		s := sentencesOf(texts)
		g := grade(s)
		t.Logf("%s: Flesch-Kincaid grade %.1f over %d sentences", what, g, len(s))
		if g > hardest || len(s) < 50 {
			t.Errorf("%s: grade %.1f over %d sentences, expected at most %.1f over 50 or more", what, g, len(s), hardest)
		}
	}
}
