package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"underpaint/engine/pastjobs/invented"
	"underpaint/engine/rates"
)

const goodCar = `{"format":"underpaint car 1","asked_in":2026,"bodies":["pickup"],"made":{"decade":1950},` +
	`"life":[{"place":"dry","kept":"mostly_outside"}],"standard":"driver"}`

// files writes a folder with the sample rates and the given car files.
func files(t *testing.T, cars map[string]string) (dir, ratesFile string) {
	t.Helper()
	dir, ratesFile = t.TempDir(), filepath.Join(t.TempDir(), "rates.json")
	for name, text := range cars {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.WriteFile(ratesFile, rates.Sample(), 0o600); err != nil {
		t.Fatal(err)
	}
	return dir, ratesFile
}

func prompt(args ...string) (code int, out, complaints string) {
	var o, e bytes.Buffer
	code = run(args, strings.NewReader(goodCar), &o, &e)
	return code, o.String(), e.String()
}

// surveyed is the sample car with a survey, invented like the others.
const surveyed = "../../../site/pages/samples/two-door-surveyed.json"

func TestExitCodes(t *testing.T) {
	dir, ratesFile := files(t, map[string]string{"good.json": goodCar, "broken.json": goodCar[:50], "walked.json": strings.TrimSuffix(goodCar, "}") + `,"stages":[{"stage":"walk_round","on":"2026-06-02"}]}`, "young.json": strings.Replace(goodCar, "1950", "1955", 1),
		"unlike.json": strings.TrimSuffix(goodCar, "}") + `,"survey":[{"on":"roof_rack.whole","stage":"survey","condition":"gone"}]}`})
	at := func(name string) string { return filepath.Join(dir, name) }
	cases := []struct {
		name string
		args []string
		code int
		says string // in the output, or on standard error when the code is not 0
	}{
		{"nothing", nil, 2, "usage:"},
		{"unknown command", []string{"sing"}, 2, `found the command "sing"`},
		{"unknown flag", []string{"range", "--loud"}, 2, "usage:"},
		{"no rates", []string{"range", at("good.json")}, 2, "--rates"},
		{"help", []string{"help"}, 0, "usage:"},
		{"a range in words", []string{"range", at("good.json"), "--rates", ratesFile}, 0, "Think of 10 cars like yours."},
		{"flags first", []string{"range", "--rates", ratesFile, at("good.json")}, 0, "not an estimate, not a quotation and not a ceiling"},
		{"from standard input", []string{"range", "-", "--rates", ratesFile}, 0, "Pickup"},
		{"no such file", []string{"range", at("none.json"), "--rates", ratesFile}, 1, "none.json"},
		{"half a file", []string{"range", at("broken.json"), "--rates", ratesFile}, 1, "broken.json"},
		{"a decade that is none", []string{"range", at("young.json"), "--rates", ratesFile}, 1, "made.decade"},
		{"a car for rates", []string{"range", at("good.json"), "--rates", at("good.json")}, 1, "good.json"},
		{"stages in words", []string{"stages", surveyed, "--rates", ratesFile}, 0, "After the survey, the range is"},
		{"stages as they are", []string{"stages", at("walked.json"), "--rates", ratesFile, "--json"}, 0, `"kind":"before_after"`},
		{"why in words", []string{"why", at("good.json"), "--rates", ratesFile}, 0, "The luck of this car"},
		{"decide in words", []string{"decide", at("good.json"), "--rates", ratesFile}, 0, "You take the car apart yourself"},
		{"plan in words", []string{"plan", at("good.json"), "--rates", ratesFile}, 0, "The job is done."},
		{"score needs rates", []string{"score", "jobs.json"}, 2, "score needs"},
		{"past jobs of another kind", []string{"score", at("good.json"), "--rates", ratesFile}, 1, "format"},
		{"ways in words", []string{"ways", surveyed, "--rates", ratesFile}, 0, "Structural metal that is heavily pitted or worse cannot stay as it is."},
		{"stages without rates", []string{"stages", surveyed}, 2, "--rates"},
		{"looks for nobody", []string{"worth", surveyed, "--rates", ratesFile, "--for", "seller"}, 2, "usage:"},
		{"stages of half a file", []string{"stages", at("broken.json"), "--rates", ratesFile}, 1, "broken.json"},
		{"stages of a survey gone wrong", []string{"stages", at("unlike.json"), "--rates", ratesFile}, 1, "stages: expected the survey stage"},
		{"every fault of a survey gone wrong", []string{"check", at("unlike.json")}, 1, "survey[0].on"},
		{"check a survey", []string{"check", surveyed}, 0, "a car file, ready to use"},
		{"check a car", []string{"check", at("good.json")}, 0, "a car file, ready to use"},
		{"check rates", []string{"check", ratesFile}, 0, "check code"},
		{"check both, one broken", []string{"check", at("good.json"), at("broken.json")}, 1, "broken.json"},
		{"sample", []string{"sample", "rates"}, 0, `"underpaint rates 1"`},
		{"sample of nothing", []string{"sample"}, 2, "rates-uk"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			code, out, complaints := prompt(c.args...)
			if code != c.code {
				t.Errorf("exit code %d, want %d: %s", code, c.code, complaints)
			}
			said := out
			if c.code != 0 {
				said = complaints
				if strings.Contains(out, "$") {
					t.Errorf("a figure beside a refusal: %s", out)
				}
			}
			if !strings.Contains(said, c.says) {
				t.Errorf("want %q in %.300q", c.says, said)
			}
		})
	}
}

