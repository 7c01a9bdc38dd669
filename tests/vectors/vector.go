package vectors

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// Vector is one scenario.
type Vector struct {
	Name  string          `json:"name"`
	About string          `json:"about"`
	Files map[string]File `json:"files,omitempty"`
	Ask   []Ask           `json:"ask"`
}

// File is a text that requests carry.
type File struct {
	From    string          `json:"from,omitempty"`
	JSON    json.RawMessage `json:"json,omitempty"`
	Text    string          `json:"text,omitempty"`
	Times   int             `json:"times,omitempty"`
	After   string          `json:"after,omitempty"`
	Changes [][2]string     `json:"changes,omitempty"`
}

// Ask is one request with what is expected of its last reply.
type Ask struct {
	Request json.RawMessage `json:"request"`
	Until   bool            `json:"until,omitempty"`
	Expect  *Expect         `json:"expect,omitempty"`
}

// Expect is the part of a reply that is compared.
type Expect struct {
	Kind    string         `json:"kind"`
	SHA256  string         `json:"sha256"`
	Figures map[string]any `json:"figures"`
}

// Load reads all vectors below dir, the folder of this package, in the order of their
// names. An unknown member is an error.
func Load(dir string) ([]*Vector, error) {
	names, err := filepath.Glob(filepath.Join(dir, "cases", "*.json"))
	if err != nil {
		return nil, err
	}
	slices.Sort(names)
	var out []*Vector
	for _, name := range names {
		v, err := read(name)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", filepath.Base(name), err)
		}
		out = append(out, v)
	}
	return out, nil
}

func read(name string) (*Vector, error) {
	text, err := os.ReadFile(name)
	if err != nil {
		return nil, err
	}
	v := &Vector{}
	d := json.NewDecoder(bytes.NewReader(text))
	d.DisallowUnknownFields()
	d.UseNumber()
	if err := d.Decode(v); err != nil {
		return nil, err
	}
	switch {
	case v.Name != strings.TrimSuffix(filepath.Base(name), ".json"):
		return nil, fmt.Errorf("the name is %q", v.Name)
	case !strings.HasSuffix(v.About, ".") || strings.Count(v.About, ". ") > 0:
		return nil, fmt.Errorf("about is not one sentence: %q", v.About)
	case len(v.Ask) == 0:
		return nil, fmt.Errorf("nothing is asked")
	}
	return v, nil
}

// Write writes a vector to its file.
func (v *Vector) Write(dir string) error {
	var b bytes.Buffer
	b.WriteString("{\n \"name\": " + compact(v.Name) + ",\n \"about\": " + compact(v.About) + ",\n")
	if len(v.Files) > 0 {
		b.WriteString(" \"files\": {")
		for n, name := range sortedKeys(v.Files) {
			b.WriteString(comma(n) + "\n  " + compact(name) + ": " + compact(v.Files[name]))
		}
		b.WriteString("\n },\n")
	}
	b.WriteString(" \"ask\": [")
	for n, a := range v.Ask {
		b.WriteString(comma(n) + "\n  {\"request\": " + compact(a.Request) + ",")
		if a.Until {
			b.WriteString(" \"until\": true,")
		}
		b.WriteString("\n   \"expect\": {\"kind\": " + compact(a.Expect.Kind) + ", \"sha256\": " + compact(a.Expect.SHA256) + ", \"figures\": {")
		for n, path := range sortedKeys(a.Expect.Figures) {
			b.WriteString(comma(n) + "\n    " + compact(path) + ": " + compact(a.Expect.Figures[path]))
		}
		b.WriteString("}}}")
	}
	b.WriteString("\n ]\n}\n")
	return os.WriteFile(filepath.Join(dir, "cases", v.Name+".json"), b.Bytes(), 0o644)
}

func comma(n int) string {
	if n == 0 {
		return ""
	}
	return ","
}

// compact is a value as JSON.stringify writes it.
func compact(v any) string {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	if err := e.Encode(v); err != nil {
		panic(err)
	}
	return strings.TrimSuffix(b.String(), "\n")
}

func sortedKeys[V any](m map[string]V) []string {
	out := make([]string, 0, len(m))
	for k := range m {
		out = append(out, k)
	}
	slices.Sort(out)
	return out
}
