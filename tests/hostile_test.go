//go:build !js

package tests

import (
	"encoding/json"
	"math"
	"os"
	"runtime"
	"strconv"
	"strings"
	"testing"

	"underpaint/engine/columns"
	"underpaint/engine/message"
	"underpaint/engine/pastjobs"
	"underpaint/engine/rates"
)

// Input made to do harm: the engine must refuse it before it costs anything and must
// never take it for something else, and texts must come back unchanged.

// asked is a request with a text in it, in the form in which a page sends files.
func asked(t testing.TB, ask, member, text string) []byte {
	t.Helper()
	quoted, err := json.Marshal(text)
	if err != nil {
		t.Fatal(err)
	}
	return []byte(`{"id":1,"ask":"` + ask + `","` + member + `":` + string(quoted) + `,"today":"2026-07-01"}`)
}

// hostile are requests, with the number of bytes that may be allocated before the
// refusal. Where a text has to be taken out of the request, that is a few times its
// length: nothing may grow faster.
func hostile(t testing.TB) map[string]struct {
	request []byte
	most    uint64
} {
	deep, keys := strings.Repeat("[", 100_000), strings.Builder{}
	for n := range 1_000_000 {
		keys.WriteString(`,"k` + strconv.Itoa(n) + `":0`)
	}
	car := func(member string) []byte {
		return []byte(`{"id":1,"ask":"range","effort":"rough","car":{` + member + `}}`)
	}
	long := strings.Repeat("x", 50<<20)
	look := `{"look":"bubbles","on":"outer_sill.left","result":"yes","by":"customer"}`
	return map[string]struct {
		request []byte
		most    uint64
	}{
		"a text of 50 MB":              {[]byte(`"` + long + `"`), 64 << 10},
		"a million keys":               {[]byte("{" + keys.String()[1:] + "}"), 40 << 20},
		"a million keys in a car":      {car(keys.String()[1:]), 40 << 20},
		"100,000 brackets":             {[]byte(deep), 1 << 20},
		"100,000 brackets in a car":    {car(`"looks":` + deep), 1 << 20},
		"100,000 groups in a car":      {car(strings.Repeat(`"looks":{`, 100_000)), 1 << 20},
		"a million items":              {car(`"looks":[0` + strings.Repeat(",0", 1_000_000) + `]`), 40 << 20},
		"a million looks":              {car(`"looks":[` + strings.Repeat(look+",", 100_000) + look + `]`), 40 << 20},
		"4 MB of digits":               {car(`"asked_in":` + strings.Repeat("9", 4<<20)), 40 << 20},
		"a name of 4 MB":               {car(`"` + long[:4<<20] + `":1`), 40 << 20},
		"rates of 40 MB":               {asked(t, "check_rates", "rates", long[:40<<20]), 400 << 20},
		"rates 100,000 brackets deep":  {asked(t, "check_rates", "rates", deep), 4 << 20},
		"rates with a million keys":    {asked(t, "check_rates", "rates", "{"+keys.String()[1:]+"}"), 160 << 20},
		"jobs 100,000 brackets deep":   {asked(t, "check_rates", "rates", `{"jobs":`+deep), 4 << 20},
		"an id that is not one":        {[]byte(`{"id":1e300,"ask":"range"}`), 64 << 10},
		"a car where text is expected": {[]byte(`{"id":1,"ask":"cover","sum":{"a":[]}}`), 64 << 10},
	}
}

// allocated counts the bytes that f allocates.
func allocated(f func()) uint64 {
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	f()
	runtime.ReadMemStats(&after)
	return after.TotalAlloc - before.TotalAlloc
}

func TestHostileRequests(t *testing.T) {
	e := &message.Engine{}
	quoted, err := json.Marshal(string(rates.Sample()))
	must(t, err)
	e.Ask([]byte(`{"id":1,"ask":"open","rates":` + string(quoted) + `}`))
	for name, c := range hostile(t) {
		var reply []byte
		used := allocated(func() { reply = e.Ask(c.request) })
		var r struct{ Kind, Text, Found string }
		must(t, json.Unmarshal(reply, &r))
		checked := r.Kind == "rates_checked" && strings.Contains(string(reply), `"ok":false`)
		if r.Kind != "refused" && !checked {
			t.Errorf("%s: %.300s", name, reply)
		}
		if used > c.most {
			t.Errorf("%s: %d kB allocated, at most %d", name, used>>10, c.most>>10)
		}
		if len(reply) > 8000 {
			t.Errorf("%s: a refusal of %d bytes", name, len(reply))
		}
	}
}

