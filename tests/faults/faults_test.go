package main

import (
	"go/parser"
	"go/token"
	"strings"
	"testing"
)

// TestFaults: each kind of fault is made, once in every place where it is possible.
func TestFaults(t *testing.T) {
	source := "package p\n\nfunc f(a, b int) int {\n\tif a < b && g(a, b) {\n\t\ta += 2\n\t}\n\treturn a - b\n}\n"
	set := token.NewFileSet()
	file, err := parser.ParseFile(set, "p.go", source, 0)
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, f := range faultsIn(set, file, []byte(source)) {
		got = append(got, f.what)
		if source[f.from:f.to]+" → "+f.text != f.what {
			t.Errorf("%q stands at %d", f.what, f.from)
		}
	}
	want := "a < b && g(a, b) → !(a < b && g(a, b))|a < b && g(a, b) → false && (a < b && g(a, b))|&& → |||< → <=|< → >=|a, b → b, a|+= → -=|2 → 3|2 → 1|- → +"
	if strings.Join(got, "|") != want {
		t.Errorf("got %s", strings.Join(got, "|"))
	}
}