// TestFolder: a folder is worked out in the order of the names, past a broken file, with
// the same bytes as for one car alone.
func TestFolder(t *testing.T) {
	other := strings.Replace(goodCar, `"dry"`, `"salt"`, 1)
	dir, ratesFile := files(t, map[string]string{"a.json": goodCar, "b.json": "{", "c.json": other})
	code, out, complaints := prompt("range", dir, "--rates", ratesFile, "--json")
	if code != 1 || !strings.Contains(complaints, "b.json") {
		t.Errorf("exit code %d: %s", code, complaints)
	}
	_, a, _ := prompt("range", filepath.Join(dir, "a.json"), "--rates", ratesFile, "--json")
	_, c, _ := prompt("range", filepath.Join(dir, "c.json"), "--rates", ratesFile, "--json")
	if a == "" || a == c || out != a+c {
		t.Error("the folder does not give what its cars give")
	}
}

// TestTooLong: a file longer than any that we can use is refused without being read to
// its end.
func TestTooLong(t *testing.T) {
	endless := strings.NewReader(strings.Repeat(" ", 50<<20))
	var out, complaints bytes.Buffer
	if code := run([]string{"check", "-"}, endless, &out, &complaints); code != 1 || !strings.Contains(complaints.String(), "5 MB") {
		t.Errorf("exit code %d: %s", code, complaints.String())
	}
	if endless.Len() < 40<<20 {
		t.Error("the file was read to its end")
	}
}

// TestScore: score reads past jobs from a file and from a folder of two years, and writes
// rates with what they teach.
func TestScore(t *testing.T) {
	text := func(year int) string {
		r, err := rates.Decode(rates.Sample())
		if err != nil {
			t.Fatal(err)
		}
		j, err := invented.Shop{Rates: r, Seed: uint64(year), Year: year}.Jobs(5)
		if err != nil {
			t.Fatal(err)
		}
		return string(j.Text([][]byte{rates.Sample()}))
	}
	dir, ratesFile := files(t, map[string]string{"2024.json": text(2024), "2025.json": text(2025)})
	learnt := filepath.Join(t.TempDir(), "learnt.json")
	var out, complaints bytes.Buffer
	if code := run([]string{"score", dir, "--rates", ratesFile, "--write", learnt}, strings.NewReader(""), &out, &complaints); code != 0 {
		t.Fatalf("code %d: %s", code, complaints.String())
	}
	for _, want := range []string{"10 jobs. ", "What the jobs teach", "Share inside the 80% range", "Written to"} {
		if !strings.Contains(out.String(), want) {
			t.Errorf("no %q in\n%s", want, out.String())
		}
	}
	written, err := os.ReadFile(learnt)
	if err != nil {
		t.Fatal(err)
	}
	r, err := rates.Decode(written)
	if err != nil || r.Past == nil || r.Past.Jobs() != 10 || len(r.Own.Rust) < 8 {
		t.Errorf("%v: %+v", err, r)
	}
	twice, _ := files(t, map[string]string{"a.json": text(2024), "b.json": text(2024)})
	complaints.Reset()
	if code := run([]string{"score", twice, "--rates", ratesFile}, strings.NewReader(""), &out, &complaints); code != 1 || !strings.Contains(complaints.String(), "in two files") {
		t.Errorf("one job in two files: code %d, %s", code, complaints.String())
	}
}

// TestSamplePastJobs: the command prints the same sample that is beside the pages.
func TestSamplePastJobs(t *testing.T) {
	if !*slow {
		t.Skip("not run without -slow")
	}
	want, err := os.ReadFile("../../../site/pages/samples/past-jobs.json")
	if err != nil {
		t.Fatal(err)
	}
	code, out, complaints := prompt("sample", "past-jobs")
	if code != 0 || out != string(want) {
		t.Errorf("code %d, %d bytes against %d: %s", code, len(out), len(want), complaints)
	}
}
