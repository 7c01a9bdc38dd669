package message

import (
	"strings"
	"testing"

	"underpaint/engine/pastjobs"
	"underpaint/engine/pastjobs/invented"
	"underpaint/engine/rates"
)

// TestPastJobs: a file of jobs is scored step by step and described in words. Only the
// figures that the shop names are used, and they can be removed again.
func TestPastJobs(t *testing.T) {
	r, err := rates.Decode(rates.Sample())
	if err != nil {
		t.Fatal(err)
	}
	j, err := invented.Shop{Rates: r, Seed: 5, Year: 2022}.Jobs(10)
	if err != nil {
		t.Fatal(err)
	}
	j.Jobs[3].Said = &pastjobs.Said{Low: 1_234_567, High: 4_567_890}
	text, sample := string(j.Text([][]byte{rates.Sample()})), string(rates.Sample())
	e := &Engine{}
	if reply := shopAsk(t, e, "score", map[string]any{"rates": sample, "today": "2026-11-25"}); reply["kind"] != "refused" {
		t.Errorf("scored nothing: %v", reply)
	}
	opened := shopAsk(t, e, "open_jobs", map[string]any{"jobs": text})
	if opened["ok"] != true || opened["jobs"] != 10.0 {
		t.Fatalf("%v", opened)
	}
	if reply := shopAsk(t, e, "open_jobs", map[string]any{"jobs": text[:len(text)/2]}); reply["ok"] != false || len(listIn(t, reply, "faults")) == 0 || e.jobs.Jobs == nil {
		t.Errorf("a file cut short: %v", reply["faults"])
	}
	reply, steps := map[string]any{"state": "refining"}, 0
	for ; reply["state"] == "refining"; steps++ {
		reply = shopAsk(t, e, "score", map[string]any{"rates": sample, "today": "2026-11-25"})
	}
	if steps != 21 || reply["state"] != "settled" || reply["scored"] != 10.0 {
		t.Fatalf("%d steps, %v", steps, reply)
	}
	table, sums := listIn(t, reply, "table"), listIn(t, opened, "sums")
	for n, one := range sums {
		after := table[n]
		if one["came_to_text"] != after["came_to_text"] || (n == 3) != (one["said_text"] != "") || n == 3 && one["said_text"] != after["first_text"] {
			t.Errorf("job %d reads %v before it is scored, %v after", n, one, after)
		}
	}
	headline := reply["headline"].([]any)[0].(string)
	if !strings.HasPrefix(headline, "10 jobs. ") || !strings.Contains(headline, "We said that about 2 would come out outside") {
		t.Error(headline)
	}
	if n := len(listIn(t, reply, "table")); n != 10 || len(listIn(t, reply, "boxes")) != 12 || len(listIn(t, reply, "statistics")) < 5 {
		t.Errorf("%d rows", n)
	}
	learning := reply["learning"].(map[string]any)
	lines := listIn(t, learning, "lines")
	if len(lines) < 10 || lines[0]["offered"] != true {
		t.Errorf("%v", lines)
	}
	used := shopAsk(t, e, "adopt", map[string]any{"rates": sample, "today": "2026-11-25", "use": []string{lines[0]["id"].(string), "hours.metal"}, "record": true})
	got, err := rates.Decode([]byte(used["rates"].(string)))
	if err != nil {
		t.Fatal(err)
	}
	if len(got.Own.Rust) != 1 || got.Own.Rust[0].Factor != lines[0]["factor"] || got.Own.Hours[0].Jobs != 10 || got.Own.Spread.Factor != 1 || got.Past.Jobs() != 10 {
		t.Errorf("%+v %+v", got.Own, got.Past)
	}
	again := shopAsk(t, e, "score", map[string]any{"rates": used["rates"], "today": "2026-11-25"})
	if lines := listIn(t, again["learning"].(map[string]any), "lines"); lines[0]["in_use_text"] != lines[0]["factor_text"] {
		t.Errorf("in use: %v", lines[0])
	}
	none := shopAsk(t, e, "adopt", map[string]any{"rates": used["rates"], "today": "2026-11-25", "use": []string{}, "record": false})
	if got, err := rates.Decode([]byte(none["rates"].(string))); err != nil || len(got.Own.Rust) != 0 || got.Past != nil {
		t.Errorf("not taken out again: %v", err)
	}
	if reply := shopAsk(t, e, "adopt", map[string]any{"rates": sample, "today": "2026-11-25", "use": []string{"rust.engine"}, "record": false}); reply["kind"] != "refused" {
		t.Errorf("%v", reply)
	}
	// Open the same jobs again: their scores are kept.
	shopAsk(t, e, "open_jobs", map[string]any{"jobs": text})
	if reply := shopAsk(t, e, "score", map[string]any{"rates": sample, "today": "2026-11-25"}); reply["done"] != 10.0 {
		t.Errorf("known scores were worked out again: %v", reply["done"])
	}
}

