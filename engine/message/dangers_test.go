package message

import (
	"encoding/json"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// shopFloor are cautions for whoever works in the shop. They would only interrupt a
// customer, who neither does this work nor decides how it is done.
var shopFloor = []string{"blasting", "lead", "fuel", "paint", "epoxy", "bare_steel", "noise", "warp", "zinc", "chromate", "chlorinated", "fire_watch", "foam",
	"compressed_air", "rags", "acid_in_seams", "phosphoric", "stripper", "arc_light", "shielding_gas"}

func cautionIDs(t *testing.T, of map[string]any) (ids []string) {
	for _, c := range listIn(t, of, "cautions") {
		ids = append(ids, c["id"].(string))
	}
	return ids
}

// TestCustomerSeesNoneOfTheShops: no reply that the customer's page asks for has a
// caution of the shop floor, in its list or anywhere in its text.
func TestCustomerSeesNoneOfTheShops(t *testing.T) {
	text, err := os.ReadFile("../wording/data/words.json")
	if err != nil {
		t.Fatal(err)
	}
	var words struct {
		Cautions []struct {
			ID   string
			Text struct{ US string }
		}
	}
	if err := json.Unmarshal(text, &words); err != nil {
		t.Fatal(err)
	}
	sample, err := os.ReadFile("../rates/data/sample.json")
	if err != nil {
		t.Fatal(err)
	}
	rates, _ := json.Marshal(string(sample))
	e := &Customer{}
	replies := string(e.Ask([]byte(`{"id":1,"ask":"open","rates":` + string(rates) + `}`)))
	for _, what := range []string{`"range","effort":"rough"`, `"sheet"`, `"plan"`} {
		replies += string(e.Ask([]byte(`{"id":2,"ask":` + what + `,"car":` + goodCar + `}`)))
	}
	if strings.Contains(replies, `"refused"`) || strings.Count(replies, `"cautions"`) != 3 {
		t.Fatalf("%.300s", replies)
	}
	seen := 0
	for _, c := range words.Cautions {
		quoted, _ := json.Marshal(c.Text.US)
		if slices.Contains(shopFloor, c.ID) {
			if seen++; strings.Contains(replies, string(quoted)) || strings.Contains(replies, `"id":"`+c.ID+`","where"`) {
				t.Errorf("a customer gets %s", c.ID)
			}
		}
	}
	if seen != len(shopFloor) {
		t.Errorf("%d of %d cautions of the shop floor are there", seen, len(shopFloor))
	}
	if reply := e.Ask([]byte(`{"id":3,"ask":"dangers","car":` + goodCar + `}`)); !strings.Contains(string(reply), `"refused"`) {
		t.Errorf("%.200s", reply)
	}
}

// TestCustomersOwnChecks: cautions of work that the customer is known to do are marked,
// so that paper has them in full.
func TestCustomersOwnChecks(t *testing.T) {
	for car, want := range map[string][]string{goodCar: nil, seenCar: {"asbestos", "lifting"}} {
		var does []string
		for _, c := range listIn(t, ask(t, opened(t), `"range","effort":"rough"`, car), "cautions") {
			if c["customer_does"].(bool) {
				does = append(does, c["id"].(string))
			}
		}
		if !slices.Equal(does, want) {
			t.Errorf("%v, want %v", does, want)
		}
	}
}

// TestDangers: each list has each caution once, at a line of work; a car made in 1967 has
// no airbags, one made in 1975 may (model year 1974, from memory); the strip needs the
// cautions of its steps, and damaged parts come first in what to do.
func TestDangers(t *testing.T) {
	e := opened(t)
	for year, airbags := range map[string]bool{"1967": false, "1975": true} {
		car := regexp.MustCompile(`"year":\s*1967`).ReplaceAllString(seenCar, `"year":`+year)
		reply := ask(t, e, `"dangers"`, car)
		if reply["kind"] != "dangers" || !strings.Contains(reply["closing"].(string), "come first") {
			t.Fatalf("%v", reply)
		}
		for name, must := range map[string][]string{"strip": {"asbestos", "lead", "compressed_air", "stripper", "epoxy"}, "to_do": {"fire_watch", "zinc", "paint", "rags", "structure"}} {
			var ids []string
			for _, line := range listIn(t, reply, name) {
				ids = append(ids, cautionIDs(t, line)...)
				if line["line"] == "" {
					t.Errorf("%s: no line", name)
				}
			}
			if sorted := slices.Sorted(slices.Values(ids)); len(slices.Compact(sorted)) != len(ids) || slices.Contains(ids, "oven") {
				t.Errorf("%s: %v", name, ids)
			}
			for _, id := range must {
				if !slices.Contains(ids, id) {
					t.Errorf("%s: no %s in %v", name, id, ids)
				}
			}
			if slices.Contains(ids, "airbags") != airbags {
				t.Errorf("%s, made in %s: %v", name, year, ids)
			}
		}
		if first := listIn(t, reply, "to_do")[0]; first["on"] == "" {
			t.Errorf("%v", first)
		}
	}
	if reply := ask(t, e, `"dangers"`, strings.Replace(goodCar, `["two_door_unitary"]`, `["two_door_unitary","pickup"]`, 1)); reply["kind"] != "refused" {
		t.Errorf("two bodies: %v", reply["kind"])
	}
}
