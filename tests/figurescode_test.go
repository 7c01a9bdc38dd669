package tests

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io/fs"
	"strings"
	"testing"

	"underpaint/engine"
	"underpaint/engine/session"
)

// TestFiguresCode works out the code anew from the tree of data files: SHA-256 (FIPS 180-4,
// from the standard library) over the lengths of path and text, sixteen hexadecimal digits
// each, read as bytes, then path and text. No file with figures may be missing.
func TestFiguresCode(t *testing.T) {
	var all []byte
	files := 0
	err := fs.WalkDir(engine.Data, ".", func(path string, d fs.DirEntry, err error) error { // in the order of paths
		if err != nil || d.IsDir() || strings.HasPrefix(path, "wording/") { // sentences
			return err
		}
		text, err := fs.ReadFile(engine.Data, path)
		lengths, _ := hex.DecodeString(fmt.Sprintf("%016x%016x", len(path), len(text)))
		all = append(append(append(all, lengths...), path...), text...)
		files++
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	sum := fmt.Sprintf("%x", sha256.Sum256(all))
	if want := sum[:5] + " " + sum[5:10]; session.FiguresCode() != want || files < 18 {
		t.Errorf("figures code %s, worked out from %d files %s", session.FiguresCode(), files, want)
	}
}
