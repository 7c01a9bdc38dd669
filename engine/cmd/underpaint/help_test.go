package main

import (
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime/debug"
	"slices"
	"strings"
	"testing"

	"underpaint/engine/rates"
	"underpaint/engine/session"
	"underpaint/site/schema"
)

// TestEveryCommandHasItsHelp: on standard output with exit code 0, in each way in which
// people ask for it; and words.go describes no command that does not exist.
func TestEveryCommandHasItsHelp(t *testing.T) {
	root := command{}.tree()
	_, all, _ := prompt("help")
	for _, d := range commands {
		name := d.name()
		if _, rest, err := root.Find([]string{name}); err != nil || len(rest) > 0 {
			t.Errorf("%s is described and does not exist", name)
		}
		if len(d.long) < 40 || len(d.examples) == 0 {
			t.Errorf("%s: expected a sentence and an example", name)
		}
		code, want, complaints := prompt("help", name)
		if code != 0 || complaints != "" || !strings.Contains(want, d.long) || !strings.Contains(want, d.examples[0]) || !strings.Contains(want, "  -h, --help") {
			t.Errorf("help %s: code %d, %s%s", name, code, complaints, want)
		}
		for _, f := range d.forms {
			if !strings.Contains(want, f.use) || !strings.Contains(all, f.use) {
				t.Errorf("%s: %q is not in its help or in the overview", name, f.use)
			}
		}
		for _, flag := range []string{"--help", "-h", "-help"} {
			if code, out, complaints := prompt(name, flag); code != 0 || out != want || complaints != "" {
				t.Errorf("%s %s: code %d, %s%s", name, flag, code, complaints, out)
			}
		}
	}
	if n := len(root.Commands()); n != len(commands) {
		t.Errorf("%d commands, %d described", n, len(commands))
	}
}

// TestHelpNamesEveryFlag: what the help of a command calls a flag is one, and every flag
// but --help stands in a line of usage.
func TestHelpNamesEveryFlag(t *testing.T) {
	for _, cmd := range (command{}).tree().Commands() {
		_, help, _ := prompt("help", cmd.Name())
		_, flags, _ := strings.Cut(help, "\nflags:\n")
		flags, _, _ = strings.Cut(flags, "\nfor example:")
		usage := string(usageOf(cmd.Name()))
		for line := range strings.Lines(flags) {
			name, _, _ := strings.Cut(line[strings.Index(line, "--"):], " ")
			if name != "--help" && !strings.Contains(usage, name) {
				t.Errorf("%s: the usage does not name %s", cmd.Name(), name)
			}
		}
	}
}

// TestDocumentsNameRealCommands: every command line in the documents has a command that
// exists, and flags of that command.
func TestDocumentsNameRealCommands(t *testing.T) {
	line := regexp.MustCompile("(?m)(?:`|^    )(?:go run \\./engine/cmd/)?underpaint ([a-z][^`\\n]*)")
	seen := map[string]bool{}
	for _, name := range []string{"README.md", "DEVELOPERS.md"} {
		text, err := os.ReadFile("../../../" + name)
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range line.FindAllStringSubmatch(string(text), -1) {
			args := strings.Fields(m[1])
			cmd, _, err := (command{}).tree().Find(args[:1])
			if err != nil || !cmd.HasParent() {
				t.Errorf("%s: there is no command %q", name, m[1])
				continue
			}
			seen[cmd.Name()] = true
			for _, arg := range args {
				if flag, is := strings.CutPrefix(arg, "--"); is && cmd.Flags().Lookup(flag) == nil {
					t.Errorf("%s: %q has no flag --%s", name, m[1], flag)
				}
			}
		}
	}
	if len(seen) < 8 {
		t.Errorf("only %v are named", seen)
	}
}

