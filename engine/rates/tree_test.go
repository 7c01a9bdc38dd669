package rates

import (
	"encoding/json"
	"strconv"
	"strings"
	"testing"
)

// raw stands for JSON text that is put into a tree as it is, valid or not.
type raw string

const missing = raw("missing") // as a value: remove the member

// tree reads a file as maps and lists.
func tree(t testing.TB, file []byte) map[string]any {
	t.Helper()
	var v map[string]any
	d := json.NewDecoder(strings.NewReader(string(file)))
	d.UseNumber()
	if err := d.Decode(&v); err != nil {
		t.Fatal(err)
	}
	return v
}

// steps splits a path such as "materials[7].how.film" into names and indices.
func steps(path string) []string {
	return strings.FieldsFunc(path, func(r rune) bool { return strings.ContainsRune(".[]", r) })
}

// set puts a value at a path of a tree, or removes what is there.
func set(t testing.TB, v any, path string, value any) {
	t.Helper()
	at := steps(path)
	for _, s := range at[:len(at)-1] {
		v = step(t, v, s, path)
	}
	last := at[len(at)-1]
	switch v := v.(type) {
	case map[string]any:
		if value == any(missing) {
			if _, there := v[last]; !there {
				t.Fatalf("%s is not in the sample", path)
			}
			delete(v, last)
			return
		}
		v[last] = value
	case []any:
		i, err := strconv.Atoi(last)
		if err != nil || i >= len(v) {
			t.Fatalf("no %s in the sample", path)
		}
		v[i] = value
	default:
		t.Fatalf("no %s in the sample", path)
	}
}

func step(t testing.TB, v any, s, path string) any {
	t.Helper()
	switch v := v.(type) {
	case map[string]any:
		if next, there := v[s]; there {
			return next
		}
	case []any:
		if i, err := strconv.Atoi(s); err == nil && i < len(v) {
			return v[i]
		}
	}
	t.Fatalf("no %s in the sample", path)
	return nil
}

// get returns the value at a path.
func get(t testing.TB, v any, path string) any {
	t.Helper()
	for _, s := range steps(path) {
		v = step(t, v, s, path)
	}
	return v
}

// write turns a tree into text; raw texts are copied.
func write(t testing.TB, v any) string {
	t.Helper()
	var b strings.Builder
	writeTo(t, &b, v)
	return b.String()
}

func writeTo(t testing.TB, b *strings.Builder, v any) {
	switch v := v.(type) {
	case raw:
		b.WriteString(string(v))
	case map[string]any:
		before := "{"
		for name, x := range v {
			b.WriteString(before + strconv.Quote(name) + ":")
			writeTo(t, b, x)
			before = ","
		}
		if before == "{" {
			b.WriteString("{")
		}
		b.WriteString("}")
	case []any:
		b.WriteString("[")
		for i, x := range v {
			if i > 0 {
				b.WriteString(",")
			}
			writeTo(t, b, x)
		}
		b.WriteString("]")
	default:
		text, err := json.Marshal(v)
		if err != nil {
			t.Fatal(err)
		}
		b.Write(text)
	}
}

// visit calls f with the path of every member and entry of a tree.
func visit(v any, path string, f func(path string, v any)) {
	if path != "" {
		f(path, v)
	}
	switch v := v.(type) {
	case map[string]any:
		for name, x := range v {
			visit(x, strings.TrimPrefix(path+"."+name, "."), f)
		}
	case []any:
		for i, x := range v {
			visit(x, path+"["+strconv.Itoa(i)+"]", f)
		}
	}
}

// changed returns a sample with values put in: path, value, path, value.
func changed(t testing.TB, sample []byte, changes ...any) []byte {
	t.Helper()
	v := tree(t, sample)
	for i := 0; i < len(changes); i += 2 {
		set(t, v, changes[i].(string), changes[i+1])
	}
	return []byte(write(t, v))
}

// decode reads a file that must be valid.
func decode(t testing.TB, file []byte) *Rates {
	t.Helper()
	r, err := Decode(file)
	if err != nil {
		t.Fatal(err)
	}
	return r
}
