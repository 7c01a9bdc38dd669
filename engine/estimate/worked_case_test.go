package estimate

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/damage"
	"underpaint/engine/pricing"
	"underpaint/engine/rates"
	"underpaint/tests/worked"
)

// readWorked reads a case of the independent calculation and checks that it has hours. The
// tests of package damage check its chances.
func readWorked(t *testing.T, name string) worked.Case {
	t.Helper()
	w, err := worked.Read("../damage/testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	if w.Expect.Hours.All.Ends[0] == 0 || w.Expect.Hours.Metal.SE[3] == 0 {
		t.Fatal("the case has no hours")
	}
	return w
}

// workedBlocks is the number of blocks of cars in the run of a case.
const workedBlocks = 16

// runWorked simulates cars of the case, with the hours of the data files times pace.
func runWorked(t *testing.T, w worked.Case, pace float64) *Run {
	t.Helper()
	must := func(err error) {
		if err != nil {
			t.Helper()
			t.Fatal(err)
		}
	}
	b, err := car.Load(w.Body)
	must(err)
	common, err := car.LoadCommon()
	must(err)
	r, err := rates.Decode(rates.Sample())
	must(err)
	allAt(pace)(r)
	table, err := pricing.NewTable(b, common, r, w.Standard, "whole_body")
	must(err)
	// The calculation never fits a whole panel because its pieces would cost more, so
	// old metal is kept here too.
	keeps := pricing.Undecided()
	keeps.KeepOldMetal = true
	table, err = table.With(keeps)
	must(err)
	known, err := w.Known(b)
	must(err)
	model, err := damage.New(known, damage.StandardGrids)
	must(err)
	run := NewRun(model, []*pricing.Table{table}, 1)
	for range workedBlocks {
		run.Add()
	}
	return run
}

// offHours lists the quantiles of a run's hours, given in thousandths, that differ from
// those of the case by more than four standard errors.
func offHours(t *testing.T, h worked.Hours, what string, hours []int64) (faults []string) {
	t.Helper()
	for n, p := range []float64{.1, .5, .8, .9} {
		var of [Randomisations]float64
		for j := range of {
			var part []int64
			for at := j * Replicates; at < len(hours); at += Randomisations * Replicates {
				part = append(part, hours[at:at+Replicates]...)
			}
			slices.Sort(part)
			of[j] = chance.QuantileMinor(part, p) / 1000
		}
		all := slices.Clone(hours)
		slices.Sort(all)
		got, se := chance.QuantileMinor(all, p)/1000, math.Hypot(standardError(of[:]), h.SE[n])
		line := fmt.Sprintf("%s, P%.0f: %.1f, independently %.1f, standard error of both %.1f", what, 100*p, got, h.Ends[n], se)
		if t.Log(line); math.Abs(got-h.Ends[n]) > 4*se {
			faults = append(faults, line)
		}
	}
	return faults
}
