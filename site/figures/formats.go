package figures

import (
	"fmt"
	"io/fs"
	"slices"
	"strings"

	"underpaint/engine"
)

// Formats lists the formats of the data files with figures, such as "damage 2", sorted,
// each once.
func Formats() (all []string, err error) {
	for _, f := range files {
		text, err := fs.ReadFile(engine.Data, f.path)
		if err != nil {
			return nil, err
		}
		root, err := read(text)
		if err != nil {
			return nil, fmt.Errorf("engine/%s: %w", f.path, err)
		}
		all = append(all, strings.TrimPrefix(root.get("format").text(), "underpaint "))
	}
	slices.Sort(all)
	return slices.Compact(all), nil
}