// TestMisused: exit code 2, nothing on standard output, the nearest name and the usage on
// standard error.
func TestMisused(t *testing.T) {
	for _, c := range []struct {
		args string
		says string
	}{
		{"rnage car.json", `found the command "rnage"; did you mean "range"?`},
		{"help chek", `found the command "chek"; did you mean "check"?`},
		{"help range twice", `found the command "range"`},
		{"dance", `found the command "dance"; use one of these`},
		{"range car.json --rate r.json", "found the flag --rate; did you mean --rates?"},
		{"check --jason", "found the flag --jason; did you mean --json?"},
		{"check --loud", "found the flag --loud; the flags here are --help, --json"},
		{"range -x car.json", "found the flag -x; the flags here are"},
		{"why car.json --loud", "the flags here are --help, --json, --rates"},
		{"range car.json --rates", "expected a value after --rates"},
		{"range car.json --json=perhaps", "perhaps"},
		{"--versoin", "found the flag --versoin; did you mean --version?"},
		{"schema jobs", "schema needs rates, car or past-jobs"},
		{"completion tcsh", "completion needs bash, zsh, fish or powershell"},
		{"man range", "man needs nothing after it"},
		{"serve my-rates.json", "serve needs no file beside its flags"},
		{"check", "check needs one file or more"},
	} {
		code, out, complaints := prompt(strings.Fields(c.args)...)
		if code != 2 || out != "" || !strings.HasPrefix(complaints, "underpaint: ") || !strings.Contains(complaints, c.says) || !strings.Contains(complaints, "\nusage:\n  underpaint ") {
			t.Errorf("%s: code %d, %q, %.300s", c.args, code, out, complaints)
		}
	}
}

// TestOneDashIsEnough: flags used to be taken with one dash too, and scripts may use it.
func TestOneDashIsEnough(t *testing.T) {
	_, ratesFile := files(t, nil)
	_, want, _ := prompt("why", "-", "--rates", ratesFile, "--json")
	for _, args := range [][]string{{"why", "-rates", ratesFile, "-json", "-"}, {"why", "-", "-json=true", "-rates=" + ratesFile}} {
		if code, out, complaints := prompt(args...); code != 0 || want == "" || out != want {
			t.Errorf("%q: code %d, %s", args, code, complaints)
		}
	}
}

func TestSchema(t *testing.T) {
	for _, name := range schema.Names {
		want, err := os.ReadFile("../../../site/schema/" + name + ".schema.json")
		if code, out, complaints := prompt("schema", name); err != nil || code != 0 || out != string(want) {
			t.Errorf("%s: code %d, %s (%v)", name, code, complaints, err)
		}
	}
}

