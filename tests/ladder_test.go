package tests

import (
	"os"
	"os/exec"
	"strings"
	"testing"
)

// ladder says which of our packages each package may import directly. Do not loosen it
// to make a build pass: a package that needs something from above is in the wrong
// place. Only the command may import anything of the site, and of that only the packages
// that make the folder, serve it, hold the schemas and name the figures.
var ladder = map[string]string{
	"engine":                   "",
	"engine/strict":            "",
	"engine/money":             "",
	"engine/chance":            "",
	"engine/columns":           "",
	"engine/pastjobs/scores":   "chance",
	"engine/car":               "strict",
	"engine/network":           "chance",
	"engine/exposure":          "strict chance car",
	"engine/damage":            "strict chance car network exposure",
	"engine/evidence":          "strict chance car damage",
	"engine/olddamage":         "strict chance car damage evidence",
	"engine/rates":             "strict money car olddamage",
	"engine/pricing":           "strict money chance car damage olddamage rates",
	"engine/shapley":           "chance",
	"engine/estimate":          "money chance car damage pricing shapley",
	"engine/carfile":           "strict chance car exposure damage evidence olddamage rates pricing",
	"engine/pastjobs":          "strict money chance columns pastjobs/scores car exposure damage evidence olddamage rates pricing estimate carfile",
	"engine/pastjobs/invented": "money chance car carfile damage evidence olddamage rates pricing pastjobs",
	"engine/session":           "strict money chance columns car exposure damage evidence olddamage rates pricing estimate carfile pastjobs",
	"engine/wording":           "strict money chance columns pastjobs/scores car exposure estimate olddamage rates pricing carfile pastjobs session",
	"engine/message":           "strict money columns pastjobs/scores car olddamage estimate rates pricing carfile pastjobs session wording",
	"engine/message/gen":       "",
	"engine/cmd/underpaint":    "strict car rates pricing estimate carfile pastjobs pastjobs/invented session wording message site/build site/serve site/schema site/figures",
	"wasm":                     "message wasm/bridge",
	"wasm/bridge":              "",
	"wasm/customer":            "message wasm/bridge",
}

// promptOnly begins the names of packages by others that only the command may import:
// they read command lines, and the engine in a browser has none.
const promptOnly = "github.com/spf13/"

// forbidden packages are too large for the engine in a browser, or would make a result
// depend on a clock.
var forbidden = []string{"net/http", "text/template", "html/template", "encoding/json", "math/rand", "reflect", "regexp", "time"}

func TestLadder(t *testing.T) {
	list := `{{.ImportPath}}:{{join .Imports " "}}`
	out, err := exec.Command("go", "list", "-f", list, "underpaint/engine/...").Output()
	if err != nil {
		t.Fatal(err)
	}
	browser := exec.Command("go", "list", "-f", list, "underpaint/wasm/...") // builds only for browsers
	browser.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	more, err := browser.Output()
	if err != nil {
		t.Fatal(err)
	}
	seen := 0
	for _, line := range strings.Split(strings.TrimSpace(string(out)+string(more)), "\n") {
		name, imports, _ := strings.Cut(line, ":")
		name = strings.TrimPrefix(name, "underpaint/")
		allowed, known := ladder[name]
		if !known {
			t.Errorf("%s has no place on the ladder", name)
		}
		seen++
		for _, fault := range offLadder(name, allowed, strings.Fields(imports)) {
			t.Error(fault)
		}
	}
	if seen < 20 {
		t.Errorf("only %d packages listed", seen)
	}
}

// TestBrowsersLoadNoCommandLine: nothing that reads command lines is in an engine for a
// browser, directly or through others.
func TestBrowsersLoadNoCommandLine(t *testing.T) {
	deps := func(system, arch, program string) string {
		list := exec.Command("go", "list", "-deps", program)
		list.Env = append(os.Environ(), "GOOS="+system, "GOARCH="+arch)
		out, err := list.Output()
		if err != nil {
			t.Fatal(err)
		}
		return string(out)
	}
	for _, program := range []string{"underpaint/wasm", "underpaint/wasm/customer"} {
		if all := deps("js", "wasm", program); strings.Contains(all, promptOnly) || !strings.Contains(all, "underpaint/engine/message\n") {
			t.Errorf("%s holds what only the prompt needs, or no engine:\n%s", program, all)
		}
	}
	if !strings.Contains(deps("linux", "amd64", "underpaint/engine/cmd/underpaint"), promptOnly) {
		t.Error("the command no longer imports " + promptOnly + ": this test looks for nothing")
	}
}

// offLadder lists the imports that a package may not have.
func offLadder(name, allowed string, imports []string) (faults []string) {
	for _, i := range imports {
		own, ours := strings.CutPrefix(i, "underpaint/")
		if own = strings.TrimPrefix(own, "engine/"); ours && !contains(strings.Fields(allowed), own) {
			faults = append(faults, name+" may not import "+own)
		}
		if !strings.Contains(name, "cmd/") && (contains(forbidden, i) || strings.HasPrefix(i, promptOnly)) {
			faults = append(faults, name+" may not import "+i)
		}
	}
	return faults
}

// TestLadderCanFail proves that the gate can go red.
func TestLadderCanFail(t *testing.T) {
	if got := offLadder("engine/car", "strict", []string{"underpaint/engine/damage", "net/http", "fmt", "underpaint/engine/strict", "github.com/spf13/cobra"}); len(got) != 3 {
		t.Errorf("want three faults, got %v", got)
	}
	if got := offLadder("engine/message", ladder["engine/message"], []string{"underpaint/site/build", "underpaint/site/pages", "underpaint/wasm"}); len(got) != 3 {
		t.Errorf("want three faults, got %v", got)
	}
	if got := offLadder("engine/cmd/underpaint", ladder["engine/cmd/underpaint"], []string{"underpaint/site/build", "underpaint/site/pages"}); len(got) != 1 {
		t.Errorf("want one fault, got %v", got)
	}
}

func contains(list []string, s string) bool {
	for _, x := range list {
		if x == s {
			return true
		}
	}
	return false
}
