//go:build !js

package tests

import (
	"flag"
	"math"
	"slices"
	"testing"
	"time"

	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/chance"
	"underpaint/engine/damage"
	"underpaint/engine/estimate"
	"underpaint/engine/evidence"
	"underpaint/engine/exposure"
	"underpaint/engine/pricing"
	"underpaint/engine/rates"
)

// How many simulated cars a range takes, compared with cars drawn plainly: one stream
// of random numbers per car, and its work simulated once.

var drawsRuns = flag.Int("draws-runs", 0, "runs for each body and stage, on all six bodies; 0 = a few runs on two of them")

// drawsCars is how many cars each run has: enough for a settled range.
const drawsCars = 4 * estimate.Block

// drawsStages are what is known. The walk-around includes checks of door gaps on a
// whole side; the survey leaves closed boxes closed.
var drawsStages = [...]string{"told", "walk-round", "survey"}

var drawsEnds = [...]float64{.1, .5, .9}

// drawn is one body at one stage.
type drawn struct {
	model *damage.Model
	table *pricing.Table
}

func drawsOf(t *testing.T, body string) (out [len(drawsStages)]drawn) {
	t.Helper()
	r, err := rates.Decode(rates.Sample())
	must(t, err)
	common, err := car.LoadCommon()
	must(t, err)
	b, err := car.Load(body)
	must(t, err)
	histories, err := exposure.Exact([]exposure.Alternative{
		{Chance: .6, Periods: []exposure.Period{{Climate: "salt", Years: 9, Kept: "driven_all_year"}, {Climate: "dry", Years: 47, Kept: "garage"}}},
		{Chance: .4, Periods: []exposure.Period{{Climate: "damp", Years: 20, Kept: "driven_all_year"}, {Climate: "dry", Years: 36, Kept: "garage"}}}}, exposure.Asked{Year: 2026})
	must(t, err)
	table, err := pricing.NewTable(b, common, r, "show", "whole_body")
	must(t, err)
	known := damage.Known{Body: b, Histories: histories, EarlierWork: "not_sure"}
	stream := chance.NewStream(2026, 1)
	var truth *damage.Car
	for k := range out {
		switch k {
		case 1:
			truth = out[0].model.NewCar()
			out[0].model.Draw(&stream, truth)
			known.Seen = make([]*damage.Likelihood, len(b.Items))
			covered := out[0].model.DrawCovered(truth, stream.Uniform())
			must(t, carfile.AddLooks(&known, b, evidence.ImagineWalkRound(b, truth, covered, &stream)))
			if len(known.Worst) == 0 {
				t.Fatalf("%s: no side test in the walk-round", body)
			}
		case 2:
			entries := evidence.ImagineSurvey(b, truth, false, &stream)
			must(t, carfile.AddReadings(&known, b, entries, func(int) bool { return true }))
			known.LeadFailed = counted(truth)
		}
		model, err := damage.New(known, calibrationGrids)
		must(t, err)
		out[k] = drawn{model, table}
	}
	return out
}

func must(t *testing.T, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// plainly prices cars drawn plainly.
func (d drawn) plainly(seed uint64, n int) []int64 {
	c, u, b := d.model.NewCar(), d.table.NewUniforms(), d.table.NewBill()
	out := make([]int64, n)
	for k := range out {
		s := chance.NewStream(seed, uint64(k))
		d.model.Draw(&s, c)
		u.Fill(&s)
		d.table.Price(c, d.model.Histories[c.History].LastClimate, u, b)
		out[k] = int64(b.Total)
	}
	return out
}

// evenly prices the cars of a run; short are the prices without the most expensive
// replicate of each car.
func (d drawn) evenly(seed uint64) (all, short []int64) {
	run := estimate.NewRun(d.model, []*pricing.Table{d.table}, seed)
	for run.Cars() < drawsCars {
		run.Add()
	}
	for turns := range slices.Chunk(run.Totals(0), estimate.Replicates) {
		at := len(all)
		all = append(all, turns...)
		slices.Sort(all[at:])
		short = append(short, all[at:len(all)-1]...)
	}
	return all, short
}

// endsOf holds quantiles over runs: their mean and variance by end.
type endsOf struct{ values [len(drawsEnds)][]float64 }

func (e *endsOf) add(prices []int64) {
	slices.Sort(prices)
	for k, p := range drawsEnds {
		e.values[k] = append(e.values[k], chance.QuantileMinor(prices, p))
	}
}

func (e *endsOf) of(k int) (mean, variance float64) {
	n := float64(len(e.values[k]))
	for _, v := range e.values[k] {
		mean += v / n
	}
	for _, v := range e.values[k] {
		variance += (v - mean) * (v - mean) / (n - 1)
	}
	return mean, variance
}

// TestDrawsToAccuracy: over independent runs, the ends of a range vary so much less
// than those of as many plainly drawn cars that plain drawing would need several times
// as many. Both agree to five standard errors. As a control, the test detects ends that
// leave out the replicate in which the work on each car goes worst.
func TestDrawsToAccuracy(t *testing.T) {
	bodies, runs := []string{"two_door_unitary", "pickup"}, 16
	if *drawsRuns > 0 {
		bodies, runs = []string{"two_door_unitary", "four_door_saloon", "hardtop_on_frame", "convertible_unitary", "pickup", "open_two_seater"}, *drawsRuns
	}
	logs, n, caught := 0.0, 0, 0
	var plainTook, evenTook time.Duration
	for _, body := range bodies {
		for stage, d := range drawsOf(t, body) {
			var plain, even, short endsOf
			for s := range uint64(runs) {
				begun := time.Now()
				prices := d.plainly(1000+s, drawsCars)
				plainTook += time.Since(begun)
				plain.add(prices)
				begun = time.Now()
				all, without := d.evenly(1000 + s)
				evenTook += time.Since(begun)
				even.add(all)
				short.add(without)
			}
			var gain [len(drawsEnds)]float64
			for k, p := range drawsEnds {
				a, va := plain.of(k)
				b, vb := even.of(k)
				se := math.Sqrt((va + vb) / float64(runs))
				if math.Abs(a-b) > 5*se {
					t.Errorf("%s, %s, end %g: %.0f, plainly %.0f, standard error %.0f", body, drawsStages[stage], p, b, a, se)
				}
				gain[k] = va / vb
				logs, n = logs+math.Log(gain[k]), n+1
				if c, vc := short.of(k); math.Abs(c-a) > 5*math.Sqrt((va+vc)/float64(runs)) {
					caught++
				}
			}
			t.Logf("%-20s %-11s as many as %4.1f %4.1f %4.1f plain cars each (ends %v)", body, drawsStages[stage], gain[0], gain[1], gain[2], drawsEnds)
		}
	}
	mean := math.Exp(logs / float64(n))
	t.Logf("mean %.1f, in %.1f times the time of a car; the control was found out at %d of %d ends", mean, evenTook.Seconds()/plainTook.Seconds(), caught, n)
	if mean < 16 {
		t.Errorf("a car of a run is worth only %.1f plain cars", mean)
	}
	if caught == 0 {
		t.Error("runs without the worst replicate of each car pass")
	}
}
