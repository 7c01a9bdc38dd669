package pastjobs_test

import (
	"strings"
	"testing"

	"underpaint/engine/pastjobs"
	"underpaint/engine/pastjobs/invented"
	"underpaint/engine/rates"
)

func sampleRates(t testing.TB) *rates.Rates {
	t.Helper()
	r, err := rates.Decode(rates.Sample())
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func jobsOf(t testing.TB, truth *rates.Own, seed uint64, n int) *pastjobs.Jobs {
	t.Helper()
	j, err := invented.Shop{Rates: sampleRates(t), Truth: truth, Seed: seed, Year: 2021}.Jobs(n)
	if err != nil {
		t.Fatal(err)
	}
	return j
}

func BenchmarkScore(b *testing.B) {
	j := jobsOf(b, nil, 7, 6)
	for b.Loop() {
		for n := range j.Jobs {
			j.Score(n)
		}
	}
	b.ReportMetric(float64(b.Elapsed().Milliseconds())/float64(b.N*len(j.Jobs)), "ms/job")
}

// TestRoundTrip: writing the file and reading it back gives the same jobs.
func TestRoundTrip(t *testing.T) {
	j := jobsOf(t, nil, 7, 3)
	text := j.Text([][]byte{rates.Sample()})
	back, faults := pastjobs.Decode(text)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	if len(back.Jobs) != 3 || back.CheckCode() == "" || !back.Invented || string(back.Text([][]byte{rates.Sample()})) != string(text) {
		t.Errorf("%d jobs came back, or not as they were", len(back.Jobs))
	}
	again, _ := pastjobs.Decode([]byte(strings.Replace(string(text), `"came_to":"`, `"came_to":"1`, 1)))
	if again == nil || again.CheckCode() == back.CheckCode() {
		t.Error("another figure, the same check code")
	}
}

// TestScored: a job is compared with its own first range, at the rates of its day;
// agreed changes do not count against the range; and a job that cannot be scored says
// why.
func TestScored(t *testing.T) {
	j := jobsOf(t, nil, 7, 1)
	s := j.Score(0)
	if !s.Modelled || !s.Surveyed || s.WhyNot != "" || s.First.Low <= 0 || s.First.High <= s.First.Low || s.CRPS <= 0 {
		t.Fatalf("%+v", s)
	}
	if w, first := s.Survey.High-s.Survey.Low, s.First.High-s.First.Low; w >= first {
		t.Errorf("the range after the survey is %.0f wide, before it %.0f", w, first)
	}
	if len(s.Rust) < 8 || s.All == nil || len(s.Hours) < 4 {
		t.Errorf("learnt from %d groups and %d trades", len(s.Rust), len(s.Hours))
	}
	for _, e := range s.Rust {
		for k := 1; k < len(e.Mean); k++ {
			if e.Mean[k] < e.Mean[k-1] {
				t.Errorf("%s: deeper rust, fewer steps: %v", e.Group, e.Mean)
			}
		}
	}
	more := *j
	more.Jobs = append([]pastjobs.Job{}, j.Jobs...)
	more.Jobs[0].CameTo += 1_000_000
	more.Jobs[0].More[pastjobs.ChangesAgreed] = 1_000_000
	if got := more.Score(0).First; got != s.First {
		t.Errorf("changes agreed moved the score: %+v, %+v", got, s.First)
	}
	for want, change := range map[string]func(job *pastjobs.Job){
		"neither the range":   func(job *pastjobs.Job) { job.Car = nil },
		"at which rates":      func(job *pastjobs.Job) { job.Rates = "" },
		"are not in the file": func(job *pastjobs.Job) { job.Rates = "00000 00000" },
		"standard was not":    func(job *pastjobs.Job) { c := *job.Car; c.Standard = "not_sure"; job.Car = &c },
		"a part of this body": func(job *pastjobs.Job) { c := *job.Car; c.Bodies = []string{"pickup"}; job.Car = &c },
	} {
		one := *j
		one.Jobs = append([]pastjobs.Job{}, j.Jobs...)
		change(&one.Jobs[0])
		if got := one.Score(0); !strings.Contains(got.WhyNot, want) || got.Modelled {
			t.Errorf("want %q, got %q", want, got.WhyNot)
		}
		one.Jobs[0].Said = &pastjobs.Said{Low: 1_000_000, High: 9_000_000}
		if got := one.Score(0); got.WhyNot != "" || !got.Said || got.First.Low != 1_000_000 {
			t.Errorf("a range that was said counts without more: %+v", got)
		}
	}
}
