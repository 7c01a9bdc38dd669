package message

import (
	"encoding/json"
	"os"
	"strconv"
	"strings"
	"testing"

	"underpaint/engine/rates"
)

// shopAsk sends one request of a shop's page, with texts put in as JSON strings.
func shopAsk(t testing.TB, e *Engine, ask string, members map[string]any) map[string]any {
	t.Helper()
	members["id"], members["ask"] = 3, ask
	request, err := json.Marshal(members)
	if err != nil {
		t.Fatal(err)
	}
	var reply map[string]any
	if err := json.Unmarshal(e.Ask(request), &reply); err != nil {
		t.Fatal(err)
	}
	return reply
}

func listIn(t testing.TB, reply map[string]any, name string) []map[string]any {
	t.Helper()
	list, ok := reply[name].([]any)
	if !ok {
		t.Fatalf("no list %s in %v", name, reply)
	}
	out := make([]map[string]any, len(list))
	for i := range list {
		out[i] = list[i].(map[string]any)
	}
	return out
}

// TestCheckRates: the reply has every section's first fault, warnings about likely slips,
// and the text of the file to save.
func TestCheckRates(t *testing.T) {
	e := &Engine{}
	sample := string(rates.Sample())
	broken := strings.NewReplacer(`"rate": "85.00"`, `"rate": "8x"`, `"percent": "6.25"`, `"percent": "625"`).Replace(sample)
	reply := shopAsk(t, e, "check_rates", map[string]any{"rates": broken, "today": "2026-11-25"})
	faults := listIn(t, reply, "faults")
	if reply["ok"] != false || len(faults) != 2 || faults[0]["path"] != "labour.metal.rate" || faults[1]["path"] != "tax.percent" || reply["canonical"] != "" {
		t.Errorf("%v", reply)
	}
	cheap := strings.Replace(sample, `"price": null,
  "to_stop"`, `"price": "900",
  "to_stop"`, 1)
	if cheap == sample {
		t.Fatal("the sample has changed")
	}
	reply = shopAsk(t, e, "check_rates", map[string]any{"rates": cheap, "today": "2029-01-01"})
	var texts []string
	for _, w := range listIn(t, reply, "warnings") {
		texts = append(texts, w["path"].(string)+": "+w["text"].(string))
	}
	if all := strings.Join(texts, "\n"); len(texts) != 2 || !strings.Contains(all, "valid_until: The rates ran out on") || !strings.Contains(all, "strip_and_survey.price: The strip and survey is priced at $900") {
		t.Errorf("warnings %s", all)
	}
	again := shopAsk(t, e, "check_rates", map[string]any{"rates": reply["canonical"], "today": "2026-11-25"})
	if again["check_code"] != reply["check_code"] || again["canonical"] != reply["canonical"] {
		t.Error("saving the canonical file changed the rates")
	}
}

// TestEffect: a higher hourly rate makes every sample car cost more, and the reply names
// the lines that change: metalwork, the metalwork of the strip, and a little of what goes
// with a panel that is now fitted whole. Another currency cannot be compared.
func TestEffect(t *testing.T) {
	cars := []map[string]any{}
	for _, name := range []string{"two-door-dry", "hardtop", "convertible"} {
		text, err := os.ReadFile("../../site/pages/samples/" + name + ".json")
		if err != nil {
			t.Fatal(err)
		}
		cars = append(cars, map[string]any{"name": name, "car": json.RawMessage(text)})
	}
	e := &Engine{}
	old, dearer := string(rates.Sample()), strings.Replace(string(rates.Sample()), `"rate": "85.00"`, `"rate": "95.00"`, 1)
	reply := shopAsk(t, e, "effect", map[string]any{"old": old, "new": dearer, "cars": cars})
	changed := listIn(t, reply, "changed")
	if reply["state"] != "rough" || !movesMetal(t, changed) {
		t.Errorf("changed %v", changed)
	}
	for _, c := range listIn(t, reply, "cars") {
		if s := c["sentence"].(string); !strings.Contains(s, "on your site, $") || c["old"] == nil {
			t.Errorf("%v", s)
		}
	}
	same := shopAsk(t, e, "effect", map[string]any{"old": old, "new": old, "cars": cars})
	if len(listIn(t, same, "changed")) != 0 || !strings.Contains(listIn(t, same, "cars")[0]["sentence"].(string), "the same as on your site") {
		t.Errorf("nothing changed, but: %v", same["changed"])
	}
	for reply["state"] != "settled" {
		reply = shopAsk(t, e, "effect", map[string]any{"old": old, "new": dearer, "cars": cars})
	}
	if changed := listIn(t, reply, "changed"); !movesMetal(t, changed) {
		t.Errorf("once it settles, with the hour of metalwork moved %v", changed)
	}
	// The old rates have more simulated cars by now than new rates that just begin.
	named := strings.Replace(old, `"name": "`, `"name": "New `, 1)
	begun := shopAsk(t, e, "effect", map[string]any{"old": old, "new": named, "cars": cars})
	if sentence := listIn(t, begun, "cars")[0]["sentence"].(string); begun["state"] != "rough" || len(listIn(t, begun, "changed")) != 0 || !strings.HasPrefix(sentence, "In 8 cars out of 10: about $") {
		t.Errorf("another name moved %v, %s", begun["changed"], sentence)
	}
	uk := shopAsk(t, e, "effect", map[string]any{"old": old, "new": string(rates.SampleUK()), "cars": cars})
	if uk["why_not"] == "" || listIn(t, uk, "cars")[0]["old"] != nil {
		t.Errorf("pounds were compared with dollars: %v", uk["why_not"])
	}
	if reply := shopAsk(t, e, "effect", map[string]any{"old": nil, "new": strings.Replace(old, "85.00", "x", 1), "cars": cars}); reply["kind"] != "refused" || reply["path"] != "labour.metal.rate" {
		t.Errorf("%v", reply)
	}
	if reply := shopAsk(t, e, "effect", map[string]any{"old": nil, "new": old, "cars": []any{}}); reply["kind"] != "refused" {
		t.Errorf("%v", reply)
	}
}

