package message

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"underpaint/engine/rates"
)

// TestCustomersEngineSaysTheSame: the customer's engine answers the requests of its page,
// wrong ones too, with the same bytes as the whole engine.
func TestCustomersEngineSaysTheSame(t *testing.T) {
	text, err := json.Marshal(string(rates.Sample()))
	if err != nil {
		t.Fatal(err)
	}
	car := `"car":` + goodCar
	whole, customer := &Engine{}, &Customer{}
	asked := map[string]bool{}
	for _, c := range []struct{ ask, rest string }{
		{"range", `"effort":"rough",` + car}, // before the rates are open
		{"open", `"rates":` + string(text)},
		{"open", `"rates":"{}"`},
		{"check_car", car},
		{"check_car", `"car":{}`},
		{"range", `"effort":"rough",` + car},
		{"range", `"effort":"settle",` + car},
		{"cover", `"sum":"20000"`},
		{"fits", `"sum":"20000"`},
		{"sheet", car},
		{"worth", `"for":"customer",` + car},
		{"worth", `"for":"nobody",` + car},
		{"wide", car},
		{"plan", car},
		{"decide", car},
	} {
		request := []byte(`{"id":3,"ask":"` + c.ask + `",` + c.rest + `}`)
		want, got := whole.Ask(request), customer.Ask(request)
		if string(want) != string(got) {
			t.Errorf("%s: the whole engine says %.200s and the customer's %.200s", c.ask, want, got)
		}
		asked[c.ask] = asked[c.ask] || !strings.Contains(string(got), `"kind":"refused"`)
	}
	for _, a := range customerHandlers {
		if !asked[a.name] {
			t.Errorf("%s was never answered here", a.name)
		}
	}
}

// TestCustomersEngineRefusesTheRest: requests of the shop's pages get no answer, and
// every request has one name, one handler and one table.
func TestCustomersEngineRefusesTheRest(t *testing.T) {
	seen := map[string]bool{}
	for _, a := range slices.Concat(customerHandlers, shopCarHandlers, shopRatesHandlers, shopJobsHandlers) {
		answers := 0
		for _, there := range []bool{a.engine != nil, a.rated != nil, a.car != nil} {
			if there {
				answers++
			}
		}
		if seen[a.name] || answers != 1 {
			t.Errorf("%s: named before %v, %d answers", a.name, seen[a.name], answers)
		}
		seen[a.name] = true
		request := []byte(`{"id":3,"ask":"` + a.name + `","today":"none"}`)
		unknown := strings.Contains(string((&Customer{}).Ask(request)), `"path":"ask"`)
		if forCustomers := slices.ContainsFunc(customerHandlers, func(c handler) bool { return c.name == a.name }); unknown == forCustomers {
			t.Errorf("%s: refused as unknown %v, a customer's request %v", a.name, unknown, forCustomers)
		}
	}
}
