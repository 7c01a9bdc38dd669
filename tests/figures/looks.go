package figures

import (
	"encoding/json"
	"errors"
	"os"
	"path/filepath"
	"slices"

	"underpaint/engine/car"
)

// Look is one check of engine/evidence/data/looks.json, as far as its answer depends on
// condition.
type Look struct {
	ID          string
	Yes         [car.Conditions]float64 `json:"yes_by_condition"`
	GoodCovered *float64                `json:"good_when_covered_times"`
	BySide      bool                    `json:"by_side"`
	Parts       []string
}

// ReadLooks reads the checks below the root of the module, by id.
func ReadLooks(root string) (map[string]Look, error) {
	text, err := os.ReadFile(filepath.Join(root, "engine", "evidence", "data", "looks.json"))
	if err != nil {
		return nil, err
	}
	var file struct {
		Format string
		Looks  []Look
	}
	if err := json.Unmarshal(text, &file); err != nil {
		return nil, err
	}
	if file.Format != "underpaint looks 2" {
		return nil, errors.New("looks.json: expected underpaint looks 2, found " + file.Format)
	}
	out := map[string]Look{}
	for _, l := range file.Looks {
		out[l.ID] = l
	}
	return out, nil
}

// At says whether the check can be made on an item.
func (l Look) At(b *car.Body, i int) bool { return slices.Contains(l.Parts, b.PartOf(i).ID) }