// TestJobsTable: figures of jobs are read from a table and written to one.
func TestJobsTable(t *testing.T) {
	e := &Engine{}
	reply := shopAsk(t, e, "read_jobs", map[string]any{"text": "job,finished,said low,said high,came to\na,2024-01-31,\"$10,000\",20000,15000\nb,31.1.2024,1,2,3\n", "decimal": "point", "currency": "USD"})
	jobs := listIn(t, reply, "jobs")
	if len(jobs) != 1 || jobs[0]["came_to"] != "15000.00" || reply["refused"] != 1.0 {
		t.Fatalf("%v", reply)
	}
	shopAsk(t, e, "open_jobs", map[string]any{"jobs": `{"format":"underpaint past jobs 1","currency":"USD","rates":[],"jobs":[{"name":"a","finished":"2024-01-31","said":{"low":"10000.00","high":"20000.00"},"came_to":"15000.00"}]}`})
	out := shopAsk(t, e, "write_jobs", map[string]any{"separator": ";"})
	if text := out["text"].(string); !strings.Contains(text, "a;2024-01-31;\"10000,00\";\"20000,00\";\"15000,00\";") {
		t.Error(text)
	}
}

// TestOwnRecord: the customer's page says how ranges came out, and how many figures are
// the shop's own, only where the rates have that.
func TestOwnRecord(t *testing.T) {
	own := rates.NothingLearnt()
	own.LearntOn, own.JobsCode = "2026-06-01", "x"
	own.Rust = []rates.OwnRust{{Group: "floor", OwnFigure: rates.OwnFigure{Factor: 1.5, Jobs: 12}}}
	text, _, err := rates.Adopt(rates.Sample(), own, &rates.Past{Below: 2, Inside: 19, Above: 3, From: "2024-01-31", To: "2026-05-30", JobsCode: "x"})
	if err != nil {
		t.Fatal(err)
	}
	high := map[bool]float64{}
	for _, learnt := range []bool{false, true} {
		file := rates.Sample()
		if learnt {
			file = text
		}
		e := &Engine{}
		shopAsk(t, e, "open", map[string]any{"rates": string(file)})
		reply := ask(t, e, `"range","effort":"rough"`, goodCar)
		high[learnt] = listIn(t, reply, "rows")[0]["exact"].(map[string]any)["p90_minor"].(float64)
		var own []string
		for _, line := range reply["own_record"].([]any) {
			own = append(own, line.(string))
		}
		lines := strings.Join(own, "\n")
		if learnt != strings.Contains(lines, "Of 24 jobs that this shop finished from January 31, 2024 to May 30, 2026, 3 came out above") ||
			learnt != strings.Contains(lines, "1 figure comes from this shop's own finished jobs, as of June 1, 2026") {
			t.Errorf("learnt %v: %q", learnt, lines)
		}
	}
	if high[true] <= high[false] {
		t.Errorf("floors half as deep again do not move the range: %v, %v", high[false], high[true])
	}
}
