package vectors

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"os"
	"path/filepath"
	"strings"
)

// Digest is the digest of everything that a vector sends, one request per line.
func Digest(requests []string) string {
	sum := sha256.Sum256([]byte(strings.Join(requests, "\n") + "\n"))
	return hex.EncodeToString(sum[:])
}

// Kept returns the digest of every vector's requests since it was added, by name.
func Kept(dir string) (map[string]string, error) {
	text, err := os.ReadFile(filepath.Join(dir, "kept.txt"))
	if err != nil {
		return nil, err
	}
	out := map[string]string{}
	for line := range strings.Lines(string(text)) {
		digest, name, ok := strings.Cut(strings.TrimSpace(line), "  ")
		if !ok || len(digest) != 64 || out[name] != "" {
			return nil, fmt.Errorf("kept.txt: %q", line)
		}
		out[name] = digest
	}
	return out, nil
}

// Keep adds the digests of new vectors and leaves those that are there.
func Keep(dir string, kept map[string]string) error {
	var b strings.Builder
	for _, name := range sortedKeys(kept) {
		b.WriteString(kept[name] + "  " + name + "\n")
	}
	return os.WriteFile(filepath.Join(dir, "kept.txt"), []byte(b.String()), 0o644)
}

// Broken lists vectors whose requests have changed, that are gone, or that are not in
// kept.txt yet.
func Broken(kept, now map[string]string) (out []string) {
	for _, name := range sortedKeys(kept) {
		switch now[name] {
		case kept[name]:
		case "":
			out = append(out, name+": the vector is gone; whatever could be asked once must stay possible")
		default:
			out = append(out, name+": its requests have changed; add another vector instead")
		}
	}
	for _, name := range sortedKeys(now) {
		if kept[name] == "" {
			out = append(out, name+": not in kept.txt; -update adds it")
		}
	}
	return out
}
