package pastjobs_test

import (
	"math"
	"runtime"
	"slices"
	"sync"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/pastjobs"
	"underpaint/engine/pastjobs/scores"
	"underpaint/engine/rates"
)

// scoreAll scores jobs on all cores.
func scoreAll(j *pastjobs.Jobs) []pastjobs.Score {
	out := make([]pastjobs.Score, len(j.Jobs))
	each(len(out), func(n int) { out[n] = j.Score(n) })
	return out
}

func each(n int, do func(n int)) {
	next := make(chan int)
	var wait sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		wait.Go(func() {
			for k := range next {
				do(k)
			}
		})
	}
	for k := range n {
		next <- k
	}
	close(next)
	wait.Wait()
}

// truth is a shop whose floors and sills are worse than the starting figures say, whose
// hood and trunk lids are better, and whose metalwork takes longer.
func truth() *rates.Own {
	o := rates.NothingLearnt()
	for group, factor := range map[string]float64{"floor": 1.6, "sill": 1.4, "lids": 0.7} {
		o.Rust = append(o.Rust, rates.OwnRust{Group: group, OwnFigure: rates.OwnFigure{Factor: factor, Jobs: 1}})
	}
	o.Hours[car.Metal].Factor, o.Hours[car.Prep].Factor = 1.3, 0.85
	return o
}

// TestLearnFromAShopThatDiffers: learning recovers known shifts within their stated
// error, and ranges based on what the other jobs taught miss by less.
func TestLearnFromAShopThatDiffers(t *testing.T) {
	if !*slow {
		t.Skip("not run without -slow")
	}
	own := truth()
	j := jobsOf(t, own, 11, 40)
	all := scoreAll(j)
	l, err := pastjobs.Learn(all, pastjobs.EveryJob)
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range l.Rust {
		agrees(t, r, math.Log(own.RustFactor(r.Group)))
	}
	for _, r := range l.Hours {
		agrees(t, r, math.Log(own.Hours[slices.Index(car.TradeIDs[:], r.Group)].Factor))
	}
	again := make([]pastjobs.Again, len(all))
	each(len(all), func(n int) {
		if again[n], err = j.Again(n, all); err != nil {
			t.Error(err)
		}
	})
	if i := pastjobs.Improve(again); i.Jobs != 40 || i.Gain < i.Error {
		t.Errorf("what other jobs taught gains %.0f ± %.0f on misses of %.0f", i.Gain, i.Error, i.Starting)
	}
	few, err := pastjobs.Learn(all[:2], pastjobs.EveryJob)
	if err != nil {
		t.Fatal(err)
	}
	for k, r := range few.Rust {
		if r.Share > 0.5 || r.Share >= l.Rust[k].Share || r.Jobs > 2 {
			t.Errorf("%s: two jobs count for %.2f, forty for %.2f", r.Group, r.Share, l.Rust[k].Share)
		}
	}
	if o := few.Own("2026-01-01", ""); len(o.Rust) != 0 || o.Spread.Jobs != 0 {
		t.Errorf("two jobs are offered for use: %+v", o)
	}
}

// agrees allows four standard errors: of about forty figures none should be outside by
// chance, even with counts that are skewed and few.
func agrees(t *testing.T, l scores.Learnt, is float64) {
	t.Helper()
	if miss := l.Plain - is; math.Abs(miss) > 4*l.PlainSE {
		t.Errorf("%s: learnt %.2f ± %.2f, is %.2f", l.Group, l.Plain, l.PlainSE, is)
	}
}

// TestLearnFromAPlainShop: where the starting figures are the truth, nothing moves
// beyond noise, and neither do the misses.
func TestLearnFromAPlainShop(t *testing.T) {
	if !*slow {
		t.Skip("not run without -slow")
	}
	j := jobsOf(t, nil, 15, 40)
	all := scoreAll(j)
	l, err := pastjobs.Learn(all, pastjobs.EveryJob)
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range append(l.Rust, l.Hours...) {
		agrees(t, r, 0)
		if math.Abs(r.Shift) > 0.35 {
			t.Errorf("%s moved by %.2f", r.Group, r.Shift)
		}
	}
	// The ends are 1.28 standard deviations out on the log scale; the test allows four.
	if sd := math.Log(l.Spread.High/l.Spread.Low) / 2 / 1.2816; math.Abs(math.Log(l.Spread.Factor)) > 4*sd {
		t.Errorf("spread %+v", l.Spread)
	}
	s, err := j.Sum(all)
	if err != nil {
		t.Fatal(err)
	}
	if s.Scored != 40 || s.Judged.Verdict != scores.Agrees || s.First.Below+s.First.Inside+s.First.Above != 40 {
		t.Errorf("%+v %+v", s.First, s.Judged)
	}
	for _, r := range s.Rust {
		if r.Known && math.Abs(r.Log) > 4*r.SE {
			t.Errorf("%s: found over expected %.2f (%.2f to %.2f)", r.Group, r.Ratio, r.Low, r.High)
		}
	}
	if p := s.Past("x"); p == nil || p.Jobs() != 40 {
		t.Errorf("%+v", p)
	}
	if s, err := j.Sum(all[:9]); err != nil || s.Past("x") != nil || s.Judged.Verdict != scores.TooFew {
		t.Error("nine jobs are said to be enough")
	}
}
