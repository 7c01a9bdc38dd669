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

// wordPairs are words of one set with those of the other. A side is empty where its word
// means something else in the other set (a hood is a bonnet in the US and a
// folding top in the UK; an undercoat is a paint in the UK). Source: spelling of US and
// UK dictionaries and names of the trade, common practice, from memory.
var wordPairs = []struct{ us, uk string }{
	{"color", "colour"}, {"gray", "grey"}, {"center", "centre"}, {"mold", "mould"}, {"aluminum", "aluminium"}, {"labor", "labour"}, {"tire", "tyre"},
	{"walk-around", "walk-round"}, {"trunk", "boot"}, {"fender", "wing"}, {"rocker", "sill"}, {"", "bonnet"}, {"transmission", "gearbox"},
	{"", "underseal"}, {"sublet", "subcontract"}, {"", "scuttle"}, {"cowl", ""}, {"", "nearside"}, {"", "offside"}, {"", "chassis"}, {"", "mend"},
	{"costlier", "dearer"}, {"", "dearest"}, {"shop", "workshop"}, {"check off", "tick"}, {"harness(?:es)?", "loom"}, {"headliner", "headlining"},
	{"neighbor", "neighbour"}, {"toward", "towards"}, {"license", "licence"},
}

// found counts the texts with a word of the other set.
func found(us, uk []string) map[string]int {
	out := map[string]int{}
	count := func(word string, texts []string) {
		if word == "" {
			return
		}
		is := regexp.MustCompile(`(?i)\b` + word + `(s|ed|ing)?\b`)
		for _, text := range texts {
			if is.MatchString(text) {
				out[word]++
			}
		}
	}
	for _, p := range wordPairs {
		count(p.uk, us)
		count(p.us, uk)
	}
	return out
}

// textsOf returns the texts of both sets, from the package's sources and its data.
func textsOf(t *testing.T) (us, uk []string) {
	names, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range names {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		a, b := literals(file)
		us, uk = append(us, a...), append(uk, b...)
	}
	l, err := loadLists()
	if err != nil {
		t.Fatal(err)
	}
	all := append(slices.Concat(l.notInIt, l.limits), l.stampedBody)
	for _, c := range l.cautions {
		all = append(all, c.text)
	}
	for _, w := range all {
		us, uk = append(us, w.US), append(uk, w.UK)
	}
	return us, uk
}

// literals returns the sentences of a source. An argument of say(us, uk) and a member of
// a pair of words belong to one set, everything else belongs to both.
func literals(file *ast.File) (us, uk []string) {
	text := func(e ast.Expr) string {
		if l, ok := e.(*ast.BasicLit); ok && l.Kind == token.STRING {
			if s, err := strconv.Unquote(l.Value); err == nil && regexp.MustCompile(`^[A-Z]|[a-z] |^[a-z]+$`).MatchString(s) {
				return s
			}
		}
		return ""
	}
	var visit func(n ast.Node) bool
	visit = func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.ImportSpec, *ast.Field:
			return false
		case *ast.CallExpr:
			if s, ok := n.Fun.(*ast.SelectorExpr); ok && s.Sel.Name == "say" {
				us, uk = append(us, text(n.Args[0])), append(uk, text(n.Args[1]))
				return false
			}
		case *ast.KeyValueExpr:
			switch id, _ := n.Key.(*ast.Ident); {
			case id != nil && id.Name == "US":
				us = append(us, text(n.Value))
				return false
			case id != nil && id.Name == "UK":
				uk = append(uk, text(n.Value))
				return false
			}
			ast.Inspect(n.Value, visit) // the key is an id
			return false
		case *ast.BasicLit:
			us, uk = append(us, text(n)), append(uk, text(n))
		}
		return true
	}
	ast.Inspect(file, visit)
	return us, uk
}

// TestWordSets: neither set has words of the other.
func TestWordSets(t *testing.T) {
	us, uk := textsOf(t)
	if len(us) < 200 {
		t.Fatalf("only %d texts were read", len(us))
	}
	for word, n := range found(us, uk) {
		t.Errorf("%d texts of the wrong set have %q", n, word)
	}
}

// TestWordSetsCanFail: a word of the other set is found in either set, and in a text that
// belongs to both.
func TestWordSetsCanFail(t *testing.T) {
	if got := found([]string{"Two colours", "The bonnet"}, []string{"A gray fender"}); len(got) != 4 {
		t.Errorf("want four words, got %v", got)
	}
	source := "package x\nvar a = t.say(\"Gray\", \"Grey\")\nvar b = car.Words{US: \"Hood\", UK: \"Bonnet\"}\nvar c = \"A colour\"\n"
	file, err := parser.ParseFile(token.NewFileSet(), "x.go", source, 0)
	if err != nil {
		t.Fatal(err)
	}
	us, uk := literals(file)
	if strings.Join(us, "|") != "Gray|Hood|A colour" || strings.Join(uk, "|") != "Grey|Bonnet|A colour" {
		t.Errorf("%q and %q", us, uk)
	}
}
