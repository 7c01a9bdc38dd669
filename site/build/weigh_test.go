package build

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestMeasuredAsBuilt: measuring a folder gives what building it gave, with files of
// an older build beside it or not, and an error when it is over budget.
func TestMeasuredAsBuilt(t *testing.T) {
	dir := t.TempDir()
	built, err := Build(dir, sample(t), small)
	if err != nil {
		t.Fatal(err)
	}
	older := filepath.Join(dir, "v-0123456789")
	if err := os.Mkdir(older, 0o700); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(older, customerName), bytes.Repeat([]byte("x"), 1000), 0o600); err != nil {
		t.Fatal(err)
	}
	m, err := measure(dir)
	if err != nil || m != built {
		t.Errorf("measured %+v, built %+v (%v)", m, built, err)
	}
	var out bytes.Buffer
	if err := Measured(dir, &out); err != nil || !strings.Contains(out.String(), "first visit") {
		t.Errorf("%v: %s", err, out.String())
	}
	name := filepath.Join(dir, "v-"+built.ID, customerName)
	for _, suffix := range []string{".br", ".gz"} {
		if err := os.Remove(name + suffix); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.WriteFile(name, make([]byte, customerBudget+1), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := Measured(dir, &out); err == nil || !strings.Contains(err.Error(), "over budget") {
		t.Errorf("an engine of %d bytes passes: %v", customerBudget+1, err)
	}
	if _, err := measure(t.TempDir()); err == nil {
		t.Error("an empty folder passes")
	}
}
