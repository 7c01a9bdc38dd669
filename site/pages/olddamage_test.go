package pages

import (
	"encoding/json"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"underpaint/engine"
)

// TestOldDamageAsDelivered: the figures that the form calls those as delivered are the
// engine's own.
func TestOldDamageAsDelivered(t *testing.T) {
	text, err := os.ReadFile("rates/olddamage.ts")
	if err != nil {
		t.Fatal(err)
	}
	data, err := engine.Data.ReadFile("olddamage/data/olddamage.json")
	if err != nil {
		t.Fatal(err)
	}
	var figures struct {
		Hit struct {
			Year float64 `json:"hard_hits_a_road_year"`
		}
		Hours map[string]json.RawMessage
	}
	if err := json.Unmarshal(data, &figures); err != nil {
		t.Fatal(err)
	}
	if want := "As delivered: " + strconv.FormatFloat(figures.Hit.Year, 'f', -1, 64) + `"`; !strings.Contains(string(text), want) {
		t.Errorf("the form does not say %s", want)
	}
	lines := regexp.MustCompile(`hours\("(\w+)", "(\w+)", "[^"]*", "([^"]*)"\)`).FindAllStringSubmatch(string(text), -1)
	for _, l := range lines {
		var trades map[string][3]float64
		if err := json.Unmarshal(figures.Hours[l[1]], &trades); err != nil {
			t.Fatal(err)
		}
		var said []string
		for _, v := range trades[l[2]] {
			said = append(said, strconv.FormatFloat(v, 'f', -1, 64))
		}
		if want := strings.Join(said, ", "); l[3] != want {
			t.Errorf("%s %s: the form says %s, the engine %s", l[1], l[2], l[3], want)
		}
	}
	if len(lines) < 6 {
		t.Errorf("only %d lines of hours on the form", len(lines))
	}
}
