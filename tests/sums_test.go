//go:build !js

package tests

import (
	"bufio"
	"go/ast"
	"go/parser"
	"go/token"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// The same arithmetic on every processor. Two things make results differ: a product and
// a sum rounded once instead of twice, which the Go specification allows unless a
// conversion separates them, and functions of package math that are written in assembly
// for some processors only.

// exactMath lists what engine packages may use of package math: constants, and
// functions whose results IEEE 754 fixes to the last bit, or that read a table (Pow10)
// or only move bits. Exponentials, logarithms and powers are in package chance.
var exactMath = strings.Fields("Abs Ceil Floor Trunc Round Sqrt Max Min Inf IsInf IsNaN NaN Signbit Copysign Pow10 " +
	"Float64bits Float64frombits MaxInt MaxInt32 MaxInt64 MinInt64 MaxUint64 MaxFloat64 Ln2")

// fused matches a line of the compiler's listing for arm64 that multiplies and adds in
// one step, with the place in the source.
var fused = regexp.MustCompile(`\(([^()]+:\d+)\)\tFN?M(ADD|SUB)[DS]\t`)

// fusedSteps lists the places that the compiler turns into fused steps.
func fusedSteps(t *testing.T, dir string, packages ...string) (places []string) {
	t.Helper()
	cmd := exec.Command("go", append([]string{"build", "-gcflags=-S"}, packages...)...)
	cmd.Dir = dir
	cmd.Env = append(os.Environ(), "GOOS=linux", "GOARCH=arm64", "CGO_ENABLED=0", "GOFLAGS=")
	listing, err := cmd.StderrPipe()
	must(t, err)
	must(t, cmd.Start())
	lines := bufio.NewScanner(listing)
	lines.Buffer(nil, 1<<20)
	functions := 0
	for lines.Scan() {
		if strings.Contains(lines.Text(), " STEXT ") {
			functions++
		}
		if at := fused.FindStringSubmatch(lines.Text()); at != nil {
			places = append(places, at[1])
		}
	}
	must(t, lines.Err())
	must(t, cmd.Wait())
	if functions == 0 {
		t.Fatal("the compiler listed no function")
	}
	return places
}

// enginePackages are those whose results the pages show: all but the command.
func enginePackages(t *testing.T) (packages []string) {
	out, err := exec.Command("go", "list", "underpaint/engine/...").Output()
	must(t, err)
	for _, p := range strings.Fields(string(out)) {
		if !strings.Contains(p, "/cmd/") {
			packages = append(packages, p)
		}
	}
	return packages
}

// TestNoFusedSteps compiles the engine for arm64, where the compiler fuses what it may.
// A place that it lists needs float64(x*y) around its product, or around a division by
// a power of two, which is compiled to a product.
func TestNoFusedSteps(t *testing.T) {
	packages := enginePackages(t)
	if len(packages) < 18 {
		t.Fatalf("only %d packages", len(packages))
	}
	for _, place := range fusedSteps(t, "..", packages...) {
		t.Errorf("%s: a product and a sum in one step on arm64", place)
	}
}

// TestFusedStepsAreFound proves that the gate can go red: a sum in one line, one over
// two lines, and one hidden by an inlined function.
func TestFusedStepsAreFound(t *testing.T) {
	dir := t.TempDir()
	source := `package risky

func Line(x, y, z float64) float64 { return x*y + z }

func Lines(x, y, z float64) float64 {
	p := x * y
	return p - z
}

func half(x float64) float64 { return x / 2 }

func Hidden(x, y float64) float64 { return y + half(x) }

func Safe(x, y, z float64) float64 { return float64(x*y) + z }
`
	must(t, os.WriteFile(filepath.Join(dir, "go.mod"), []byte("module risky\n\ngo 1.26\n"), 0o600))
	must(t, os.WriteFile(filepath.Join(dir, "risky.go"), []byte(source), 0o600))
	if got := fusedSteps(t, dir, "."); len(got) != 3 {
		t.Errorf("want three places, got %v", got)
	}
}

// TestMathIsExact limits engine packages to the functions whose last bit is fixed.
func TestMathIsExact(t *testing.T) {
	files := 0
	err := filepath.WalkDir("../engine", func(path string, _ os.DirEntry, err error) error {
		if err != nil || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return err
		}
		files++
		f, err := os.Open(path)
		if err != nil {
			return err
		}
		defer f.Close()
		for _, fault := range inexact(t, path, f) {
			t.Error(fault)
		}
		return nil
	})
	must(t, err)
	if files < 200 {
		t.Errorf("only %d files read", files)
	}
	if got := inexact(t, "x.go", strings.NewReader("package x\n\nimport \"math\"\n\nvar a, b = math.Exp(1), math.Sqrt(math.FMA(1, 2, 3))\n")); len(got) != 2 {
		t.Errorf("want two faults, got %v", got)
	}
	if got := inexact(t, "x.go", strings.NewReader("package x\n\nimport m \"math\"\n\nvar a = m.Pow(1, 2)\n")); len(got) != 1 {
		t.Errorf("want one fault, got %v", got)
	}
}

// inexact lists the uses of package math that are not in exactMath.
func inexact(t *testing.T, path string, source io.Reader) (faults []string) {
	t.Helper()
	set := token.NewFileSet()
	file, err := parser.ParseFile(set, path, source, parser.SkipObjectResolution)
	must(t, err)
	name := ""
	for _, i := range file.Imports {
		if i.Path.Value == `"math"` {
			if name = "math"; i.Name != nil {
				name = i.Name.Name
			}
		}
	}
	ast.Inspect(file, func(n ast.Node) bool {
		s, ok := n.(*ast.SelectorExpr)
		if !ok {
			return true
		}
		if x, ok := s.X.(*ast.Ident); ok && name != "" && x.Name == name && !contains(exactMath, s.Sel.Name) {
			faults = append(faults, set.Position(s.Pos()).String()+": math."+s.Sel.Name+" may differ from processor to processor; see chance")
		}
		return true
	})
	return faults
}
