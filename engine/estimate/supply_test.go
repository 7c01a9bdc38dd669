package estimate

import (
	"math"
	"slices"
	"testing"

	"underpaint/engine/pricing"
)

// supplyRun is a run with the table of a test run as it is, and supplied.
func supplyRun(t testing.TB, s ...pricing.Supply) *Run {
	t.Helper()
	one := testRun(t, nil)
	tables := []*pricing.Table{one.rows[0].table}
	for _, s := range s {
		tables = append(tables, one.rows[0].table.Supplied(s))
	}
	return NewRun(one.model, tables, 1)
}

// TestSupplyDrawsApart: pricing a car with and without the draws of how its parts come
// leaves the other the same to the byte, because these draws have streams of their own.
func TestSupplyDrawsApart(t *testing.T) {
	alone, both := testRun(t, nil), supplyRun(t, pricing.Supply{})
	alone.Add()
	both.Add()
	if !slices.Equal(alone.Totals(0), both.Totals(0)) {
		t.Error("drawing how parts come changed the cars without it")
	}
	if slices.Equal(both.Totals(0), both.Totals(1)) {
		t.Error("drawing how parts come changed nothing")
	}
}

// TestLessThereCostsMore: what is missing costs money, so the mean rises from a car that is
// all there to one in pieces, and one of which nobody is sure lies between.
func TestLessThereCostsMore(t *testing.T) {
	r := supplyRun(t, pricing.Supply{AllThere: "all_there"}, pricing.Supply{AllThere: "some_parts_off"}, pricing.Supply{AllThere: "in_pieces"}, pricing.Supply{AllThere: "not_sure"}, pricing.Supply{})
	for range 4 {
		r.Add()
	}
	mean := func(k int) (v float64) {
		for _, x := range r.Totals(k) {
			v += float64(x) / float64(len(r.Totals(k)))
		}
		return v
	}
	if !(mean(0) < mean(1) && mean(1) < mean(2) && mean(2) < mean(3)) {
		t.Errorf("means %.0f without, %.0f all there, %.0f some off, %.0f in pieces", mean(0), mean(1), mean(2), mean(3))
	}
	// Law of total expectation over the chances of data/parts.json: .6, .3 and .1.
	if is, want := mean(4), .6*mean(1)+.3*mean(2)+.1*mean(3); math.Abs(is/want-1) > .002 {
		t.Errorf("not sure: mean %.0f, expected %.0f", is, want)
	}
	if !slices.Equal(r.Totals(4), r.Totals(5)) {
		t.Error("no answer differs from not sure")
	}
}

// TestSupplySettles: a range with these draws settles with at most half as many cars again
// as without.
func TestSupplySettles(t *testing.T) {
	plain, supplied := testRun(t, nil), supplyRun(t, pricing.Supply{})
	supplied.rows = supplied.rows[1:]
	if !plain.Settle(StandardAccuracy) || !supplied.Settle(StandardAccuracy) {
		t.Fatal("not settled")
	}
	if supplied.Cars() > plain.Cars()*3/2 {
		t.Errorf("%d cars, %d without", supplied.Cars(), plain.Cars())
	}
	t.Logf("%d cars, %d without", supplied.Cars(), plain.Cars())
}

// BenchmarkSupplied measures a car with all replicates whose parts are drawn as they come,
// BenchmarkNotSupplied one whose parts are not.
func BenchmarkSupplied(b *testing.B) {
	r := supplyRun(b, pricing.Supply{})
	r.rows = r.rows[1:]
	benchmarkCars(b, r)
}

func BenchmarkNotSupplied(b *testing.B) {
	r := supplyRun(b)
	benchmarkCars(b, r)
}