// TestHostileTables does the same for tables and for files of past jobs, which are read
// entry by entry.
func TestHostileTables(t *testing.T) {
	want := []columns.Column{{Name: "part"}, {Name: "price", Kind: columns.Number}}
	for name, text := range map[string]string{
		"a million rows":          "part,price\n" + strings.Repeat("a,1\n", 1_000_000),
		"a million cells":         "part,price" + strings.Repeat(",", 1_000_000) + "\n",
		"a cell of 15 MB":         "part,price\n" + strings.Repeat("x", 15<<20) + ",1\n",
		"a mark never closed":     "part,price\n\"" + strings.Repeat("\"\"", 7<<20),
		"nothing but line ends":   strings.Repeat("\n", 15<<20),
		"17 MB":                   strings.Repeat("x", 17<<20),
		"nothing but marks":       strings.Repeat("\"", 15<<20),
		"a figure of 9,000 signs": "part,price\na," + strings.Repeat("9", 9000) + "\n",
	} {
		var err error
		var table columns.Table
		used := allocated(func() { table, err = columns.Read(text, want) })
		if err == nil && (table.Refused == 0 || len(table.Refusals) > columns.MaxRefusals) {
			t.Errorf("%s: taken", name)
		}
		// A row takes a few cells of at least 24 bytes; nothing grows faster than that.
		if used > 64<<20 {
			t.Errorf("%s: %d kB allocated", name, used>>10)
		}
	}
	head := `{"format":"underpaint past jobs 1","currency":"USD","rates":[],"jobs":[`
	job := `{"name":"a","finished":"2024-01-01","said":{"low":"1000","high":"2000"},"came_to":"1500"}`
	for name, text := range map[string]string{
		"100,000 jobs":           head + strings.Repeat(job+",", 100_000) + job + "]}",
		"30 MB in one job":       head + strings.Repeat(" ", 30<<20) + job + "," + job + "]}",
		"33 MB":                  strings.Repeat(" ", 33<<20),
		"brackets":               head + strings.Repeat("[", 100_000),
		"100,000 times the head": strings.Repeat(`{"jobs":`, 100_000),
		"a name of 20 MB":        `{"` + strings.Repeat("n", 20<<20) + `":1}`,
	} {
		var faults []error
		var jobs *pastjobs.Jobs
		used := allocated(func() { jobs, faults = pastjobs.Decode([]byte(text)) })
		if jobs != nil || len(faults) == 0 || len(faults) > pastjobs.MostJobs {
			t.Errorf("%s: taken, or %d faults", name, len(faults))
		}
		if most := 64<<20 + 6*uint64(len(text)); used > most {
			t.Errorf("%s: %d kB allocated, at most %d", name, used>>10, most>>10)
		}
	}
}

// leaf is a place in a JSON value that can be set.
type leaf struct {
	path  string
	value any
	set   func(any)
}

// places walks a value: groups are the objects, texts the strings in it.
func places(path string, value any, set func(any)) (groups, texts []leaf) {
	join := func(g, t []leaf) { groups, texts = append(groups, g...), append(texts, t...) }
	switch v := value.(type) {
	case map[string]any:
		groups = append(groups, leaf{path, v, set})
		for name, one := range v {
			join(places(strings.TrimPrefix(path+"."+name, "."), one, func(x any) { v[name] = x }))
		}
	case []any:
		for n, one := range v {
			join(places(path+"["+strconv.Itoa(n)+"]", one, func(x any) { v[n] = x }))
		}
	case string:
		texts = append(texts, leaf{path, v, set})
	}
	return groups, texts
}

// files are a whole car and whole rates, each with a function that checks them and
// returns the reply.
func files(t *testing.T) map[string]func(value any) (reply []byte) {
	e := &message.Engine{}
	return map[string]func(any) []byte{
		"../engine/carfile/testdata/seen.json": func(v any) []byte {
			text, err := json.Marshal(v)
			must(t, err)
			return e.Ask([]byte(`{"id":1,"ask":"check_car","car":` + string(text) + `}`))
		},
		"../engine/rates/data/sample.json": func(v any) []byte {
			text, err := json.Marshal(v)
			must(t, err)
			return e.Ask(asked(t, "check_rates", "rates", string(text)))
		},
	}
}

func valueOf(t *testing.T, name string) (value any) {
	text, err := os.ReadFile(name)
	must(t, err)
	must(t, json.Unmarshal(text, &value))
	return value
}

