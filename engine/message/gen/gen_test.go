package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestUpToDate: the generated files are those that the reply structs ask for.
func TestUpToDate(t *testing.T) {
	files, err := generated("..")
	if err != nil {
		t.Fatal(err)
	}
	for name, want := range files {
		got, err := os.ReadFile(filepath.Join("..", name))
		if err != nil {
			t.Fatal(err)
		}
		if string(got) != string(want) {
			t.Errorf("%s is not up to date: go generate ./engine/message", name)
		}
	}
}

// TestGenerated: every kind of field, by hand.
func TestGenerated(t *testing.T) {
	dir := t.TempDir()
	source := "package message\n\n// XReply is x.\n//\n//reply:x\ntype XReply struct {\n\tState string `json:\"state\" ts:\"State\"`\n\t*Part\n\tOld *Part `json:\"old\"`\n\tMore *Part `json:\"more,omitempty\"`\n" +
		"\tNote string `json:\"note,omitempty\"`\n\tBy object[[]float64] `json:\"by\"`\n\tAll []Part `json:\"all\"`\n\tMoved *string `json:\"moved\"`\n}\n\n// Part is a part.\ntype Part struct {\n\tN int `json:\"n\"`\n}\n"
	if err := os.WriteFile(filepath.Join(dir, "replies_x.go"), []byte(source), 0o600); err != nil {
		t.Fatal(err)
	}
	files, err := generated(dir)
	if err != nil {
		t.Fatal(err)
	}
	for name, wants := range map[string][]string{
		written: {`return "x"`, `w.Member("state", r.State)`, "if r.Part != nil {\n\t\tr.Part.write(w)", "if r.Old == nil {\n\t\tw.Null()", "if r.More != nil {\n\t\tw.Key(\"more\")",
			`w.MemberIf("note", r.Note)`, "w.Key(v0.key)", `w.Objects("all", len(r.All)`, "w.String(*r.Moved)"},
		types: {"/** XReply is x. */", `kind: "x";`, "state: State;", "n?: number;", "old: Part | null;", "more?: Part;", "note?: string;", "by: Record<string, number[]>;", "all: Part[];", "moved: string | null;", "| XReply;"},
	} {
		for _, want := range wants {
			if !strings.Contains(string(files[name]), want) {
				t.Errorf("%s has no %q:\n%s", name, want, files[name])
			}
		}
	}
	for _, wrong := range []string{"N chan int `json:\"n\"`", "N int", "N int `json:\"n,omitempty\"`"} {
		if err := os.WriteFile(filepath.Join(dir, "replies_x.go"), []byte("package message\n\n// X is x.\ntype X struct {\n\t"+wrong+"\n}\n"), 0o600); err != nil {
			t.Fatal(err)
		}
		if _, err := generated(dir); err == nil {
			t.Errorf("taken: %s", wrong)
		}
	}
}
