package vectors

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
)

// Requests returns the texts that a vector sends, with the ids 1, 2, 3 …
func (v *Vector) Requests(dir string) ([]string, error) {
	texts := map[string]string{}
	for name, f := range v.Files {
		text, err := f.text(dir)
		if err != nil {
			return nil, fmt.Errorf("%s: file %s: %w", v.Name, name, err)
		}
		texts[name] = text
	}
	var out []string
	used := map[string]bool{}
	for n, a := range v.Ask {
		text, err := request(n+1, a.Request, texts, used)
		if err != nil {
			return nil, fmt.Errorf("%s: request %d: %w", v.Name, n+1, err)
		}
		out = append(out, text)
	}
	for name := range v.Files {
		if !used[name] {
			return nil, fmt.Errorf("%s: nothing uses the file %s", v.Name, name)
		}
	}
	return out, nil
}

func (f *File) text(dir string) (string, error) {
	text := ""
	switch {
	case f.From != "" && f.JSON == nil && f.Text == "":
		data, err := os.ReadFile(filepath.Join(dir, "files", f.From))
		if err != nil {
			return "", err
		}
		text = string(data)
	case f.JSON != nil && f.From == "" && f.Text == "":
		var b bytes.Buffer
		if err := json.Compact(&b, f.JSON); err != nil {
			return "", err
		}
		text = b.String()
	case f.From == "" && f.JSON == nil:
		text = strings.Repeat(f.Text, max(1, f.Times)) + f.After
	default:
		return "", fmt.Errorf("more than one of from, json and text")
	}
	for _, c := range f.Changes {
		if n := strings.Count(text, c[0]); n != 1 {
			return "", fmt.Errorf("%q stands in it %d times", c[0], n)
		}
		text = strings.Replace(text, c[0], c[1], 1)
	}
	return text, nil
}

// request writes one request in full.
func request(id int, raw json.RawMessage, texts map[string]string, used map[string]bool) (string, error) {
	d := json.NewDecoder(bytes.NewReader(raw))
	if t, err := d.Token(); err != nil || t != json.Delim('{') {
		return "", fmt.Errorf("no object")
	}
	if whole, ok, err := placed(raw, texts, used); ok || err != nil {
		return whole, err
	}
	var b strings.Builder
	b.WriteString(`{"id":` + strconv.Itoa(id))
	for d.More() {
		name, err := d.Token()
		if err != nil {
			return "", err
		}
		var value json.RawMessage
		if err := d.Decode(&value); err != nil {
			return "", err
		}
		text, ok, err := placed(value, texts, used)
		if err != nil {
			return "", err
		}
		if !ok {
			text = compact(value)
		}
		b.WriteString("," + compact(name) + ":" + text)
	}
	return b.String() + "}", nil
}

// placed is the text that {"file": F} or {"quoted": F} stands for.
func placed(value json.RawMessage, texts map[string]string, used map[string]bool) (text string, ok bool, err error) {
	var one map[string]json.RawMessage
	if json.Unmarshal(value, &one) != nil || len(one) != 1 {
		return "", false, nil
	}
	for kind, named := range one {
		var name string
		if kind != "file" && kind != "quoted" || json.Unmarshal(named, &name) != nil {
			return "", false, nil
		}
		if text, ok = texts[name]; !ok {
			return "", false, fmt.Errorf("no file %q", name)
		}
		used[name] = true
		if kind == "quoted" {
			text = compact(text)
		}
	}
	return text, true, nil
}
