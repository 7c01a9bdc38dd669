//go:build !js

package tests

import (
	"flag"
	"fmt"
	"math"
	"runtime"
	"slices"
	"strings"
	"sync"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/damage"
	"underpaint/engine/evidence"
	"underpaint/engine/exposure"
	"underpaint/engine/rates"
	"underpaint/engine/work"
)

// Calibration by simulation, in the spirit of Talts, Betancourt, Simpson, Vehtari
// and Gelman, "Validating Bayesian inference algorithms with simulation-based
// calibration", arXiv:1804.06788, 2018: cars are drawn from the model, evidence is
// imagined on each stage after stage, and the rank of the car's own price among
// draws that know the evidence must be uniform. So the 80 % range holds the truth
// in 80 of 100 cars at every stage, and each tail in 10.

var calibrationCars = flag.Int("calibration-cars", 120, "imagined cars per stage; 2000 and more for the whole calibration")

// calibrationFirst takes other cars than the first ones.
var calibrationFirst = flag.Int("calibration-first", 0, "number of the first imagined car")

// ranks is the number of draws each price is ranked among: ranks 0 to 199.
const ranks = 199

// stageNames are what is known at each stage, one on top of the other.
var stageNames = [...]string{"told", "walk-round", "survey", "strip hours", "opened up"}

// trial is one way of inferring; the right one and the wrong ones.
type trial struct {
	name     string
	onItsOwn bool // every part on its own luck
	twice    bool // all evidence counted twice
	last     int  // the last stage that is worked out
}

// tally counts where cars fell at one stage: by price, and by rust, the sum of the
// steps of all items on the scale of conditions. Widths are those of the price.
type tally struct {
	price, rust fell
	width       float64
}

type fell struct{ below, inside, above int }

func (f fell) cars() int { return f.below + f.inside + f.above }

func (f *fell) add(g fell) {
	f.below, f.inside, f.above = f.below+g.below, f.inside+g.inside, f.above+g.above
}

// place says where a value fell that so many of the ranked draws lie below.
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
		for what, f := range map[string]fell{"price": s.price, "rust": s.rust} {
			if !within(f.inside, f.cars(), 0.8) || !within(f.below, f.cars(), 0.1) || !within(f.above, f.cars(), 0.1) {
				t.Errorf("%s, %s: %+v, expected 10, 80 and 10 %%", stageNames[k], what, f)
			}
		}
		if k > 0 && s.width > right[k-1].width*1.02 {
			t.Errorf("%s: on average wider than before", stageNames[k])
		}
	}
}

// TestWrongModelsAreCaught proves that the calibration can go red.
func TestWrongModelsAreCaught(t *testing.T) {
	n := *calibrationCars
	for _, one := range []trial{{name: "parts on their own", onItsOwn: true, last: 0}, {name: "evidence counted twice", twice: true, last: 2}} {
		wrong := calibrate(t, one, n)
		report(t, one.name, wrong[:one.last+1])
		if f := wrong[one.last].rust; within(f.inside, f.cars(), 0.8) {
			t.Errorf("%s: %d of %d inside at %s looks right", one.name, f.inside, f.cars(), stageNames[one.last])
		}
	}
}

// within says whether a count lies within four standard errors of a binomial
// share: of the thirty counts of one run none should fall outside by chance.
func within(count, n int, p float64) bool {
	share, se := float64(count)/float64(n), math.Sqrt(p*(1-p)/float64(n))
	return math.Abs(share-p) <= 4*se
}

func report(t *testing.T, name string, all []tally) {
	t.Helper()
	var b strings.Builder
	n := float64(all[0].price.cars())
	for k, s := range all {
		fmt.Fprintf(&b, "\n  %-12s", stageNames[k])
		for _, f := range []fell{s.price, s.rust} {
			fmt.Fprintf(&b, " below %4.1f inside %4.1f above %4.1f |", 100*float64(f.below)/n, 100*float64(f.inside)/n, 100*float64(f.above)/n)
		}
		fmt.Fprintf(&b, " mean width %8.0f", s.width/n)
	}
	t.Logf("%s, %.0f cars, %% by price | by rust | (95 %% intervals: inside ±%.1f, each tail ±%.1f)%s", name, n,
		196*math.Sqrt(0.16/n), 196*math.Sqrt(0.09/n), b.String())
}

// setting is one sort of invented car that takes part.
type setting struct {
	body   *car.Body
	table  *work.Table
	levels []exposure.Level
	prior  *damage.Model
}

func settings(t *testing.T) (out []setting) {
	r, err := rates.Decode(rates.Sample())
	if err != nil {
		t.Fatal(err)
	}
	common, err := car.LoadCommon()
	if err != nil {
		t.Fatal(err)
	}
	for _, one := range []struct{ body, place string }{{"two_door_unitary", "mild"}, {"open_two_seater", "salt"}, {"pickup", "dry"}} {
		b, err := car.Load(one.body)
		if err != nil {
			t.Fatal(err)
		}
		levels, err := exposure.Exact([]exposure.Alternative{
			{Chance: 1, Periods: []exposure.Period{{Climate: one.place, Years: 15, Kept: "driven_all_year"}, {Climate: one.place, Years: 40, Kept: "garage"}}}}, exposure.Asked{Year: 2026})
		if err != nil {
			t.Fatal(err)
		}
		table, err := work.NewTable(b, common, r, "show", "whole_body")
		if err != nil {
			t.Fatal(err)
		}
		prior, err := damage.New(damage.Known{Body: b, Levels: levels}, calibrationGrids)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, setting{b, table, levels, prior})
	}
	return out
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
					all[s].price.add(one.price)
					all[s].rust.add(one.rust)
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

// calibrationGrids make cars and inference alike; that finer ones say the same is
// the business of the convergence test of package damage.
var calibrationGrids = damage.CoarseGrids

