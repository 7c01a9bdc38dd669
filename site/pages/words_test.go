package pages

import (
	"encoding/json"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"underpaint/engine"
)

// rejected are the words that a customer or a body man would take for something else,
// or that belong to programs and statistics, each with the reason or what we say instead.
var rejected = []struct{ pattern, reason string }{
	{`bench\b`, "a body clamped for straightening"},
	{`\bquot(?:e[sd]?|ing)\b`, "a range is no offer"},
	{`\bquotations?\b`, "said only as what it is not"},
	{`\bpercentiles?\b|\bP(?:10|50|80|90)\b|\bconfidence\b`, "counts of ten cars are understood, these are not"},
	{`\bimagined cars?\b|\bcars (?:drawn|at hand)\b`, "simulated cars"},
	{`\bMonte Carlo\b|\biterations?\b|\brandom draws?\b`, "simulated cars"},
	{`\bfingerprints?\b|\bhash\b`, "a mark on bare steel; a rates check code"},
	{`\bremed(?:y|ies)\b`, "what to do, a way"},
	{`\bsupplements?\b|\bvariations?\b|\badd-ons?\b`, "changes to agree"},
	{`\bteardown\b|\bblueprint\w*|\bsurvey only\b`, "strip and survey"},
	{`\bpockets?\b|\bclusters? of parts\b`, "shares its water with"},
	{`\bseverit\w+|\bgrade [A-E1-5]\b|\bclass [A-E]\b`, "conditions and places are words"},
	{`\brate book\b|\btariffs?\b`, "rates; a book of labour times is another thing"},
	{`\bguide price\b|\bworst case\b|\bup to \$|\bfrom \$|\bguaranteed\b|\bas low as\b`, "promises"},
	{`\bbodge\w*|\bdefect code\b`, "found"},
	{`\bcontingency\b|\bsundries\b|\bplanning figure\b`, "allowance for the unknown; supplies; set aside"},
	{`\bmilestones?\b|\bgates?\b|\bphases?\b`, "stage"},
	{`\bpublish(?:ing)?\b|\bdeploy\w*|\bgo live\b`, "put on the website"},
	{`\bsync\w*|\baccounts?\b|\blog ?in\b|\bsign up\b|\bsubmit\b|\bdashboard\b|\bworkflow\b|\bsettings saved\b`, "there is none, or it is software talk"},
	{`\bLH\b|\bRH\b|\bN/A\b`, "left and right; not known"},
	{`\binvasive\b|\bcavit(?:y|ies)\b`, "opening up; closed box (cavity wax is the trade's name of a wax)"},
	{`\bposterior\b|\blikelihood\b|\bprior\b|\bnodes?\b|\bcalibrat\w+|\bSobol\b|\bseeded\b`, "the model's words, not the reader's"},
	{`\bclaims?\b|\badjusters?\b|\binsurer\w*`, "another trade's work"},
}

// allowed are the phrases in which a rejected word may stand, with the reason.
var allowed = regexp.MustCompile(strings.Join([]string{
	`(?:not a|no|nor a|neither \w+ nor a) quotation`, // what a range is not
	`not an estimate, (?:not a )?quotation`,
	`cost range, not an estimate, quotation or ceiling`,
	`[Cc]avity wax`, // the trade's name of a wax
	`Stake pocket`,  // the trade's name of a hole in the side of a bed
	`no accounts?`,  // said of what is not there
}, "|"))

// texts are what can come to a screen, by where it is written.
func texts(t *testing.T) map[string][]string {
	t.Helper()
	all := map[string][]string{}
	files, err := Files()
	if err != nil {
		t.Fatal(err)
	}
	for name, text := range files {
		switch path.Ext(name) {
		case ".html":
			all[name] = []string{markup(string(text))}
		case ".ts":
			all[name] = strung(string(text))
		}
	}
	for _, dir := range []string{"../../engine/cmd/underpaint", "../../engine/message", "../../engine/session", "../../engine/wording", "../build", "../figures"} {
		found, err := filepath.Glob(dir + "/*.go")
		if err != nil || len(found) == 0 {
			t.Fatalf("%s: %v", dir, err)
		}
		for _, name := range found {
			if strings.HasSuffix(name, "_test.go") {
				continue
			}
			text, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			all[strings.TrimPrefix(name, "../../")] = strung(string(text))
		}
	}
	err = fs.WalkDir(engine.Data, ".", func(name string, _ fs.DirEntry, err error) error {
		if err != nil || path.Ext(name) != ".json" {
			return err
		}
		text, err := engine.Data.ReadFile(name)
		if err != nil {
			return err
		}
		var v any
		if err := json.Unmarshal(text, &v); err != nil {
			return err
		}
		all["engine/"+name] = named(v)
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// markup without its tags and comments, and without licences, which are others' words.
func markup(text string) string {
	return strings.Join(strings.Fields(regexp.MustCompile(`(?s)<!--.*?-->|<head>.*?</head>|<pre class="licence".*?</pre>|<[^>]*>`).ReplaceAllString(text, " ")), " ")
}

// strung are the strings of a source that are sentences or labels: those with a
// space in them, and those that begin with a capital.
func strung(source string) (all []string) {
	source = regexp.MustCompile(`(?m)^\s*(?://|\*|/\*).*$|[ \t]//[ \t].*$`).ReplaceAllString(source, "")
	for _, m := range regexp.MustCompile("\"((?:[^\"\\\\\n]|\\\\.)*)\"|`((?:[^`\\\\]|\\\\.)*)`").FindAllStringSubmatch(source, -1) {
		s := regexp.MustCompile(`\$\{[^{}]*\}|%[-+.\d]*[a-z]`).ReplaceAllString(m[1]+m[2], "1")
		if regexp.MustCompile(`^[A-Z“]|[a-z,.;:] [a-z“1]`).MatchString(s) {
			all = append(all, s)
		}
	}
	return all
}

// named are the texts in US and UK words of a data file.
func named(v any) (all []string) {
	switch v := v.(type) {
	case map[string]any:
		for key, below := range v {
			if s, ok := below.(string); ok && (key == "us" || key == "uk" || key == "looks_like") {
				all = append(all, s)
				continue
			}
			all = append(all, named(below)...)
		}
	case []any:
		for _, below := range v {
			all = append(all, named(below)...)
		}
	}
	return all
}

func TestRejectedWordsAreOnNoScreen(t *testing.T) {
	count, files := 0, texts(t)
	for name, all := range files {
		for _, text := range all {
			count++
			rest := allowed.ReplaceAllString(text, "")
			for _, r := range rejected {
				if m := regexp.MustCompile(`(?i)` + r.pattern).FindString(rest); m != "" {
					t.Errorf("%s says %q (%s): %.120s", name, m, r.reason, text)
				}
			}
		}
	}
	if count < 1500 || len(files) < 120 {
		t.Errorf("only %d texts in %d files found: the patterns above no longer fit", count, len(files))
	}
}
