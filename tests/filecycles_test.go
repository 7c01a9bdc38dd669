package tests

import (
	"go/ast"
	"go/parser"
	"go/token"
	"go/types"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// oneWay lists the packages in which a file uses only files below it, so that each can
// be read from the bottom up. The list may only grow.
var oneWay = []string{"engine/session", "engine/wording", "engine/message", "engine/message/gen", "engine/cmd/underpaint"}

// TestFilesUseOneAnotherOneWay: inside a package no file uses a file that uses it,
// directly or through others.
func TestFilesUseOneAnotherOneWay(t *testing.T) {
	for _, dir := range oneWay {
		names, err := filepath.Glob(filepath.Join("..", dir, "*.go"))
		must(t, err)
		set := token.NewFileSet()
		var files []*ast.File
		for _, name := range names {
			if strings.HasSuffix(name, "_test.go") {
				continue
			}
			file, err := parser.ParseFile(set, name, nil, parser.SkipObjectResolution)
			must(t, err)
			files = append(files, file)
		}
		if len(files) < 3 {
			t.Errorf("%s: only %d files", dir, len(files))
		}
		for _, arrow := range inCycles(fileArrows(set, files)) {
			t.Errorf("%s: %s", dir, arrow)
		}
	}
}

// nothing replaces every imported package, because what files use of other packages
// says nothing about the files of this one.
type nothing struct{}

func (nothing) Import(path string) (*types.Package, error) {
	p := types.NewPackage(path, filepath.Base(path))
	p.MarkComplete()
	return p, nil
}

// fileArrows lists, for every file, the files that declare what it uses.
func fileArrows(set *token.FileSet, files []*ast.File) map[string][]string {
	info := &types.Info{Uses: map[*ast.Ident]types.Object{}}
	config := types.Config{Importer: nothing{}, Error: func(error) {}} // nothing is known about imports
	p, _ := config.Check("checked", set, files, info)
	fileOf := func(at token.Pos) string { return filepath.Base(set.Position(at).Filename) }
	arrows := map[string][]string{}
	for _, f := range files {
		arrows[fileOf(f.Package)] = nil
	}
	for use, object := range info.Uses {
		if object.Pkg() != p {
			continue
		}
		if _, imported := object.(*types.PkgName); imported {
			continue
		}
		from, to := fileOf(use.Pos()), fileOf(object.Pos())
		if from != to && !slices.Contains(arrows[from], to) {
			arrows[from] = append(arrows[from], to)
		}
	}
	return arrows
}

// inCycles lists the arrows from a file to one that leads back to it.
func inCycles(arrows map[string][]string) (out []string) {
	for from, list := range arrows {
		for _, to := range list {
			if leads(arrows, to, from, map[string]bool{}) {
				out = append(out, from+" uses "+to+", which leads back to it")
			}
		}
	}
	slices.Sort(out)
	return out
}

func leads(arrows map[string][]string, from, to string, seen map[string]bool) bool {
	if from == to {
		return true
	}
	seen[from] = true
	return slices.ContainsFunc(arrows[from], func(next string) bool { return !seen[next] && leads(arrows, next, to, seen) })
}

// TestFileCyclesAreSeen: functions, methods and fields count; imports do not.
func TestFileCyclesAreSeen(t *testing.T) {
	check := func(sources ...string) []string {
		set := token.NewFileSet()
		var files []*ast.File
		for k, source := range sources {
			file, err := parser.ParseFile(set, string(rune('a'+k))+".go", "package x\n"+source, parser.SkipObjectResolution)
			must(t, err)
			files = append(files, file)
		}
		return inCycles(fileArrows(set, files))
	}
	low := "type T struct{ n int }\n"
	for _, c := range []struct {
		sources []string
		arrows  int
	}{
		{[]string{low, "import \"strings\"\nfunc (t *T) up() string { return strings.Repeat(\"x\", t.n) }"}, 0},
		{[]string{low + "func f(t *T) string { return t.up() }", "func (t *T) up() string { return \"\" }"}, 2},
		{[]string{"func a() { b() }", "func b() { c() }", "func c() { a() }", "func d() { a() }"}, 3},
		{[]string{low + "var v = g().n", "func g() T { return T{} }"}, 2},
	} {
		if got := check(c.sources...); len(got) != c.arrows {
			t.Errorf("%q: want %d arrows in a cycle, got %q", c.sources, c.arrows, got)
		}
	}
}
