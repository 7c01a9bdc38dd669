package figures

import (
	"fmt"
	"io/fs"
	"strings"

	"underpaint/engine"
)

// Entry is one thing that the data give a source for, with its figures.
type Entry struct {
	Name    string
	Figures []string // a line for each
	Source  string
}

// Part is a part of a body. Its figures rest on the sources of the body, which
// stand above it.
type Part struct {
	Name    string
	Figures []string
}

// Topic is one data file.
type Topic struct {
	ID, Title, About string
	Entries          []Entry
	Parts            []Part
}

// All reads every data file and gives what it holds by topic.
func All() ([]Topic, error) {
	var all []Topic
	for _, f := range files {
		text, err := fs.ReadFile(engine.Data, f.path)
		if err != nil {
			return nil, err
		}
		root, err := read(text)
		if err != nil {
			return nil, fmt.Errorf("engine/%s: %w", f.path, err)
		}
		t := Topic{ID: f.id, Title: f.title, About: f.about}
		if root.get("parts") != nil && root.get("zones") != nil {
			t.body(root)
		} else {
			t.walk(root, f.title, root.get("sources"))
		}
		all = append(all, t)
	}
	return all, nil
}

// walk adds an entry for each object that names its source, and for each member
// beside which a member of the same name and "_source" stands. shared: sources that
// are named by a word and written out once.
func (t *Topic) walk(n *node, name string, shared *node) {
	if source := n.get("source"); source != nil {
		t.add(name, figures(n), source.text(), shared)
	}
	for _, m := range n.members {
		if of, is := strings.CutSuffix(m.key, "_source"); is {
			t.add(label(of), figures(n.get(of)), m.value.text(), shared)
			continue
		}
		if m.key != "sources" {
			t.below(m, name, shared)
		}
	}
}

func (t *Topic) below(m member, name string, shared *node) {
	switch m.value.kind {
	case 'o':
		t.walk(m.value, nameOf(m.value, label(m.key)), shared)
	case 'a':
		for i, item := range m.value.items {
			if item.kind == 'o' {
				t.walk(item, nameOf(item, fmt.Sprintf("%s, %d", label(m.key), i+1)), shared)
			}
		}
	}
}

func (t *Topic) add(name string, figures []string, source string, shared *node) {
	if whole := shared.get(source); whole != nil {
		source = whole.text()
	}
	t.Entries = append(t.Entries, Entry{name, figures, source})
}

// body adds the sources of a body, each with what it covers, and its parts.
func (t *Topic) body(n *node) {
	for _, m := range n.get("sources").members {
		t.Entries = append(t.Entries, Entry{upper(m.key), covered(n, m.key), m.value.text()})
	}
	for _, p := range n.get("parts").items {
		t.Parts = append(t.Parts, Part{nameOf(p, ""), figures(p)})
	}
}

// covered is what of a body stands outside its parts.
func covered(n *node, kind string) []string {
	switch kind {
	case "stage and after-survey factors":
		return []string{spell("stage_factor", n.get("stage_factor")), spell("after_survey_factor", n.get("after_survey_factor"))}
	case "hours":
		return []string{spell("getting_in", n.get("getting_in")), "of each part: below"}
	}
	return []string{"of each part: below"}
}
