package figures

import (
	"encoding/json"
	"io/fs"
	"regexp"
	"slices"
	"strings"
	"testing"

	"underpaint/engine"
)

// counted goes through the data files by another way than the page does: every
// member "source", every member that ends in "_source", and the sources of a body.
func counted(v any, body bool) (sources, parts int) {
	switch v := v.(type) {
	case map[string]any:
		for key, below := range v {
			s, isText := below.(string)
			switch {
			case (key == "source" || strings.HasSuffix(key, "_source")) && isText && s != "":
				sources++
			case key == "sources" && body:
				sources += len(below.(map[string]any))
			case key == "parts" && body:
				parts += len(below.([]any))
			case key != "sources":
				n, _ := counted(below, false)
				sources += n
			}
		}
	case []any:
		for _, below := range v {
			n, _ := counted(below, false)
			sources += n
		}
	}
	return sources, parts
}

func TestEveryFigureWithASourceIsThere(t *testing.T) {
	all, err := All()
	if err != nil {
		t.Fatal(err)
	}
	page, err := Tables()
	if err != nil {
		t.Fatal(err)
	}
	inFiles, inTopics, names := 0, 0, []string{}
	for i, f := range files {
		text, err := fs.ReadFile(engine.Data, f.path)
		if err != nil {
			t.Fatal(err)
		}
		var v any
		if err := json.Unmarshal(text, &v); err != nil {
			t.Fatal(err)
		}
		_, body := v.(map[string]any)["zones"]
		sources, parts := counted(v, body)
		if len(all[i].Entries) != sources || len(all[i].Parts) != parts || sources == 0 {
			t.Errorf("%s: %d sources and %d parts in the file, %d and %d on the page", f.path, sources, parts, len(all[i].Entries), len(all[i].Parts))
		}
		inFiles += sources + parts
		inTopics += strings.Count(page, `id="`+f.id+`"`)
		names = append(names, f.path)
	}
	if got := strings.Count(page, "<tr data-entry>") + strings.Count(page, "<tr data-part>"); got != inFiles || inTopics != len(files) {
		t.Errorf("%d rows and %d topics on the page, %d and %d in the files", got, inTopics, inFiles, len(files))
	}
	onDisk, err := fs.Glob(engine.Data, "*/data/*.json")
	if slices.Sort(names); err != nil || !slices.Equal(onDisk, names) {
		t.Errorf("data files %v, on the page %v (%v)", onDisk, names, err)
	}
}

func TestNoEntryIsWithoutASourceAndNoneReadsLikeAFile(t *testing.T) {
	all, err := All()
	if err != nil {
		t.Fatal(err)
	}
	raw := regexp.MustCompile(`[a-z0-9]_[a-z0-9]|[{}\[\]]`)
	seen := 0
	for _, topic := range all {
		for _, e := range topic.Entries {
			seen++
			if e.Name == "" || e.Source == "" || len(strings.Fields(e.Source)) == 1 && !slices.Contains([]string{"assumption", "definition"}, e.Source) {
				t.Errorf("%s: %q has the source %q", topic.Title, e.Name, e.Source)
			}
			if m := raw.FindString(e.Name + " " + strings.Join(e.Figures, " ")); m != "" {
				t.Errorf("%s: %q: %q in %q", topic.Title, e.Name, m, e.Figures)
			}
		}
		for _, p := range topic.Parts {
			seen++
			if p.Name == "" || !strings.Contains(strings.Join(p.Figures, " "), "hours") || raw.MatchString(p.Name+strings.Join(p.Figures, " ")) {
				t.Errorf("%s: %q: %q", topic.Title, p.Name, p.Figures)
			}
		}
	}
	if seen < 500 {
		t.Errorf("only %d rows", seen)
	}
}

// TestEveryNumberIsThere: no figure of a data file is lost on the way to the page,
// but for the codes of the format lines, which are texts.
func TestEveryNumberIsThere(t *testing.T) {
	all, err := All()
	if err != nil {
		t.Fatal(err)
	}
	number := regexp.MustCompile(`[:\[, ](-?\d+(?:\.\d+)?)[,\]}\s]`)
	for i, f := range files {
		text, err := fs.ReadFile(engine.Data, f.path)
		if err != nil {
			t.Fatal(err)
		}
		said := map[string]bool{}
		add := func(lines []string) {
			for _, field := range strings.FieldsFunc(strings.Join(lines, " "), func(r rune) bool { return strings.ContainsRune(" ;(),:", r) }) {
				said[field] = true
			}
		}
		for _, e := range all[i].Entries {
			add(e.Figures)
		}
		for _, p := range all[i].Parts {
			add(p.Figures)
		}
		bare := regexp.MustCompile(`"(?:[^"\\]|\\.)*"`).ReplaceAll(text, []byte(`""`))
		found := 0
		for _, m := range number.FindAllSubmatch(bare, -1) {
			found++
			if !said[string(m[1])] {
				t.Errorf("%s: the figure %s is not on the page", f.path, m[1])
			}
		}
		if found == 0 && f.id != "cautions" && f.id != "places" {
			t.Errorf("%s: no figure found", f.path)
		}
	}
}
