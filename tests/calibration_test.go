//go:build !js

package tests

import (
	"flag"
	"fmt"
	"math"
	"runtime"
	"strings"
	"sync"
	"testing"
)

// Calibration by simulation, in the spirit of Talts, Betancourt, Simpson, Vehtari and
// Gelman, "Validating Bayesian inference algorithms with simulation-based calibration",
// arXiv:1804.06788, 2018. Cars are drawn from the model, evidence is simulated stage
// after stage, and the rank of the car's own price among draws given the evidence must
// be uniform. So at every stage the 80 % range must contain the truth for 80 of 100
// cars, and each tail for 10. A car may be freshly covered, which hides some of its
// damage; half the customers are asked about that.

var calibrationCars = flag.Int("calibration-cars", 120, "simulated cars per stage; 2000 and more for the whole calibration")

// calibrationFirst skips the first cars, to use others.
var calibrationFirst = flag.Int("calibration-first", 0, "number of the first simulated car")

// ranks is the number of draws among which each price is ranked: ranks 0 to 199.
const ranks = 199

// stageNames are the stages; what is known at each adds to the one before.
var stageNames = [...]string{"told", "walk-round", "survey", "strip hours", "opened up"}

// doubted are the stages in the words of the rates.
var doubted = [...]string{"told", "walk_round", "survey", "survey", "opening_up"}

// trial is one way of inference: the right one or a wrong one.
type trial struct {
	name   string
	alone  bool // every part has luck of its own only
	twice  bool // all evidence counted twice
	softly bool // records of bare metal are believed less than they should be
	last   int  // the last stage that is worked out
}

// tally counts where cars fell at one stage: by price, by the number of items rusted
// through, and by the sum of the steps of all items on the scale of conditions. Widths
// are those of the price.
type tally struct {
	by    [measures]fell
	width float64
}

// What cars are ranked by.
const (
	byPrice = iota
	byHoles
	bySteps
	measures
)

var measureNames = [measures]string{"price", "parts rusted through", "steps of condition"}

type fell struct{ below, inside, above int }

func (f fell) cars() int { return f.below + f.inside + f.above }

func (f *fell) add(g fell) {
	f.below, f.inside, f.above = f.below+g.below, f.inside+g.inside, f.above+g.above
}

// place says where a value fell, given how many of the ranked draws are below it.
func place(below int) (f fell) {
	switch {
	case below < (ranks+1)/10:
		f.below = 1
	case below >= (ranks+1)-(ranks+1)/10:
		f.above = 1
	default:
		f.inside = 1
	}
	return f
}

func TestCalibration(t *testing.T) {
	n := *calibrationCars
	right := calibrate(t, trial{name: "the model", last: len(stageNames) - 1}, n)
	report(t, "the model", right[:])
	for k, s := range right {
		for what, f := range s.by {
			if !holds(f) {
				t.Errorf("%s, by %s: %+v, expected 10, 80 and 10 %%", stageNames[k], measureNames[what], f)
			}
		}
		if k > 0 && s.width > right[k-1].width*(1.02+0.4/math.Sqrt(float64(n))) { // ranges of 199 cars vary
			t.Errorf("%s: on average wider than before", stageNames[k])
		}
	}
}

// TestWrongModelsAreCaught proves that the calibration can go red, for each wrong model
// by what reveals it: luck that parts do not share, evidence counted twice, and records
// of bare metal believed as little as a glance (softReading).
func TestWrongModelsAreCaught(t *testing.T) {
	n := *calibrationCars
	for _, one := range []struct {
		trial
		by int
	}{{trial{name: "parts on their own", alone: true, last: 0}, byHoles}, {trial{name: "evidence counted twice", twice: true, last: 2}, bySteps},
		{trial{name: "records read softly", softly: true, last: 2}, bySteps}} {
		wrong := calibrate(t, one.trial, n)
		report(t, one.name, wrong[:one.last+1])
		if f := wrong[one.last].by[one.by]; holds(f) {
			t.Errorf("%s: %+v at %s looks right", one.name, f, stageNames[one.last])
		}
	}
}

// holds says whether cars fell as they should.
func holds(f fell) bool {
	return within(f.inside, f.cars(), 0.8) && within(f.below, f.cars(), 0.1) && within(f.above, f.cars(), 0.1)
}

// within says whether a count lies within four standard errors of a binomial share: of
// the 45 counts of one run none should be outside by chance.
func within(count, n int, p float64) bool {
	share, se := float64(count)/float64(n), math.Sqrt(p*(1-p)/float64(n))
	return math.Abs(share-p) <= 4*se
}

func report(t *testing.T, name string, all []tally) {
	t.Helper()
	var b strings.Builder
	n := float64(all[0].by[byPrice].cars())
	for k, s := range all {
		fmt.Fprintf(&b, "\n  %-12s", stageNames[k])
		for _, f := range s.by {
			fmt.Fprintf(&b, " below %4.1f inside %4.1f above %4.1f |", 100*float64(f.below)/n, 100*float64(f.inside)/n, 100*float64(f.above)/n)
		}
		fmt.Fprintf(&b, " mean width %8.0f", s.width/n)
	}
	t.Logf("%s, %.0f cars, %% by %s (95 %% intervals: inside ±%.1f, each tail ±%.1f)%s", name, n, strings.Join(measureNames[:], " | "),
		196*math.Sqrt(0.16/n), 196*math.Sqrt(0.09/n), b.String())
}

// calibrate ranks n cars at every stage, on all cores.
func calibrate(t *testing.T, how trial, n int) (all [len(stageNames)]tally) {
	t.Helper()
	var lock sync.Mutex
	var wait sync.WaitGroup
	next := make(chan int)
	for range runtime.GOMAXPROCS(0) {
		sets := settings(t)
		wait.Go(func() {
			for k := range next {
				stages, err := oneCar(sets[k%len(sets)], how, uint64(k))
				lock.Lock()
				if err != nil {
					t.Error(err)
				}
				for s, one := range stages {
					for what, f := range one.by {
						all[s].by[what].add(f)
					}
					all[s].width += one.width
				}
				lock.Unlock()
			}
		})
	}
	for k := range n {
		next <- *calibrationFirst + k
	}
	close(next)
	wait.Wait()
	return all
}
