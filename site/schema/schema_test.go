package schema

import (
	"encoding/json"
	"path/filepath"
	"testing"
)

// TestEverySchemaIsNamed: each file here is one of Names, and is a schema.
func TestEverySchemaIsNamed(t *testing.T) {
	there, err := filepath.Glob("*.schema.json")
	if err != nil || len(there) != len(Names) {
		t.Errorf("%d files, %d names (%v)", len(there), len(Names), err)
	}
	for _, name := range Names {
		text, err := Of(name)
		var s struct {
			Schema     string `json:"$schema"`
			Properties map[string]any
		}
		if err != nil || json.Unmarshal(text, &s) != nil || s.Schema == "" || s.Properties["format"] == nil {
			t.Errorf("%s: %v, %+v", name, err, s)
		}
	}
	if _, err := Of("jobs"); err == nil {
		t.Error("a schema of nothing")
	}
}