func TestVersion(t *testing.T) {
	code, out, complaints := prompt("--version")
	for _, want := range []string{"underpaint ", "underpaint rates 1", "underpaint car 1", "underpaint past jobs 1", "damage 2", "figures code " + session.FiguresCode()} {
		if code != 0 || complaints != "" || !strings.Contains(out, want) {
			t.Errorf("code %d: no %q in %s%s", code, want, out, complaints)
		}
	}
	commit := &debug.BuildInfo{Settings: []debug.BuildSetting{{Key: "vcs.revision", Value: "0123456789abcdef"}, {Key: "vcs.time", Value: "2026-06-03T10:00:00Z"}, {Key: "vcs.modified", Value: "true"}}}
	for _, c := range []struct {
		released string
		info     *debug.BuildInfo
		want     string
	}{
		{"1.2", nil, "1.2"},
		{"", nil, "(no release)"},
		{"", commit, "(no release), commit 0123456789ab of 2026-06-03 with changes that are not committed"},
	} {
		if got := versionOf(c.released, c.info); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

// TestCompletion: what a shell asks for when Tab is pressed, and that bash can read its
// script.
func TestCompletion(t *testing.T) {
	for _, c := range []struct {
		typed []string
		want  string
	}{
		{[]string{"sta"}, "stages\tshow its range at each stage"},
		{[]string{"schema", ""}, "rates\ncar\npast-jobs\n"},
		{[]string{"worth", "--for", ""}, "shop\ncustomer\n"},
		{[]string{"range", ""}, "json\n:8\n"},    // 8: files whose names end so
		{[]string{"site", "--out", ""}, ":16\n"}, // 16: folders
		{[]string{"help", "com"}, "completion"},
		{[]string{"range", "--r"}, "--rates"},
	} {
		if _, out, _ := prompt(append([]string{"__complete"}, c.typed...)...); !strings.Contains(out, c.want) {
			t.Errorf("%q: %q, want %q", c.typed, out, c.want)
		}
	}
	for _, shell := range []string{"bash", "zsh", "fish", "powershell"} {
		code, out, complaints := prompt("completion", shell)
		if code != 0 || complaints != "" || !strings.Contains(out, "underpaint") || !strings.Contains(out, "__complete") {
			t.Errorf("%s: code %d, %d bytes, %s", shell, code, len(out), complaints)
		}
	}
	bash, err := exec.LookPath("bash")
	if err != nil {
		t.Log("there is no bash here to read its script")
		return
	}
	_, script, _ := prompt("completion", "bash")
	check := exec.Command(bash, "-n")
	check.Stdin = strings.NewReader(script)
	if said, err := check.CombinedOutput(); err != nil {
		t.Errorf("bash: %v\n%s", err, said)
	}
}

// TestManual: every command and flag is in it, and no line is taken for a command of the
// formatter but those of man(7).
func TestManual(t *testing.T) {
	code, page, complaints := prompt("man")
	if code != 0 || complaints != "" || !strings.HasPrefix(page, ".TH UNDERPAINT 1\n.SH NAME\nunderpaint \\- ") {
		t.Fatalf("code %d: %s%.100s", code, complaints, page)
	}
	for _, d := range commands {
		if !strings.Contains(page, "\n.SS "+d.name()+"\n") || !strings.Contains(page, roff(d.long)) {
			t.Errorf("%s is not in the manual", d.name())
		}
	}
	known := []string{".TH", ".SH", ".SS", ".B", ".I", ".br", ".PP", ".TP", ".EX", ".EE"}
	for line := range strings.Lines(page) {
		word, _, _ := strings.Cut(strings.TrimSpace(line), " ")
		if strings.HasPrefix(line, ".") && !slices.Contains(known, word) || strings.HasPrefix(line, "'") {
			t.Errorf("a line that is not text: %s", line)
		}
	}
	if got := roff(".one - 'two'\n\\three"); got != `\&.one \- \(aqtwo\(aq`+"\n"+`\ethree` {
		t.Errorf("%s", got)
	}
}

// TestCheckAsJSON: one document about all files, whatever they are, with the exit code of
// the words.
func TestCheckAsJSON(t *testing.T) {
	dir, ratesFile := files(t, map[string]string{"good.json": goodCar, "half.json": goodCar[:50], "unlike.json": strings.TrimSuffix(goodCar, "}") + `,"survey":[{"on":"roof_rack.whole","stage":"survey","condition":"gone"}]}`,
		"newer.json": strings.Replace(goodCar, "car 1", "car 2", 1), "other.json": `{"format":"a list 1"}`})
	names := []string{ratesFile, filepath.Join(dir, "good.json"), filepath.Join(dir, "half.json"), filepath.Join(dir, "unlike.json"), filepath.Join(dir, "newer.json"), filepath.Join(dir, "other.json"), filepath.Join(dir, "none.json")}
	code, out, complaints := prompt(append([]string{"check", "--json"}, names...)...)
	var all struct{ Files []checked }
	if err := json.Unmarshal([]byte(out), &all); err != nil || code != 1 || complaints != "" || len(all.Files) != len(names) {
		t.Fatalf("code %d, %v, %s%s", code, err, complaints, out)
	}
	sample, err := rates.Decode(rates.Sample())
	if err != nil {
		t.Fatal(err)
	}
	first := func(n int) fault {
		if f := all.Files[n]; f.OK || len(f.Errors) == 0 || f.File != names[n] || f.CheckCode != "" {
			t.Fatalf("%+v", f)
		}
		return all.Files[n].Errors[0]
	}
	if r, car := all.Files[0], all.Files[1]; !r.OK || r.Format != "underpaint rates 1" || r.CheckCode != sample.CheckCode() || !car.OK || car.Format != "underpaint car 1" {
		t.Errorf("%+v, %+v", r, car)
	}
	if f := first(2); f.Found != "the end of the file" || f.Line != 1 {
		t.Errorf("half a file: %+v", f)
	}
	if first(3); !slices.ContainsFunc(all.Files[3].Errors, func(f fault) bool {
		return f.Path == "survey[0].on" && f.Found == "roof_rack.whole" && f.Expected != ""
	}) {
		t.Errorf("a survey gone wrong: %+v", all.Files[3].Errors)
	}
	if f := first(4); f.Path != "format" || f.Found != `"underpaint car 2"` || !strings.Contains(f.Expected, "made by a newer version") {
		t.Errorf("a newer file: %+v", f)
	}
	if f := first(5); f.Path != "format" || !strings.Contains(f.Expected, "underpaint past jobs 1") {
		t.Errorf("a file of something else: %+v", f)
	}
	if f := first(6); !strings.Contains(f.Text, "none.json") {
		t.Errorf("no file: %+v", f)
	}
	if code, _, _ := prompt("check", "--json", ratesFile); code != 0 {
		t.Errorf("a good file alone: code %d", code)
	}
}
