package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"go/parser"
	"go/token"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"time"
)

func main() {
	pkg := flag.String("package", "./engine/money", "the package whose tests are run")
	n := flag.Int("n", 50, "how many faults are tried")
	seed := flag.Uint64("seed", 1, "chooses the mistakes")
	limit := flag.Duration("limit", 3*time.Minute, "a test run that takes longer counts as having caught the fault")
	flag.Parse()
	if err := run(*pkg, *n, *seed, *limit); err != nil {
		fmt.Fprintln(os.Stderr, "faults:", err)
		os.Exit(1)
	}
}

// site is a fault and the file that it is in.
type site struct {
	fault
	name   string
	source []byte
	line   int
}

func run(pkg string, n int, seed uint64, limit time.Duration) error {
	root, err := os.Getwd()
	if err != nil {
		return err
	}
	dir, err := os.MkdirTemp("", "faults")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	sites, err := sitesOf(filepath.Join(root, pkg))
	if err != nil {
		return err
	}
	if sees, err := seen(dir, pkg, nil, limit); err != nil || sees != "survived" {
		return fmt.Errorf("the tests of %s do not pass as they are: %s %v", pkg, sees, err)
	}
	random := rand.New(rand.NewPCG(seed, 0))
	random.Shuffle(len(sites), func(i, j int) { sites[i], sites[j] = sites[j], sites[i] })
	count := map[string]int{}
	for k := range sites {
		if count["caught"]+count["survived"] == n {
			break
		}
		s := &sites[k]
		sees, err := seen(dir, pkg, s, limit)
		if err != nil {
			return err
		}
		count[sees]++
		if sees != "not compiled" {
			fmt.Printf("%-8s  %s:%d  %s\n", sees, filepath.Base(s.name), s.line, strings.ReplaceAll(s.what, "\n", " "))
		}
	}
	tried := count["caught"] + count["survived"]
	fmt.Printf("%s: %d of %d faults caught, %d survived; %d of the %d possible did not compile and are not counted\n",
		pkg, count["caught"], tried, count["survived"], count["not compiled"], len(sites))
	return nil
}

func sitesOf(dir string) (out []site, err error) {
	names, err := filepath.Glob(filepath.Join(dir, "*.go"))
	if err != nil {
		return nil, err
	}
	for _, name := range names {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		source, err := os.ReadFile(name)
		if err != nil {
			return nil, err
		}
		set := token.NewFileSet()
		file, err := parser.ParseFile(set, name, source, parser.SkipObjectResolution)
		if err != nil {
			return nil, err
		}
		for _, f := range faultsIn(set, file, source) {
			out = append(out, site{f, name, source, 1 + strings.Count(string(source[:f.from]), "\n")})
		}
	}
	return out, nil
}

// seen runs the package's tests with one fault in it, or with none, and returns
// "caught", "survived" or "not compiled". The source itself does not change: the
// compiler is told to read another file in place of the one with the fault.
func seen(dir, pkg string, s *site, limit time.Duration) (string, error) {
	replaced := filepath.Join(dir, "replaced.json")
	text := `{}`
	if s != nil {
		changed := filepath.Join(dir, "changed.go")
		source := string(s.source[:s.from]) + s.text + string(s.source[s.to:])
		if err := os.WriteFile(changed, []byte(source), 0o600); err != nil {
			return "", err
		}
		text = fmt.Sprintf(`{"Replace":{%q:%q}}`, s.name, changed)
	}
	if err := os.WriteFile(replaced, []byte(text), 0o600); err != nil {
		return "", err
	}
	ctx, stop := context.WithTimeout(context.Background(), limit)
	defer stop()
	program := filepath.Join(dir, "package.test")
	if err := exec.CommandContext(ctx, "go", "test", "-c", "-vet=off", "-overlay="+replaced, "-o", program, pkg).Run(); err != nil {
		return "not compiled", nil
	}
	test := exec.CommandContext(ctx, "nice", program, "-test.failfast")
	test.Dir = pkg
	err := test.Run()
	var failed *exec.ExitError
	switch {
	case err == nil:
		return "survived", nil
	case errors.As(err, &failed):
		return "caught", nil
	}
	return "", err
}
