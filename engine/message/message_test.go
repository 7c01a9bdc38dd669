package message

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"os"
	"regexp"
	"strings"
	"testing"

	"underpaint/engine/rates"
)

// goodCar is a car with the customer's answers only, seenCar one with records at every
// stage. Both are invented.
var (
	goodCar = fileText("../carfile/testdata/told.json")
	seenCar = fileText("../carfile/testdata/seen.json")
)

func fileText(name string) string {
	text, err := os.ReadFile(name)
	if err != nil {
		panic(err)
	}
	return strings.TrimSpace(string(text))
}

func opened(t testing.TB) *Engine {
	t.Helper()
	return openedAt(t, rates.Sample())
}

func openedAt(t testing.TB, file []byte) *Engine {
	t.Helper()
	e := &Engine{}
	text, err := json.Marshal(string(file))
	if err != nil {
		t.Fatal(err)
	}
	reply := e.Ask([]byte(`{"id":1,"ask":"open","rates":` + string(text) + `}`))
	if !strings.HasPrefix(string(reply), `{"id":1,"kind":"opened"`) {
		t.Fatalf("not opened: %.200s", reply)
	}
	return e
}

// TestRefusals: the reply to bad input has the path and no figure.
func TestRefusals(t *testing.T) {
	cases := []struct{ name, from, to, path string }{
		{"unknown key", `"made"`, `"mode":1,"made"`, ""},
		{"duplicate key", `"standard":"show"`, `"standard":"show","standard":"driver"`, ""},
		{"unknown body", `two_door_unitary`, `hovercraft`, "bodies[0]"},
		{"body twice", `["two_door_unitary"]`, `["two_door_unitary","two_door_unitary"]`, "bodies[1]"},
		{"year as text", `1967`, `"1967"`, "made.year"},
		{"negative year", `1967`, `-1967`, "made.year"},
		{"huge number", `1967`, `1e308`, "made.year"},
		{"future car", `"asked_in":2026`, `"asked_in":1967`, "asked_in"},
		{"unknown place", `"mild"`, `"atlantis"`, "life[0].place"},
		{"unknown standard", `"show"`, `"best"`, "standard"},
		{"life longer than the car", `"kept":"driven_all_year"}]`, `"kept":"driven_all_year"},{"place":"salt","kept":"garage","years":70}]`, "life[1].years"},
		{"earlier work before the car", `"not_known_of"`, `"stripped_and_restored","earlier_work_year":1966`, "earlier_work_year"},
		{"no life", `[{"place":"mild","kept":"driven_all_year"}]`, `[]`, "life"},
		{"look on a part without it", `"standard":"show"`, `"standard":"show","looks":[{"look":"carpet","on":"outer_sill.left","result":"yes","by":"customer"}]`, "looks[0].on"},
		{"shop's look by a customer", `"standard":"show"`, `"standard":"show","looks":[{"look":"prod","on":"front_floor.left","result":"yes","by":"customer"}]`, "looks[0].by"},
		{"two answers to one look", `"standard":"show"`, `"standard":"show","looks":[{"look":"bubbles","on":"outer_sill.left","result":"yes","by":"customer"},{"look":"bubbles","on":"outer_sill.left","result":"no","by":"customer"}]`, "looks[1].on"},
		{"option of another body", `"standard":"show"`, `"standard":"show","options":["outside_fenders"]`, "options[0]"},
	}
	e := opened(t)
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			car := strings.Replace(goodCar, c.from, c.to, 1)
			if car == goodCar {
				t.Fatal("the case changes nothing")
			}
			reply := string(e.Ask([]byte(`{"id":2,"ask":"range","effort":"rough","car":` + car + `}`)))
			if !strings.Contains(reply, `"kind":"refused"`) {
				t.Fatalf("not refused: %.200s", reply)
			}
			if c.path != "" && !strings.Contains(reply, `"path":"`+c.path+`"`) {
				t.Errorf("want the path %s: %s", c.path, reply)
			}
			if strings.Contains(reply, "_minor") {
				t.Errorf("a refusal with a figure: %s", reply)
			}
		})
	}
}

// TestNotesOfACar: the reply to an accepted car lists what its file leaves out, each with
// its path. A complete file has no notes.
func TestNotesOfACar(t *testing.T) {
	e := opened(t)
	reply := ask(t, e, `"check_car"`, strings.Replace(goodCar, "driven_all_year", "mostly_garaged", 1))
	var paths []string
	for _, n := range listIn(t, reply, "notes") {
		paths = append(paths, n["path"].(string))
		if n["text"] == "" {
			t.Errorf("%s: no words", n["path"])
		}
	}
	if reply["kind"] != "car_ok" || strings.Join(paths, " ") != "life[0].kept covered" {
		t.Errorf("%v: %v", reply["kind"], paths)
	}
	if reply := ask(t, e, `"check_car"`, seenCar); len(listIn(t, reply, "notes")) != 0 {
		t.Errorf("nothing to say: %v", reply["notes"])
	}
}