// movesMetal says whether metalwork changes most, then the strip, and everything else by
// less than a hundredth of the metalwork.
func movesMetal(t *testing.T, changed []map[string]any) bool {
	t.Helper()
	var by []float64
	for k, c := range changed {
		kind, amount, _ := strings.Cut(c["text"].(string), ": $")
		amount, way, _ := strings.Cut(amount, " ")
		v, err := strconv.ParseFloat(strings.ReplaceAll(amount, ",", ""), 64)
		if err != nil || k < 2 && (kind != [2]string{"Metalwork", "Strip and survey"}[k] || !strings.HasPrefix(way, "more per car")) {
			return false
		}
		by = append(by, v)
	}
	return len(by) >= 2 && (len(by) == 2 || by[2] < by[0]/100)
}

// TestPricesInAndOut: part prices are read from a table as spreadsheets write it, and
// written to one.
func TestPricesInAndOut(t *testing.T) {
	e := &Engine{}
	table := "\ufeffPart;Way;Low;Likely;High;Note\r\nquarter_skin;full;310,00 €;1.520,50 €;1.960,00 €;\"two\r\nlines\"\r\n" +
		"Front floor;full;;180,00 €;;\r\nengine;full;1,00;2,00;3,00;\r\nquarter_skin;full;1,00;2,00;3,00;\r\nhood_skin;full;3,00;2,00;1,00;\r\n=1+1;full;1,00;2,00;3,00;\r\n"
	reply := shopAsk(t, e, "read_prices", map[string]any{"text": table, "decimal": "", "words": "us", "currency": "EUR"})
	prices, refusals := listIn(t, reply, "prices"), listIn(t, reply, "refusals")
	if len(prices) == 0 || prices[0]["part"] != "quarter_skin" || prices[0]["price"].([]any)[1] != 1520.5 || prices[0]["way"] != "full" {
		t.Fatalf("%v", reply)
	}
	if n := reply["refused"].(float64); int(n) != len(refusals) || n < 4 {
		t.Errorf("%v refused: %v", n, refusals)
	}
	for k := 1; k < len(refusals); k++ {
		if refusals[k]["row"].(float64) < refusals[k-1]["row"].(float64) {
			t.Error("refusals out of order")
		}
	}
	if r := shopAsk(t, e, "read_prices", map[string]any{"text": table, "decimal": "", "words": "us", "currency": "USD"}); len(listIn(t, r, "prices")) != 1 || listIn(t, r, "prices")[0]["price"].([]any)[1] != 2.0 {
		t.Errorf("euros were taken for dollars: %v", r["prices"])
	}
	if r := shopAsk(t, e, "read_prices", map[string]any{"text": "part,way,low,likely,high\nquarter_skin,full,1.234,1.500,2.000\n", "decimal": "", "words": "us"}); len(listIn(t, r, "questions")) == 0 {
		t.Error("1.234 was guessed at")
	}
	for _, sep := range []string{",", ";", "tab"} {
		out := shopAsk(t, e, "write_prices", map[string]any{"rates": string(rates.Sample()), "separator": sep})
		back := shopAsk(t, e, "read_prices", map[string]any{"text": out["text"], "decimal": "", "words": "us"})
		r, err := rates.Decode(rates.Sample())
		if err != nil {
			t.Fatal(err)
		}
		if got := listIn(t, back, "prices"); len(got) != len(r.Parts.Prices) {
			t.Errorf("%q: %d of %d prices came back: %v", sep, len(got), len(r.Parts.Prices), back["refusals"])
		}
	}
}

// TestOutline: the reply lists what a form for rates can choose from.
func TestOutline(t *testing.T) {
	reply := shopAsk(t, &Engine{}, "rates_outline", map[string]any{})
	if len(listIn(t, reply, "steps")) != len(rates.StepIDs) || len(listIn(t, reply, "parts")) < 60 || len(listIn(t, reply, "bodies")) != 6 {
		t.Errorf("%d steps, %d parts", len(listIn(t, reply, "steps")), len(listIn(t, reply, "parts")))
	}
	for i, s := range listIn(t, reply, "steps") {
		if s["id"] != rates.StepIDs[i] {
			t.Errorf("step %d is %v", i, s["id"])
		}
	}
	if _, err := rates.Decode([]byte(reply["sample_uk"].(string))); err != nil {
		t.Error(err)
	}
}
