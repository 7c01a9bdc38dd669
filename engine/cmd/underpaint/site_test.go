package main

import (
	"bytes"
	"encoding/json"
	"flag"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"underpaint/engine/rates"
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

// TestOneListOfWarnings: check, check --json and site warn of the same, which is what the
// rates page shows: it asks the engine what the folder asks it.
func TestOneListOfWarnings(t *testing.T) {
	real := strings.NewReplacer(`"invented": true`, `"invented": false`, "\"price\": null,\n  \"to_stop\"", "\"price\": \"12\",\n  \"to_stop\"").Replace(string(rates.Sample()))
	dir, _ := files(t, map[string]string{"called.json": real, "real.json": strings.Replace(real, "This shop is invented and", "These rates are ours and", 1)})
	warnings := func(out string) (all []string) {
		for line := range strings.Lines(out) {
			if text, is := strings.CutPrefix(strings.TrimSpace(line), "warning: "); is {
				all = append(all, text)
			}
		}
		return all
	}
	name := filepath.Join(dir, "real.json")
	_, words, _ := prompt("check", name)
	_, asJSON, _ := prompt("check", "--json", name)
	_, made, complaints := prompt("site", "--rates", name, "--out", t.TempDir(), "--engine", smallEngine(t))
	var all struct{ Files []checked }
	if err := json.Unmarshal([]byte(asJSON), &all); err != nil {
		t.Fatal(err)
	}
	want, inSite := warnings(words), warnings(made)
	if len(want) < 6 || len(inSite) != len(want) || len(all.Files[0].Warnings) != len(want) {
		t.Fatalf("%d, %d and %d warnings: %s%s", len(want), len(inSite), len(all.Files[0].Warnings), made, complaints)
	}
	for k, w := range all.Files[0].Warnings {
		if want[k] != w.Text || inSite[k] != strings.TrimPrefix(w.Path+": "+w.Text, ": ") {
			t.Errorf("check %q, site %q, JSON %+v", want[k], inSite[k], w)
		}
	}
	for _, must := range []string{"The note on tax is still the sample's", "The strip and survey is priced at $12,", "figures are still exactly those of the invented sample"} {
		if !strings.Contains(words, must) {
			t.Errorf("no %q in %s", must, words)
		}
	}

	name, out := filepath.Join(dir, "called.json"), filepath.Join(t.TempDir(), "new")
	if code, said, _ := prompt("check", name); code != 0 || !strings.Contains(said, "warning: The terms still say that the shop is invented.") {
		t.Errorf("check: code %d, %s", code, said)
	}
	code, said, complaints := prompt("site", "--rates", name, "--out", out, "--engine", smallEngine(t))
	if _, err := os.Stat(out); code != 1 || said != "" || !strings.Contains(complaints, "terms[0]: expected terms of your own") || err == nil {
		t.Errorf("site: code %d, %q, %s", code, said, complaints)
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
