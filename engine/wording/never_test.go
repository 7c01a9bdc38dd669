package wording

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// never are the words that a reader stops at or takes for something else, each with
// what we say instead. Source: our own choice of one word for one thing.
var never = []struct{ pattern, instead string }{
	{`sums?`, "calculation, amount, price or cost"},
	{`items?|pieces?|spots?`, "part"},
	{`looks?|trials?|tests?`, "check"},
	{`could not(?: look| see)?`, "Couldn't check"},
	{`told`, "from your answers"},
	{`regions?`, "place"},
	{`put away|take (?:it )?away|takes? back|taken back|let it go|leave it`, "Save on this device, Save as a file, Undo, Remove, Discard or Cancel"},
	{`how it is had`, "where the part comes from"},
	{`imagined|cars drawn|cars at hand|cars? in hand`, "simulated cars"},
	{`closer`, "narrower"},
	{`skins`, "under the outer panels"},
	{`hinged panels?`, "hood and trunk lid; bonnet and boot lid"},
	{`seed`, "start number"},
	{`hangs? on|stands? there|comes? whole|came whole|bared|keeps? company|came to`, "plain words, with an actor"},
	{`invalid|illegal|mistakes?`, "what was found, where, and what to do"},
	{`\d+ %|" %`, "no space before the sign"},
	{`cars? of \d+|8 in 10:`, "cars out of 10"},
}

// keptAsWritten are sentences that may have such a word, each with the reason.
var keptAsWritten = map[string]string{
	"how it is had":               "heading of a column in tables that shops already have",
	"mostly put away in a garage": "an answer as an earlier version worded it, quoted to whoever gave it",
}

// neverPattern holds one group for each of the words above.
var neverPattern = func() *regexp.Regexp {
	var all []string
	for _, n := range never {
		all = append(all, "("+n.pattern+")")
	}
	return regexp.MustCompile(`(?i)(?:^|[^\pL\d_])(?:` + strings.Join(all, "|") + `)(?:$|[^\pL\d_])`)
}()

// saysNever finds the first such word of a text and what to say instead; both are
// empty when there is none.
func saysNever(text string) (word, instead string) {
	if keptAsWritten[text] != "" {
		return "", ""
	}
	found := neverPattern.FindStringSubmatch(text)
	for k, n := range never {
		if found != nil && found[k+1] != "" {
			return found[k+1], n.instead
		}
	}
	return "", ""
}

// sentencesOf are the strings with a space in the sources of a package, without its
// tests: what has no space is an id or a key.
func sentencesOf(t *testing.T, dir string) (out []string) {
	t.Helper()
	names, err := filepath.Glob(dir + "/*.go")
	if err != nil || len(names) == 0 {
		t.Fatalf("%s: %d files, %v", dir, len(names), err)
	}
	for _, name := range names {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(file, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.ImportSpec, *ast.Field:
				return false
			case *ast.BasicLit:
				if s, err := strconv.Unquote(n.Value); err == nil && n.Kind == token.STRING && strings.Contains(s, " ") {
					out = append(out, s)
				}
			}
			return true
		})
	}
	return out
}

// TestNeverWords: no text here, in the answers, at the prompt or in an error has one of
// the words above.
func TestNeverWords(t *testing.T) {
	us, uk := textsOf(t)
	all := slices.Concat(us, uk)
	for _, dir := range []string{"../session", "../message", "../cmd/underpaint", "../carfile", "../strict"} {
		all = append(all, sentencesOf(t, dir)...)
	}
	if len(all) < 700 {
		t.Fatalf("only %d texts were read", len(all))
	}
	for _, text := range all {
		if word, instead := saysNever(text); word != "" {
			t.Errorf("%q: say %q instead of %q", text, instead, word)
		}
	}
}

// TestNeverWordsCanFail: each pattern is seen, whatever is around it, and a longer word
// that holds it is not.
func TestNeverWordsCanFail(t *testing.T) {
	for _, text := range []string{"The sums stopped", "an item of this body", "Look again?", "16 imagined cars", "18 % more", "6 cars of 10", "what it came to"} {
		if word, _ := saysNever(text); word == "" {
			t.Errorf("%q was let through", text)
		}
	}
	for _, text := range []string{"summer", "looked sound", "itemize", "18% more", "6 cars out of 10", "how it is had"} {
		if word, _ := saysNever(text); word != "" {
			t.Errorf("%q was taken for %q", text, word)
		}
	}
}
