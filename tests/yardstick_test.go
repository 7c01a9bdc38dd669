//go:build !js

package tests

import (
	"flag"
	"fmt"
	"math"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/damage"
	"underpaint/engine/estimate"
	"underpaint/engine/evidence"
	"underpaint/engine/exposure"
	"underpaint/engine/pricing"
	"underpaint/engine/rates"
	"underpaint/tests/exact"
)

// yardstickCars is the number of cars that the engine simulates for each comparison.
const yardstickCars = 1 << 13

// measured is one body, set up for the yardstick and for the engine.
type measured struct {
	body  *car.Body
	known damage.Known
	rates *rates.Rates
	table *pricing.Table
}

// measure makes a case of a body. Where the car lived is uncertain, so that the history
// has levels. With bare, nothing couples the work on one item to that on another.
func measure(t testing.TB, id string, bare bool) measured {
	t.Helper()
	must := func(err error) {
		if err != nil {
			t.Helper()
			t.Fatal(err)
		}
	}
	r, err := rates.Decode(rates.Sample())
	must(err)
	common, err := car.LoadCommon()
	must(err)
	body, err := car.Load(id)
	must(err)
	if bare {
		body, r = exact.Bare(body), exact.Steady(r)
	}
	lived := func(place string) []exposure.Period {
		return []exposure.Period{{Climate: place, Years: 12, Kept: "driven_all_year"}, {Climate: "mild", Years: 40, Kept: "garage"}}
	}
	histories, err := exposure.Exact([]exposure.Alternative{{Chance: 1, Periods: lived("salt")}}, exposure.Asked{Year: 2026, WorkedIn: 1998})
	must(err)
	table, err := pricing.NewTable(body, common, r, "show", "whole_body")
	must(err)
	return measured{body, damage.Known{Body: body, Histories: histories, EarlierWork: "not_known_of"}, r, table}
}

// surveyed adds a survey of every second item of a simulated car, and its lead joints.
// The answers say that the car was restored and recently painted.
func (m measured) surveyed(t testing.TB) measured {
	t.Helper()
	m.known.EarlierWork, m.known.Cover.Answer = "stripped_and_restored", "yes"
	prior, err := damage.New(m.known, damage.CoarseGrids)
	if err != nil {
		t.Fatal(err)
	}
	stream, c := chance.NewStream(calibrationSeed, 77), prior.NewCar()
	prior.Draw(&stream, c)
	entries := evidence.ImagineSurvey(m.body, c, false, &stream)
	m.known.Seen, m.known.LeadFailed = make([]*damage.Likelihood, len(entries)), counted(c)
	for i := 0; i < len(entries); i += 2 {
		if m.known.Seen[i], err = evidence.Reading(m.body.PartOf(i), entries[i]); err != nil {
			t.Fatal(err)
		}
	}
	return m
}

// sampled is the engine's range for a case.
func (m measured) sampled(t testing.TB, known damage.Known, table *pricing.Table) estimate.Range {
	t.Helper()
	model, err := damage.New(known, damage.StandardGrids)
	if err != nil {
		t.Fatal(err)
	}
	run := estimate.NewRun(model, []*pricing.Table{table}, 20)
	for run.Cars() < yardstickCars {
		run.Add()
	}
	return run.Range(0)
}

// solved is the yardstick's distribution for it.
func (m measured) solved(t testing.TB, step float64) *exact.Series {
	t.Helper()
	figures, err := exact.ReadFigures("..")
	if err != nil {
		t.Fatal(err)
	}
	s, err := (&exact.Case{Figures: figures, Known: m.known, Rates: m.rates, Table: m.table, Step: step, Reach: 5}).Solve()
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// yardstickStep is the step of the yardstick's grids on the log of the depth.
const yardstickStep = 0.3

// yardstickBodies: each takes about twenty seconds of one core.
var yardstickBodies = flag.Int("yardstick-bodies", 1, "bodies held to the exact method, of six; make yardstick takes all")

// TestYardstick compares the sampled ends with the exact ones, before anything was seen
// and after a survey of every second item.
func TestYardstick(t *testing.T) {
	for _, id := range car.BodyIDs[:*yardstickBodies] {
		t.Run(id+"/told", func(t *testing.T) { m := measure(t, id, true); m.hold(t, m.solved(t, yardstickStep)) })
		t.Run(id+"/surveyed", func(t *testing.T) {
			m := measure(t, id, true).surveyed(t)
			m.hold(t, m.solved(t, yardstickStep))
		})
	}
}

// hold compares and reports. Ends agree to four of the standard errors that the engine
// states (of 24 none should fail by chance). All three points agree to four times the
// error that plain sampling has in the probability at that price; better sampling only
// makes this easier.
func (m measured) hold(t *testing.T, s *exact.Series) {
	t.Helper()
	r := m.sampled(t, m.known, m.table)
	for _, line := range off(s, r) {
		t.Error(line)
	}
	t.Logf("exact %.0f %.0f %.0f, sampled %.0f ± %.0f, %.0f, %.0f ± %.0f; exact mean %.0f, deviation %.0f",
		s.Quantile(.1), s.Quantile(.5), s.Quantile(.9), r.Low, r.SELow, r.Half, r.High, r.SEHigh, s.Mean, s.SD)
}

// off lists what does not agree.
func off(s *exact.Series, r estimate.Range) (faults []string) {
	for _, q := range []struct{ p, got, se float64 }{{.1, r.Low, r.SELow}, {.5, r.Half, math.Inf(1)}, {.9, r.High, r.SEHigh}} {
		want, at := s.Quantile(q.p), s.CDF(q.got)
		if math.Abs(q.got-want) > 4*q.se || math.Abs(at-q.p) > 4*math.Sqrt(q.p*(1-q.p)/float64(r.Cars)) {
			faults = append(faults, fmt.Sprintf("P%.0f: sampled %.0f ± %.0f, exact %.0f; the chance there is %.4f", 100*q.p, q.got, q.se, want, at))
		}
	}
	return faults
}

// TestYardstickCanFail: the test detects parts that share no luck, and two hours in a
// hundred too many in all trades.
func TestYardstickCanFail(t *testing.T) {
	m := measure(t, "two_door_unitary", true)
	s := m.solved(t, yardstickStep)
	alone := m.known
	alone.Independent = true
	if off(s, m.sampled(t, alone, m.table)) == nil {
		t.Error("parts on their own luck pass")
	}
	slow := *m.rates
	for trade := range slow.Labour.Trades {
		slow.Labour.Trades[trade].Pace *= 1.02
	}
	common, err := car.LoadCommon()
	if err != nil {
		t.Fatal(err)
	}
	table, err := pricing.NewTable(m.body, common, &slow, "show", "whole_body")
	if err != nil {
		t.Fatal(err)
	}
	if off(s, m.sampled(t, m.known, table)) == nil {
		t.Error("two hours in a hundred too many pass")
	}
}
