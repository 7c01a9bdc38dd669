package pastjobs_test

import (
	"strings"
	"testing"

	"underpaint/engine/columns"
	"underpaint/engine/money"
	"underpaint/engine/pastjobs"
)

// TestTable: figures of jobs from a spreadsheet, in the forms that spreadsheets write;
// what is written can be read back.
func TestTable(t *testing.T) {
	eur, err := money.CurrencyOf("EUR")
	if err != nil {
		t.Fatal(err)
	}
	text := "\ufeffJob;Finished;Said low;Said high;Came to;Rust found;Changes agreed\r\n" +
		"2024-01;2024-03-31;10.000,00 €;20.000,00 €;21.234,50 €;1.234,50 €;\r\n" +
		"\"2024-02\nsecond\";2024-02-30;1,00;2,00;3,00;;\r\n" +
		"2024-03;2024-05-01;20.000,00;10.000,00;15.000,00;;\r\n" +
		"2024-01;2024-06-01;10.000,00;20.000,00;15.000,00;;\r\n" +
		"2024-05;2024-06-01;10.000,00;20.000,00;15.000,00;;15.000,00\r\n" +
		"=cmd;2024-06-01;10.000,00;20.000,00;15.000,00;;\r\n" +
		"2024-07;2024-06-01;10.000,00 $;20.000,00;15.000,00;;\r\n"
	jobs, table, err := pastjobs.ReadTable(text, columns.Unknown, eur)
	if err != nil {
		t.Fatal(err)
	}
	if len(jobs) != 1 || jobs[0].CameTo != 2_123_450 || jobs[0].Said.Low != 1_000_000 || jobs[0].More[pastjobs.RustFound] != 123_450 {
		t.Errorf("%+v", jobs)
	}
	var said []string
	for _, r := range table.Refusals {
		said = append(said, r.Error())
	}
	all := strings.Join(said, "\n")
	for _, want := range []string{"a date such as", "above the low end", "a name of its own", "more than the changes agreed"} {
		if !strings.Contains(all, want) {
			t.Errorf("no refusal with %q in\n%s", want, all)
		}
	}
	if table.Refused != 6 || len(table.Refusals) != 6 {
		t.Errorf("%d refused: %s", table.Refused, all)
	}
	j := &pastjobs.Jobs{Currency: eur, Jobs: jobs}
	for sep, mark := range map[byte]columns.Decimal{',': columns.Point, ';': columns.Comma, '\t': columns.Point} {
		out, err := j.WriteTable(sep, mark)
		if err != nil {
			t.Fatal(err)
		}
		back, table, err := pastjobs.ReadTable(out, columns.Unknown, eur)
		if err != nil || len(back) != 1 || back[0].CameTo != jobs[0].CameTo || *back[0].Said != *jobs[0].Said || back[0].More != jobs[0].More {
			t.Errorf("%q: %v %+v %v", sep, err, back, table.Questions)
		}
	}
	yen, _ := money.CurrencyOf("JPY")
	if jobs, _, _ := pastjobs.ReadTable("job,finished,said low,said high,came to\na,2024-01-01,1000000,2000000,1500000.5\n", columns.Unknown, yen); len(jobs) != 0 {
		t.Error("half a yen was taken")
	}
}

// TestRefusedFiles: every fault names its job, and nothing of the file is returned.
func TestRefusedFiles(t *testing.T) {
	head := `{"format":"underpaint past jobs 1","currency":"USD","rates":[],"jobs":[`
	job := `{"name":"a","finished":"2024-01-01","said":{"low":"1000","high":"2000"},"came_to":"1500"}`
	if _, faults := pastjobs.Decode([]byte(head + job + `]}`)); len(faults) > 0 {
		t.Fatal(faults)
	}
	for _, c := range []struct {
		text string
		want []string
	}{
		{head + job, []string{"a closing ]"}},
		{strings.Replace(head, "jobs 1", "jobs 2", 1) + `]}`, []string{"newer version"}},
		{strings.Replace(head, "USD", "XXX", 1) + `]}`, []string{"currency"}},
		{head + job + `,` + job + `]}`, []string{"jobs[1].name: expected a name of its own"}},
		{head + strings.Replace(job, `"1500"`, `"1500.555"`, 1) + `,` + strings.Replace(job, `"2000"`, `"900"`, 1) + `]}`,
			[]string{"jobs[0].came_to", "jobs[1].said.high: expected an amount above low"}},
		{head + strings.Replace(job, `"name"`, `"owner":"x","name"`, 1) + `]}`, []string{"jobs[0]"}},
		{head + strings.Replace(job, `}}`, `}`, 1) + strings.Repeat(" ", 10), nil},
		{`{"format":"underpaint past jobs 1","currency":"USD","rates":[{}],"jobs":[]}`, []string{"rates[0]"}},
		{"", []string{"empty"}},
	} {
		j, faults := pastjobs.Decode([]byte(c.text))
		if j != nil || len(faults) == 0 || c.want != nil && len(faults) != len(c.want) {
			t.Errorf("%s: %v", c.text, faults)
			continue
		}
		for k, want := range c.want {
			if !strings.Contains(faults[k].Error(), want) {
				t.Errorf("want %q, got %v", want, faults[k])
			}
		}
	}
}

func FuzzDecode(f *testing.F) {
	f.Add([]byte(`{"format":"underpaint past jobs 1","currency":"USD","rates":[],"jobs":[{"name":"a","finished":"2024-01-01","said":{"low":"1000","high":"2000"},"came_to":"1500"}]}`))
	f.Add([]byte(`{"format":"underpaint past jobs 1","currency":"JPY","rates":[],"jobs":[]}`))
	f.Fuzz(func(t *testing.T, text []byte) {
		j, faults := pastjobs.Decode(text)
		if (j == nil) == (len(faults) == 0) {
			t.Fatal("neither jobs nor a reason, or both")
		}
		if j == nil || len(j.Rates) > 0 {
			return
		}
		again, faults := pastjobs.Decode(j.Text(nil))
		if len(faults) > 0 || len(again.Jobs) != len(j.Jobs) {
			t.Fatalf("read back differently: %v", faults)
		}
	})
}

// TestFiguresAlone: jobs without a car are counted against the range that was given,
// and teach nothing.
func TestFiguresAlone(t *testing.T) {
	usd, err := money.CurrencyOf("USD")
	if err != nil {
		t.Fatal(err)
	}
	j := &pastjobs.Jobs{Currency: usd}
	for k := range 12 {
		j.Jobs = append(j.Jobs, pastjobs.Job{Name: string(rune('a' + k)), Finished: "2025-01-01", Said: &pastjobs.Said{Low: 10_000, High: 20_000}, CameTo: money.Minor(9_000 + 1_000*k)})
	}
	all, again := make([]pastjobs.Score, 12), make([]pastjobs.Again, 12)
	for n := range all {
		all[n] = j.Score(n)
	}
	for n := range again {
		if again[n], err = j.Again(n, all); err != nil {
			t.Fatal(err)
		}
	}
	s, err := j.Sum(all)
	if err != nil {
		t.Fatal(err)
	}
	if s.First.Below != 1 || s.First.Inside != 11 || s.Modelled != 0 || len(s.Rust) != 0 {
		t.Errorf("%+v", s)
	}
	if i := pastjobs.Improve(again); i.Jobs != 0 {
		t.Errorf("%+v", i)
	}
	if l, err := pastjobs.Learn(all, pastjobs.EveryJob); err != nil || len(l.Rust) != 0 || len(l.Hours) != 0 {
		t.Errorf("%+v %v", l, err)
	}
}
