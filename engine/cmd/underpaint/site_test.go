package main

import (
	"bytes"
	"flag"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// smallEngine writes the shortest possible module (WebAssembly Core Specification 1.0,
// 5.5.16: the magic bytes and the version) with a loader beside it.
func smallEngine(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	for name, text := range map[string]string{"engine.wasm": "\x00asm\x01\x00\x00\x00", "wasm_exec.js": "// loader"} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return filepath.Join(dir, "engine.wasm")
}

func TestSite(t *testing.T) {
	dir, ratesFile := files(t, map[string]string{"good.json": goodCar, "broken.json": `{"format":"underpaint rates 1","shop":`})
	engine := smallEngine(t)
	cases := []struct {
		name string
		args []string
		code int
		says string
		made bool
	}{
		{"all there", []string{"--rates", ratesFile, "--engine", engine}, 0, "Rates check code", true},
		{"no rates", []string{"--engine", engine}, 2, "--rates RATES.json", false},
		{"an operand", []string{ratesFile, "--rates", ratesFile}, 2, "usage:", false},
		{"no such rates", []string{"--rates", "none.json", "--engine", engine}, 1, "none.json", false},
		{"half of the rates", []string{"--rates", filepath.Join(dir, "broken.json"), "--engine", engine}, 1, "found the end of the file", false},
		{"a car for rates", []string{"--rates", filepath.Join(dir, "good.json"), "--engine", engine}, 1, `found "underpaint car 1"`, false},
		{"rates for an engine", []string{"--rates", ratesFile, "--engine", ratesFile}, 1, "expected a WebAssembly module", false},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			out := filepath.Join(t.TempDir(), "new")
			code, said, complaints := prompt(append([]string{"site", "--out", out}, c.args...)...)
			if code != c.code || !strings.Contains(said+complaints, c.says) {
				t.Errorf("exit code %d, want %d, saying %q: %s%s", code, c.code, c.says, said, complaints)
			}
			if _, err := os.Stat(out); (err == nil) != c.made {
				t.Errorf("a folder is there: %v, expected %v", err == nil, c.made)
			}
		})
	}
	if code, _, complaints := prompt("site", "--rates", ratesFile); code != 2 || !strings.Contains(complaints, "--out DIR") {
		t.Errorf("without --out: exit code %d: %s", code, complaints)
	}
}

var slow = flag.Bool("slow", false, "run the long tests as well")

// TestSiteIsThatOfTheBuild: this command and ./site build, which `make dist` runs, make
// the same folder, byte for byte.
func TestSiteIsThatOfTheBuild(t *testing.T) {
	if !*slow {
		t.Skip("not run without -slow")
	}
	_, ratesFile := files(t, nil)
	engine := smallEngine(t)
	a, b := t.TempDir(), t.TempDir()
	if code, _, complaints := prompt("site", "--rates", ratesFile, "--out", a, "--engine", engine); code != 0 {
		t.Fatal(complaints)
	}
	if said, err := exec.Command("go", "run", "underpaint/site", "build", "-out", b, "-rates", ratesFile, "-engine", engine).CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, said)
	}
	one, other := contents(t, a), contents(t, b)
	if len(one) < 100 || len(one) != len(other) {
		t.Errorf("%d files and %d", len(one), len(other))
	}
	for name, data := range one {
		if !bytes.Equal(data, other[name]) {
			t.Errorf("%s differs", name)
		}
	}
}

func contents(t *testing.T, dir string) map[string][]byte {
	t.Helper()
	all := map[string][]byte{}
	err := fs.WalkDir(os.DirFS(dir), ".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		all[name], err = fs.ReadFile(os.DirFS(dir), name)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return all
}
