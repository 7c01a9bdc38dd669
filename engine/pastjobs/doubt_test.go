package pastjobs_test

import (
	"math"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/pastjobs"
	"underpaint/engine/pricing"
	"underpaint/engine/rates"
)

// TestDoubtIsLearntFromJobs: a shop all of whose work takes a quarter longer than the
// figures say teaches a growth near that where nothing else takes it up, and its doubt
// falls. The jobs' hours are left out, so that the hours cannot teach it first.
func TestDoubtIsLearntFromJobs(t *testing.T) {
	own := rates.NothingLearnt()
	for trade := range own.Hours {
		own.Hours[trade].Factor = 1.25
	}
	j := jobsOf(t, own, 21, 10)
	for n := range j.Jobs {
		j.Jobs[n].Hours = [car.Trades]float64{}
	}
	all := scoreAll(j)
	again := make([]pastjobs.Again, len(all))
	each(len(all), func(n int) {
		var err error
		if again[n], err = j.Again(n, all); err != nil {
			t.Error(err)
		}
	})
	r, err := rates.Decode(rates.Sample())
	if err != nil {
		t.Fatal(err)
	}
	d := pastjobs.LearnDoubt(r, again)
	if d.From != carfile.Survey || d.Jobs != len(all) {
		t.Fatalf("%d jobs at %q", d.Jobs, d.From)
	}
	// Work after the strip is mostly hours: materials and parts stay as they are.
	if d.Is.Growth < 0.1 || d.Is.Growth > math.Log(1.25) || d.Is.SD() >= d.Was.SD() || d.Is.Shared > 0.04 {
		t.Errorf("%+v", d)
	}
	use := d.Own()
	if use == nil || pastjobs.LearnDoubt(r, again[:2]).Own() != nil {
		t.Fatalf("offered: %+v, from two jobs: %+v", use, pastjobs.LearnDoubt(r, again[:2]).Own())
	}
	learnt := rates.NothingLearnt()
	learnt.LearntOn, learnt.JobsCode, learnt.Doubt = "2026-06-01", "12345 67890", use
	text, adopted, err := rates.Adopt(rates.Sample(), learnt, nil)
	if err != nil || adopted.Own.Doubt == nil || *adopted.Own.Doubt != *use {
		t.Fatalf("%v: %+v in %.0s", err, adopted, text)
	}
	for _, stage := range rates.DoubtStages {
		was, is := pricing.DoubtAt(r, stage), pricing.DoubtAt(adopted, stage)
		if moved := is.Growth - was.Growth; math.Abs(moved-(d.Is.Growth-d.Was.Growth)) > 0.001 || is.SD >= was.SD {
			t.Errorf("%s: %+v, before %+v", stage, is, was)
		}
	}
}

// TestDoubtOfNoJobs: nothing is offered, and nothing moves.
func TestDoubtOfNoJobs(t *testing.T) {
	r, err := rates.Decode(rates.Sample())
	if err != nil {
		t.Fatal(err)
	}
	if d := pastjobs.LearnDoubt(r, nil); d.Own() != nil || d.Is != d.Was || d.From != carfile.Told {
		t.Errorf("%+v", d)
	}
}

// TestRangesWereNarrow: of 20 jobs with ranges that hold 8 in 10, the two-sided 5 % level
// lies between 11 inside, P(X ≤ 11) = .010, and 12, P(X ≤ 12) = .032 (binomial
// distribution, summed by hand).
func TestRangesWereNarrow(t *testing.T) {
	for inside, want := range map[int]bool{10: true, 11: true, 12: false, 16: false, 20: false} {
		if got := pastjobs.RangesWereNarrow(&rates.Past{Inside: inside, Above: 20 - inside}); got != want {
			t.Errorf("%d of 20: narrow %v", inside, got)
		}
	}
}
