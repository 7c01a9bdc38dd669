package message

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"underpaint/engine/rates"
)

// quick are the requests that a fuzzer can ask often. The others take too long once they
// have read a car or rates.
var quick = []string{"open", "sheet", "check_car", "tally", "to_do", "cover", "check_rates", "rates_outline", "read_prices", "write_prices", "open_jobs", "read_jobs", "write_jobs", "adopt"}

// kindsOf are all kinds of reply.
var kindsOf = []string{"opened", "range", "cover", "fits", "sheet", "worth", "wide", "plan", "decide", "car_ok", "tally", "odds", "before_after", "to_do",
	"compare_ways", "look_again", "twenty", "two_ways", "suppose", "rates_checked", "rates_outline", "effect", "prices_read", "prices_written", "jobs_checked", "scores",
	"jobs_read", "jobs_written", "adopted", "refused"}

// known checks that a reply is JSON and of a known kind other than "broken", which would
// mean a panic, and that a refusal has no figure.
func known(t *testing.T, request, reply []byte) string {
	t.Helper()
	var members map[string]json.RawMessage
	if err := json.Unmarshal(reply, &members); err != nil {
		t.Fatalf("%.200q: %v: %.200q", request, err, reply)
	}
	kind := strings.Trim(string(members["kind"]), `"`)
	if !slices.Contains(kindsOf, kind) {
		t.Fatalf("%.500q: a reply of kind %q", request, kind)
	}
	if kind != "refused" {
		return kind
	}
	for name := range members {
		if !slices.Contains([]string{"id", "kind", "what", "path", "found", "expected", "text"}, name) {
			t.Fatalf("%.200q: a refusal with %s", request, name)
		}
	}
	if len(reply) > 20000 {
		t.Fatalf("%.200q: a refusal of %d bytes", request, len(reply))
	}
	return kind
}

// FuzzAsk: whatever the bytes, the engine answers with a reply that the page knows and
// keeps working. The same request gets the same reply, and the open car keeps its range.
func FuzzAsk(f *testing.F) {
	for _, ask := range quick {
		f.Add([]byte(`{"id":2,"ask":"` + ask + `","car":` + goodCar + `}`))
	}
	for _, car := range []string{seenCar, goodCar} {
		for _, ask := range []string{"sheet", "to_do", "tally", "check_car"} {
			f.Add([]byte(`{"id":3,"ask":"` + ask + `","car":` + car + `}`))
		}
	}
	for _, text := range []string{`{"id":4,"ask":"cover","sum":"60000"}`, `{"id":1,"ask":"check_rates","today":"2026-07-01","rates":"{}"}`,
		`{"id":1,"ask":"read_prices","text":"part,way,low,likely,high\nhood,full,1,2,3\n","decimal":"","words":"us"}`,
		`{"id":1,"ask":"read_jobs","text":"job,finished,said low,said high,came to\nA,2025-01-01,1,2,3\n","decimal":"point","currency":"USD"}`,
		`{"id":1,"ask":"open_jobs","jobs":"{\"format\":\"underpaint past jobs 1\",\"currency\":\"USD\",\"rates\":[],\"jobs\":[]}"}`,
		`{"id":1,"ask":"write_jobs","separator":"tab"}`, `{"id":1,"ask":"adopt","rates":"{}","use":["hours.metal"],"record":false,"today":"2026-07-01"}`} {
		f.Add([]byte(text))
	}
	text, err := json.Marshal(string(rates.Sample()))
	if err != nil {
		f.Fatal(err)
	}
	open := []byte(`{"id":1,"ask":"open","rates":` + string(text) + `}`)
	f.Fuzz(func(t *testing.T, request []byte) {
		var r struct{ Ask string }
		if json.Unmarshal(request, &r) == nil && !slices.Contains(quick, r.Ask) && slices.ContainsFunc(slices.Concat(customerHandlers, shopCarHandlers, shopRatesHandlers, shopJobsHandlers), func(a handler) bool { return a.name == r.Ask }) {
			return
		}
		e := &Engine{}
		known(t, request, e.Ask(request))
		e.Ask(open)
		kind := known(t, request, e.Ask(request))
		if again := known(t, request, e.Ask(request)); again != kind {
			t.Fatalf("%.500q: %s, then %s", request, kind, again)
		}
	})
}

// FuzzCar puts words and figures into the right places of a car, which random bytes
// seldom reach, and asks for everything that reads every entry: the sheet, the tally,
// what to do, and the range itself.
func FuzzCar(f *testing.F) {
	f.Add(0, "outer_sill.left", "rusted_through", "patch_over_rust", "full", "bubbles", "outer_sill.either", "sill.left", 1967, 9, 2, 120.5)
	f.Add(1, "chassis_rail.left", "gone", "none", "fabricate", "gaps", "left", "chassis.left", 1958, 0, 0, 0.1)
	f.Add(2, "tailgate.whole", "sound", "replaced", "treat", "jack", "right", "bed", 1999, 40, 1, 2000.0)
	f.Add(3, "inner_sill.left", "heavy_pitting", "filler_over_hole", "leave", "scope", "inner_sill.left", "sill.left", 1920, 1, 20, 61.5)
	f.Add(5, "door_skin.left", "pinholes", "filler_over_dent", "patch", "photos", "door_skin.left", "door.left", 1975, 3, -1, 1e308)
	bodies := []string{"two_door_unitary", "hardtop_on_frame", "pickup", "open_two_seater", "convertible_unitary", "four_door_saloon"}
	e := opened(f)
	f.Fuzz(func(t *testing.T, body int, on, condition, finding, way, look, place, box string, year, years, lead int, hours float64) {
		text := func(v any) string {
			out, err := json.Marshal(v)
			if err != nil {
				return "null" // JSON has no such figure, for example NaN
			}
			return string(out)
		}
		survey := `{"on":` + text(on) + `,"stage":"survey","condition":` + text(condition) + `,"finding":` + text(finding) + `,"lead_failed":` + text(lead) + `}`
		car := `{"format":"underpaint car 1","asked_in":2026,"bodies":[` + text(bodies[uint(body)%6]) + `],"made":{"year":` + text(year) + `},"standard":"show",` +
			`"life":[{"place":"damp","kept":"driven_all_year"},{"place":"salt","kept":"mostly_outside","years":` + text(years) + `}],` +
			`"looks":[{"look":` + text(look) + `,"on":` + text(place) + `,"result":"yes","by":"shop"}],` +
			`"stages":[{"stage":"survey","on":"2026-06-20"},{"stage":"opening_up","on":"2026-07-01"}],"survey":[` + survey + `],` +
			`"opened":[{"box":` + text(box) + `}],"strip_hours":{"metal":` + text(hours) + `},"ways":[{"on":` + text(on) + `,"way":` + text(way) + `,"by":"shop"}]}`
		// Leave out what is refused most often, to reach the rest as well.
		bare := car[:strings.Index(car, `"looks"`)] + `"stages":[{"stage":"survey","on":"2026-06-20"}],"survey":[` + survey + `]}`
		for _, c := range []string{car, bare} {
			for _, ask := range []string{"sheet", "tally", "to_do"} {
				request := []byte(`{"id":2,"ask":"` + ask + `","car":` + c + `}`)
				known(t, request, e.Ask(request))
			}
			request := []byte(`{"id":2,"ask":"range","effort":"rough","car":` + c + `}`)
			known(t, request, e.Ask(request))
		}
	})
}