// firstFault returns the path of a refusal or of the first fault, and what was found
// there.
func firstFault(t *testing.T, reply []byte) (path, found string, ok bool) {
	var r struct {
		Kind, Path, Found, Canonical string
		Faults                       []struct{ Path, Found string }
	}
	must(t, json.Unmarshal(reply, &r))
	switch {
	case r.Kind == "refused":
		return r.Path, r.Found, false
	case len(r.Faults) > 0:
		return r.Faults[0].Path, r.Faults[0].Found, false
	}
	return "", r.Canonical, true
}

// TestForeignNames: a name that means something elsewhere is an unknown member of every
// group of a file, refused with the path of the group.
func TestForeignNames(t *testing.T) {
	for name, check := range files(t) {
		value := valueOf(t, name)
		groups, _ := places("", value, nil)
		if len(groups) < 10 {
			t.Fatalf("%s: %d groups", name, len(groups))
		}
		for _, g := range groups {
			members := g.value.(map[string]any)
			for _, foreign := range []string{"__proto__", "constructor", "toString", "hasOwnProperty", "", "a.b", "\u0000"} {
				members[foreign] = map[string]any{"standard": "driver"}
				if path, found, ok := firstFault(t, check(value)); ok || path != g.path {
					t.Errorf("%s: %q in %q: %v at %q, found %q", name, foreign, g.path, ok, path, found)
				}
				delete(members, foreign)
			}
		}
	}
}

// TestMarkup: markup in any text is refused where an id is expected, with the text as
// it was found, and is kept letter by letter where any text is allowed.
func TestMarkup(t *testing.T) {
	const markup = `<img src=x onerror="alert('1')">&amp;\u003c</script>`
	for name, check := range files(t) {
		value := valueOf(t, name)
		_, texts := places("", value, nil)
		kept, elsewhere := 0, 0
		for _, text := range texts {
			text.set(markup)
			reply := check(value)
			path, found, ok := firstFault(t, reply)
			switch {
			case ok:
				kept++
				var back any
				must(t, json.Unmarshal([]byte(found), &back))
				_, again := places("", back, nil)
				same := false
				for _, one := range again {
					same = same || one.path == text.path && one.value == markup
				}
				if !same {
					t.Errorf("%s: %s did not come back as it was", name, text.path)
				}
			case path != text.path:
				elsewhere++ // an entry that depends on the changed one
			case !strings.Contains(found, "<img src=x") && !strings.HasSuffix(found, "characters"):
				t.Errorf("%s: %s: found %q", name, text.path, found)
			}
			text.set(text.value)
		}
		if kept < 1 || len(texts) < 40 || kept == len(texts) || elsewhere > 5 {
			t.Errorf("%s: %d of %d texts kept, %d refused elsewhere", name, kept, len(texts), elsewhere)
		}
	}
}

// TestEdges: a figure at its bound is accepted and the next one past it is not. The
// bounds are those of the format, written out here again.
func TestEdges(t *testing.T) {
	const file = "../engine/carfile/testdata/seen.json"
	check := files(t)[file]
	for _, c := range []struct {
		path      string
		low, high float64
		whole     bool
	}{
		{"asked_in", 2020, 2200, true}, {"made.year", 1920, 1999, true}, {"survey[0].lead_failed", 0, 20, true},
		{"strip_hours.metal", 0.1, 2000, false}, {"strip_hours.fit", 0.1, 2000, false}, {"life[1].years", 1, 58, true},
	} {
		below, above := math.Nextafter(c.low, math.Inf(-1)), math.Nextafter(c.high, math.Inf(1))
		if c.whole {
			below, above = c.low-1, c.high+1
		}
		for v, want := range map[float64]bool{c.low: true, c.high: true, below: false, above: false, -c.high: false, 1e308: false, -1e308: false, 5e-324: false, 1 << 53: false} {
			value := valueOf(t, file).(map[string]any)
			value["life"] = append(value["life"].([]any), map[string]any{"place": "salt", "kept": "not_sure", "years": 1.0})
			record := value["survey"].([]any)[0].(map[string]any)
			switch name, member, _ := strings.Cut(c.path, "."); name {
			case "survey[0]":
				record[member] = v
			case "life[1]":
				value["life"].([]any)[1].(map[string]any)[member] = v
			case "asked_in":
				value[name] = v
				value["made"] = map[string]any{"year": 1950}
			default:
				value[name].(map[string]any)[member] = v
			}
			path, found, ok := firstFault(t, check(value))
			// The number of joints of a part is checked after the bound on any record.
			if strings.HasSuffix(c.path, "lead_failed") && v == 20 && !ok {
				ok = path == c.path && strings.HasPrefix(found, "20")
			}
			if ok != want || !want && path != c.path {
				t.Errorf("%s = %g: taken %v, path %q, found %.80q", c.path, v, ok, path, found)
			}
		}
	}
}
