package chance

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"strings"
	"testing"
)

// allowedMath lists the functions of package math that give the same bits everywhere.
var allowedMath = map[string]bool{
	"Abs": true, "Ceil": true, "Copysign": true, "Floor": true, "Max": true, "Min": true, "Sqrt": true,
	"Float64bits": true, "Float64frombits": true, "Inf": true, "IsInf": true, "IsNaN": true, "NaN": true, "MaxFloat64": true,
}

// faults lists uses of other functions of math, and products without a float64(...)
// conversion, or uint64(...) for whole numbers. A conversion around a larger product or
// quotient covers the products inside it.
func faults(fset *token.FileSet, file *ast.File) []string {
	var found []string
	var parents []ast.Node
	at := func(n ast.Node, what string) { found = append(found, fset.Position(n.Pos()).String()+": "+what) }
	ast.Inspect(file, func(n ast.Node) bool {
		if n == nil {
			parents = parents[:len(parents)-1]
			return true
		}
		switch n := n.(type) {
		case *ast.SelectorExpr:
			if x, ok := n.X.(*ast.Ident); ok && x.Name == "math" && !allowedMath[n.Sel.Name] {
				at(n, "math."+n.Sel.Name)
			}
		case *ast.AssignStmt:
			if n.Tok == token.MUL_ASSIGN || n.Tok == token.QUO_ASSIGN {
				at(n, "product or quotient by assignment")
			}
		case *ast.BinaryExpr:
			if isProduct(n) && !rounded(parents) {
				at(n, "product outside float64()")
			}
		}
		parents = append(parents, n)
		return true
	})
	return found
}

// isProduct also counts division by a literal: the compiler turns division by a power of
// two into a product, which it may then fuse.
func isProduct(n *ast.BinaryExpr) bool {
	_, literalOver := n.X.(*ast.BasicLit)
	_, literalUnder := n.Y.(*ast.BasicLit)
	return n.Op == token.MUL || n.Op == token.QUO && literalUnder && !literalOver
}

// rounded climbs from a product through larger products, quotients and brackets.
func rounded(parents []ast.Node) bool {
	for i := len(parents) - 1; i >= 0; i-- {
		switch p := parents[i].(type) {
		case *ast.ParenExpr:
			continue
		case *ast.BinaryExpr:
			if p.Op == token.MUL || p.Op == token.QUO {
				continue
			}
		case *ast.CallExpr:
			name, ok := p.Fun.(*ast.Ident)
			return ok && (name.Name == "float64" || name.Name == "uint64" || name.Name == "uint32")
		}
		return false
	}
	return false
}

func TestSourceKeepsBits(t *testing.T) {
	entries, err := os.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	files, products := 0, 0
	for _, e := range entries {
		if !strings.HasSuffix(e.Name(), ".go") || strings.HasSuffix(e.Name(), "_test.go") {
			continue
		}
		fset := token.NewFileSet()
		file, err := parser.ParseFile(fset, e.Name(), nil, parser.SkipObjectResolution)
		if err != nil {
			t.Fatal(err)
		}
		files++
		ast.Inspect(file, func(n ast.Node) bool {
			if b, ok := n.(*ast.BinaryExpr); ok && b.Op == token.MUL {
				products++
			}
			return true
		})
		for _, f := range faults(fset, file) {
			t.Error(f)
		}
	}
	if files < 8 || products < 100 {
		t.Errorf("read %d files with %d products: too few to be all", files, products)
	}
}

// The source check finds every fault in these samples and nothing else.
func TestSourceReader(t *testing.T) {
	for body, want := range map[string]int{
		"return x*y + z": 1, "return float64(x*y) + z": 0, "t := x * y; return t + z": 1,
		"return float64(x*y/z)": 0, "x *= y; return x": 1, "return math.Exp(x)": 1, "return math.Sqrt(x)": 0,
		"return x/4 + z": 1, "return float64(x/4) + z": 0, "return 1.0/3 + x/y": 0,
		"return f(x*y)": 1, "return float64(x*(y+z))": 0, "return float64(x*(y*z+1))": 1, "return float64((x*y)*z)": 0,
		"return float64(uint64(x*y))": 0, "return float64(uint64(x*y + z))": 1,
	} {
		fset := token.NewFileSet()
		file, err := parser.ParseFile(fset, "x.go", "package x\nfunc g(x, y, z float64) float64 {"+body+"}", 0)
		if err != nil {
			t.Fatal(err)
		}
		if got := faults(fset, file); len(got) != want {
			t.Errorf("%q: found %v, want %d faults", body, got, want)
		}
	}
}