// TestBrokenRequests: every broken request is refused, and the open car stays open.
func TestBrokenRequests(t *testing.T) {
	e := opened(t)
	for _, text := range []string{"", "{", "null", "[]", `{"id":1}`, `{"id":-1,"ask":"range"}`, `{"id":1,"ask":"sing"}`, goodCar, goodCar + "x",
		strings.Repeat("[", 100000), `{"id":3,"ask":"cover","sum":"a lot"}`, `{"id":3,"ask":"cover","sum":"100"}`} {
		if reply := string(e.Ask([]byte(text))); !strings.Contains(reply, `"kind":"refused"`) {
			t.Errorf("%.40q: not refused: %.200s", text, reply)
		}
	}
}

// pinned is the digest of the first range of goodCar in another body and standard.
type pinned struct{ body, standard, sum string }

// rough asks for that range.
func (c pinned) rough(t *testing.T, e *Engine) string {
	t.Helper()
	car := strings.NewReplacer("two_door_unitary", c.body, `"show"`, `"`+c.standard+`"`).Replace(goodCar)
	reply := string(e.Ask([]byte(`{"id":2,"ask":"range","effort":"rough","car":` + car + `}`)))
	if !strings.Contains(reply, `"kind":"range"`) {
		t.Fatalf("%s: %.300s", c.body, reply)
	}
	return reply
}

func digest(reply string) string {
	sum := sha256.Sum256([]byte(reply))
	return hex.EncodeToString(sum[:8])
}

// TestSameBytes pins whole replies. The same test runs as wasm, so both give the same
// bytes. A commit that means to change figures or sentences changes these hashes and says
// so.
func TestSameBytes(t *testing.T) {
	for _, c := range sameBytes {
		if got := digest(c.rough(t, opened(t))); got != c.sum {
			t.Errorf("%s %s: %s, pinned %s", c.body, c.standard, got, c.sum)
		}
	}
}

// amounts are the ends and the middle of every range in a reply, and where its dots stand.
var amounts = regexp.MustCompile(`"(low|half|set_aside|high)_minor":[0-9]+|"dots":\[[^\]]*\]`)

// TestWithoutDoubt: with the doubt, the growth, rising prices and the draws of how parts
// come switched off, ranges are what they were before there was any of them, to the minor
// unit.
func TestWithoutDoubt(t *testing.T) {
	none := `{"told": 0, "walk_round": 0, "survey": 0, "opening_up": 0, "ways": 0}`
	text := strings.NewReplacer(`"after_percent": "3",`, `"after_percent": "3", "in_range": false,`,
		`"price_factor":`, `"as_they_come": false, "price_factor":`,
		`"own_figures":`, `"doubt": {"shared": `+none+`, "own": `+none+`}, "own_figures":`).Replace(withoutPricesOverTime(aside(string(rates.Sample()))))
	r, err := rates.Decode([]byte(text))
	if err != nil || r.Allowance.InRange || !r.Doubt.Stated || !r.Parts.AsTheyShould {
		t.Fatal(err)
	}
	for _, c := range withoutDoubt {
		reply := amounts.FindAllString(c.rough(t, openedAt(t, []byte(text))), -1)
		if got := digest(strings.Join(reply, " ")); got != c.sum {
			t.Errorf("%s %s: %s, before %s", c.body, c.standard, got, c.sum)
		}
	}
}

// withoutPricesOverTime takes that member out of a sample.
func withoutPricesOverTime(sample string) string {
	return regexp.MustCompile(`(?s) "prices_over_time": \{.*?\n \},\n`).ReplaceAllString(sample, "")
}

var withoutDoubt = []pinned{
	{"two_door_unitary", "show", "839fae9e59f2517d"},
	{"hardtop_on_frame", "driver", "ce813f198ae66c7a"},
	{"pickup", "concours", "64e3e7daa9b637e4"},
	{"open_two_seater", "not_sure", "0adf58ef8ae71094"},
	{"convertible_unitary", "show", "642d5f0d38299962"},
	{"four_door_saloon", "show", "cec5e935318f2e00"},
}

var sameBytes = []pinned{
	{"two_door_unitary", "show", "b566c4088eafabb6"},
	{"hardtop_on_frame", "driver", "95710ac74153db2c"},
	{"pickup", "concours", "b78dd64c285c7bd6"},
	{"open_two_seater", "not_sure", "638dfe57ff594401"},
	{"convertible_unitary", "show", "50189d186c19a2a4"},
	{"four_door_saloon", "show", "6cacaf4cdd44db49"},
}

// TestQuiet: the reply to a quiet slice has the state and no figure. The last reply is
// the same with and without quiet slices before it.
func TestQuiet(t *testing.T) {
	last := func(quiet string) string {
		e := opened(t)
		for {
			reply := string(e.Ask([]byte(`{"id":2,"ask":"range","effort":"settle","car":` + goodCar + quiet + `}`)))
			if !strings.Contains(reply, `"state":"refining"`) {
				return reply
			}
			if quiet != "" && strings.Contains(reply, "_minor") {
				t.Fatalf("a quiet slice with a figure: %.200s", reply)
			}
		}
	}
	loud, quiet := last(""), last(`,"quiet":true`)
	if !strings.Contains(loud, `"state":"settled"`) || loud != quiet {
		t.Error("quiet slices change the settled range")
	}
}
