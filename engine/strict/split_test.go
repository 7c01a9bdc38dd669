package strict

import (
	"errors"
	"strings"
	"testing"
)

// TestSplitList checks that the entries and the rest together have the content of the
// whole, and that every error names its place in the whole.
func TestSplitList(t *testing.T) {
	text := "{\n \"format\": \"x\",\n \"jobs\": [\n  {\"a\": 1},\n  {\"a\":\n   \"two\"}\n ],\n \"after\": 7\n}\n"
	head, parts, err := SplitList([]byte(text), "jobs", 1000, 5)
	if err != nil || len(parts) != 2 {
		t.Fatalf("%v, %d parts", err, len(parts))
	}
	if parts[0].Line != 4 || parts[1].Line != 5 || string(parts[1].Data) != "{\"a\":\n   \"two\"}" {
		t.Errorf("parts %q at lines %d, %d", parts[1].Data, parts[0].Line, parts[1].Line)
	}
	if head.Get("after").Whole(0, 9) != 7 || len(head.Get("jobs").Items()) != 0 {
		t.Error("the rest is not whole")
	}
	head.Get("after").Complain("something else")
	if e := new(Error); !errors.As(head.Err(), &e) || e.Line != 8 {
		t.Errorf("%v: want line 8", head.Err())
	}
	entry, err := parts[1].Parse()
	if err != nil {
		t.Fatal(err)
	}
	entry.Get("a").Whole(0, 9)
	e := new(Error)
	if !errors.As(entry.Err(), &e) {
		t.Fatal("no complaint")
	}
	if e = e.Within("jobs[1]", parts[1].Line); e.Path != "jobs[1].a" || e.Line != 6 {
		t.Errorf("%v", e)
	}
}

// TestSplitListRefuses checks that errors are the same as in the ordinary reading.
func TestSplitListRefuses(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"", "empty"},
		{"[1]", ""},
		{`{"jobs":[1,2`, "jobs"},
		{`{"jobs":[{"a":1},{"a" 2}]}`, "jobs[1].a: expected a colon"},
		{`{"jobs":[{"a":1},{"a":1,"a":2}]}`, "a second time"},
		{`{"jobs":[1,2,3,4]}`, "at most 3 entries"},
		{`{"jobs":[1],"jobs":[2]}`, "a second time"},
		{`{"jobs":[1]} x`, "nothing more"},
		{`{"jobs":[1]`, ""},
		{`{"jobs":[` + strings.Repeat(" ", 200) + `]}`, "at most 100 bytes"},
		{"<html>", "expected"},
	} {
		head, parts, err := SplitList([]byte(c.text), "jobs", 100, 3)
		if c.text == "[1]" {
			if err != nil || parts != nil || head.Kind() != "array" {
				t.Errorf("%q: %v", c.text, err)
			}
			continue
		}
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%q: want %q, got %v", c.text, c.want, err)
		}
	}
}