const calibrationSeed = 0xCA11B

// oneCar draws a car and its price, imagines the evidence of every stage and
// ranks the price at each.
func oneCar(s setting, how trial, k uint64) (out [len(stageNames)]tally, err error) {
	stream := chance.NewStream(calibrationSeed, k)
	truth := s.prior.NewCar()
	s.prior.Draw(&stream, truth)
	u, bill := s.table.NewUniforms(), s.table.NewBill()
	u.Fill(&stream)
	s.table.Do(truth, s.prior.Levels[truth.Level].LastClimate, u, bill)
	price := int64(bill.Total)

	known := damage.Known{Body: s.body, Levels: s.levels, Independent: how.onItsOwn, EarlierWork: answer(truth.Repair, stream.Uniform())}
	table, shut := s.table, known
	var odds *damage.Model
	for stage := 0; stage <= how.last; stage++ {
		switch stage {
		case 1:
			seen, err := evidence.FromLooks(s.body, evidence.ImagineWalkRound(s.body, truth, false, &stream))
			if err != nil {
				return out, err
			}
			known.Seen, known.Worst = how.items(seen.Items), how.worst(seen.Worst)
			shut = known
		case 2:
			entries := evidence.ImagineSurvey(s.body, truth, false, &stream)
			known.Seen = how.read(s.body, known.Seen, entries, func(int) bool { return true })
			shut.Seen = how.read(s.body, shut.Seen, entries, func(i int) bool { return s.body.PartOf(i).SeenWhenStripped })
			known.LeadFailed = counted(truth)
		case 3:
			d := work.Undecided()
			for trade, h := range bill.StripHours {
				if h > 0 {
					d.StripHours[trade] = float64(h) / 1000
				}
			}
			if table, err = s.table.With(d); err != nil {
				return out, err
			}
			// What the stage is charged follows from its hours alone from here on.
			again := table.NewBill()
			table.Do(truth, s.prior.Levels[truth.Level].LastClimate, u, again)
			price += int64(again.Strip - bill.Strip)
		case 4:
			entries := evidence.ImagineSurvey(s.body, truth, true, &stream)
			known.Seen = how.read(s.body, shut.Seen, entries, func(i int) bool { return !s.body.PartOf(i).SeenWhenStripped })
		}
		if stage != 3 { // hours say nothing about rust
			if odds, err = damage.New(known, calibrationGrids); err != nil {
				return out, err
			}
		}
		out[stage] = rank(odds, table, price, steps(truth), k*31+uint64(stage))
	}
	return out, nil
}

// rank draws prices that know the evidence and says where the true one falls.
func rank(m *damage.Model, table *work.Table, price int64, rust int, seed uint64) tally {
	c, u, bill := m.NewCar(), table.NewUniforms(), table.NewBill()
	stream := chance.NewStream(calibrationSeed+1, seed)
	prices := make([]int64, ranks)
	cheaper, milder, alike := 0, 0, 0
	for n := range prices {
		m.Draw(&stream, c)
		u.Fill(&stream)
		table.Do(c, m.Levels[c.Level].LastClimate, u, bill)
		if prices[n] = int64(bill.Total); prices[n] < price {
			cheaper++
		}
		switch s := steps(c); {
		case s < rust:
			milder++
		case s == rust:
			alike++
		}
	}
	// Ties are broken at random, or the rank would not be uniform.
	milder += int(stream.Uniform() * float64(alike+1))
	return tally{price: place(cheaper), rust: place(milder), width: width(prices)}
}

// steps is how far a car has gone: the sum of its items' steps on the scale.
func steps(c *damage.Car) (sum int) {
	for _, k := range c.Condition {
		sum += int(k)
	}
	return sum
}

// width is the 80 % range of drawn prices.
func width(prices []int64) float64 {
	slices.Sort(prices)
	return chance.QuantileMinor(prices, 0.9) - chance.QuantileMinor(prices, 0.1)
}

// answer draws what the customer says of earlier work; the chances are those of
// the model (untouched, patched over the years, restored before), by answer.
func answer(repair int, u float64) string {
	said := map[string][damage.RepairStates]float64{"not_known_of": {.80, .35, .10}, "patched_here_and_there": {.08, .50, .18},
		"stripped_and_restored": {.02, .05, .60}, "not_sure": {.10, .10, .12}}
	for _, id := range damage.Answers {
		if u < said[id][repair] {
			return id
		}
		u -= said[id][repair]
	}
	return damage.Answers[len(damage.Answers)-1]
}

// counted are the failed lead joints, which the bare metal shows exactly.
func counted(c *damage.Car) (out []int) {
	for _, n := range c.LeadFailed {
		out = append(out, int(n))
	}
	return out
}

// items, worst and read are the evidence as a trial takes it.
func (how trial) items(seen []*damage.Likelihood) []*damage.Likelihood {
	if how.twice {
		for i, l := range seen {
			seen[i] = evidence.Joined(l, l)
		}
	}
	return seen
}

func (how trial) worst(list []damage.Worst) []damage.Worst {
	if how.twice {
		for n := range list {
			for k, v := range list[n].Likely {
				list[n].Likely[k] = v * v
			}
		}
	}
	return list
}

func (how trial) read(b *car.Body, before []*damage.Likelihood, entries []evidence.SurveyEntry, only func(i int) bool) []*damage.Likelihood {
	out := slices.Clone(before)
	for i := range out {
		if !only(i) {
			continue
		}
		read, err := evidence.Reading(b.PartOf(i), entries[i])
		if err != nil {
			panic(err)
		}
		if how.twice {
			read = evidence.Joined(read, read)
		}
		out[i] = evidence.Joined(out[i], read)
	}
	return out
}
