package pages

import (
	"encoding/json"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"underpaint/engine"
)

type drawn struct {
	Sheets map[string]struct {
		Crop   string
		Shapes []struct{ Item, D string }
	}
}

// middle is about where a path lies from left to right: where its strokes begin is
// enough to tell one side of the car from the other.
func middle(d string) float64 {
	sum, n := 0.0, 0
	for _, m := range regexp.MustCompile(`[ML]\s*(-?[\d.]+)`).FindAllStringSubmatch(d, -1) {
		x, _ := strconv.ParseFloat(m[1], 64)
		sum, n = sum+x, n+1
	}
	return sum / float64(max(n, 1))
}

// TestEveryPartIsDrawn: each item of a body is on its drawing and nothing else is,
// and what is on the left of the car lies on the left of the paper.
func TestEveryPartIsDrawn(t *testing.T) {
	files, err := Files()
	if err != nil {
		t.Fatal(err)
	}
	bodies := 0
	for name, text := range files {
		id, isDrawing := strings.CutPrefix(strings.TrimSuffix(name, ".json"), "drawings/")
		if !isDrawing || id == "sides" {
			continue
		}
		bodies++
		var d drawn
		var body struct {
			Parts []struct{ Items []struct{ ID, Side string } }
		}
		data, err := engine.Data.ReadFile("car/data/" + id + ".json")
		if err != nil {
			t.Fatal(err)
		}
		if err := json.Unmarshal(text, &d); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if err := json.Unmarshal(data, &body); err != nil {
			t.Fatal(err)
		}
		at := map[string]float64{}
		for _, s := range d.Sheets {
			crop := strings.Fields(s.Crop)
			x, _ := strconv.ParseFloat(crop[0], 64)
			w, _ := strconv.ParseFloat(crop[2], 64)
			for _, shape := range s.Shapes {
				at[shape.Item] = (middle(shape.D) - x) / w
			}
		}
		items := map[string]bool{}
		for _, p := range body.Parts {
			for _, i := range p.Items {
				items[i.ID] = true
				where, there := at[i.ID]
				switch {
				case !there:
					t.Errorf("%s: %s is not drawn", name, i.ID)
				case i.Side == "left" && where >= 0.5, i.Side == "right" && where <= 0.5:
					t.Errorf("%s: %s lies at %.2f of the width", name, i.ID, where)
				}
			}
		}
		for item := range at {
			if !items[item] {
				t.Errorf("%s: %s is drawn and is no part of the body", name, item)
			}
		}
		if len(items) < 80 {
			t.Errorf("%s: %d items", name, len(items))
		}
	}
	if bodies != 6 {
		t.Errorf("%d drawings", bodies)
	}
}
