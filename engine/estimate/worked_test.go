package estimate

import (
	"slices"
	"testing"

	"github.com/shopspring/decimal"

	"underpaint/engine/car"
	"underpaint/engine/damage"
	"underpaint/engine/exposure"
	"underpaint/engine/money"
	"underpaint/engine/pricing"
	"underpaint/engine/rates"
)

func testRun(t testing.TB, change func(*rates.Rates)) *Run {
	t.Helper()
	must := func(err error) {
		if err != nil {
			t.Helper()
			t.Fatal(err)
		}
	}
	histories, err := exposure.Exact([]exposure.Alternative{{Chance: 1, Periods: []exposure.Period{
		{Climate: "salt", Years: 9, Kept: "driven_all_year"}, {Climate: "dry", Years: 47, Kept: "garage"}}}}, exposure.Asked{Year: 2026})
	must(err)
	body, err := car.Load("two_door_unitary")
	must(err)
	common, err := car.LoadCommon()
	must(err)
	model, err := damage.New(damage.Known{Body: body, Histories: histories, EarlierWork: "not_known_of"}, damage.StandardGrids)
	must(err)
	r, err := rates.Decode(rates.Sample())
	must(err)
	r.OverTime = nil // most tests look at prices as published; rising puts it back
	if change != nil {
		change(r)
	}
	table, err := pricing.NewTable(body, common, r, "show", "whole_body")
	must(err)
	return NewRun(model, []*pricing.Table{table}, 1)
}

// rising lets the prices rise as at the sample's shop.
func rising(r *rates.Rates) {
	sample, err := rates.Decode(rates.Sample())
	if err != nil {
		panic(err)
	}
	r.OverTime = sample.OverTime
}

func allAt(pace float64) func(*rates.Rates) {
	return func(r *rates.Rates) {
		for t := range r.Labour.Trades {
			r.Labour.Trades[t].Pace = pace
		}
	}
}

// TestWorkedHours compares the hours with an independent calculation of the same model,
// written by someone else in another language, on 6,000 cars of its own. The three cases
// have answers only, checks of both sides at concours standard, and part of a survey. The
// tolerance is four standard errors of both together; the calculation states its own.
func TestWorkedHours(t *testing.T) {
	for _, name := range []string{"worked_told.json", "worked_sides.json", "worked_survey.json"} {
		t.Run(name, func(t *testing.T) {
			w := readWorked(t, name)
			run := runWorked(t, w, 1)
			for _, fault := range append(offHours(t, w.Expect.Hours.All, "all hours", run.rows[0].hours),
				offHours(t, w.Expect.Hours.Metal, "metalwork after the strip", run.rows[0].metal)...) {
				t.Error(fault)
			}
		})
	}
}

// TestWorkedHoursCanFail: the comparison catches hours that are 3% too high.
func TestWorkedHoursCanFail(t *testing.T) {
	w := readWorked(t, "worked_told.json")
	if offHours(t, w.Expect.Hours.All, "all hours", runWorked(t, w, 1.03).rows[0].hours) == nil {
		t.Error("three hours in a hundred too many pass")
	}
}

func twice(t *testing.T, d money.Decimal) money.Decimal {
	t.Helper()
	n := decimal.RequireFromString(d.String())
	out, err := money.Parse(n.Add(n).String())
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// TestDearerRatesNeverLower raises one rate at a time on the same simulated cars.
func TestDearerRatesNeverLower(t *testing.T) {
	plain := testRun(t, nil)
	plain.Add()
	for trade := car.Metal; trade < car.Trades; trade++ {
		dear := testRun(t, func(r *rates.Rates) {
			p := &r.Labour.Trades[trade].Rate
			p.Published = twice(t, p.Published)
			rate, err := r.Currency.NewRate(p.Published)
			if err != nil {
				t.Fatal(err)
			}
			p.Rate = rate
		})
		dear.Add()
		for n := range plain.Totals(0) {
			if dear.Totals(0)[n] < plain.Totals(0)[n] {
				t.Fatalf("%s: car %d became cheaper at twice the rate", car.TradeIDs[trade], n)
			}
		}
		if slices.Equal(dear.Totals(0), plain.Totals(0)) {
			t.Errorf("%s: twice the rate changed nothing", car.TradeIDs[trade])
		}
	}
}

// TestSeedRepeats: the same seed gives the same prices, another seed gives others.
func TestSeedRepeats(t *testing.T) {
	a, b := testRun(t, nil), testRun(t, nil)
	c := NewRun(a.model, []*pricing.Table{a.rows[0].table}, 2)
	for _, r := range []*Run{a, b, c} {
		r.Add()
	}
	if !slices.Equal(a.Totals(0), b.Totals(0)) {
		t.Error("one seed gave two results")
	}
	if slices.Equal(a.Totals(0), c.Totals(0)) {
		t.Error("two seeds gave one result")
	}
}

// BenchmarkImaginedCar measures a car with one replicate, BenchmarkAllReplicates a car
// with all of them.
func BenchmarkImaginedCar(b *testing.B) {
	run := testRun(b, nil)
	run.Remember(true)
	benchmarkCars(b, run)
}

func BenchmarkAllReplicates(b *testing.B) { benchmarkCars(b, testRun(b, nil)) }

// BenchmarkRising is BenchmarkAllReplicates with prices that rise while the job runs.
func BenchmarkRising(b *testing.B) { benchmarkCars(b, testRun(b, rising)) }

func benchmarkCars(b *testing.B, run *Run) {
	one := &run.rows[0]
	b.ReportAllocs()
	n := 0
	for b.Loop() {
		z := run.sampler.draw(n, run.car)
		run.sampler.priceReplicates(n, run.car, z, run.replicates, one)
		n = (n + 1) % Block
	}
}
