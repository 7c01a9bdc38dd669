//go:build !js

package tests

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/damage"
	"underpaint/engine/estimate"
	"underpaint/engine/evidence"
	"underpaint/engine/pricing"
	"underpaint/engine/rates"
	"underpaint/tests/figures"
	"underpaint/tests/plain"
)

// More damage never costs less: the tests record one part of a surveyed car as worse
// and worse, and follow the price of the whole car.

// moreBases are complete surveys with all boxes opened: the condition of each item. The
// mixed one is that of a simulated car on which nobody ever worked. Conditions
// scattered at random would not do, because they look like a car restored in part, and
// there one more bad record may well speak in favour of the others. (The model itself
// says so; a record never speaks in favour of its own part.)
var moreBases = []struct {
	name string
	of   func(t *testing.T, m *more) []int8
}{
	{"all sound", func(_ *testing.T, m *more) []int8 { return make([]int8, len(m.body.Items)) }},
	{"all light pitting", func(_ *testing.T, m *more) []int8 { return slices.Repeat([]int8{1}, len(m.body.Items)) }},
	{"mixed", func(t *testing.T, m *more) []int8 {
		fig, err := figures.ReadDamage("..")
		must(t, err)
		cars, err := plain.New(plain.Told{Body: m.body, Histories: m.known.Histories, NoRepairs: true}, fig, rand.New(rand.NewPCG(1, 4)))
		must(t, err)
		one := cars.NewCar()
		cars.Draw(one)
		return one.Condition
	}},
}

// believedAtLeast is the least probability of the recorded condition, or one step
// either way, for a part that was seen.
const believedAtLeast = .97

// more is one body at the sample shop.
type more struct {
	body  *car.Body
	table *pricing.Table
	known damage.Known
	last  *damage.Model
}

func newMore(t *testing.T, id string) *more {
	t.Helper()
	r, err := rates.Decode(rates.Sample())
	must(t, err)
	common, err := car.LoadCommon()
	must(t, err)
	b, err := car.Load(id)
	must(t, err)
	table, err := pricing.NewTable(b, common, r, "show", "whole_body")
	must(t, err)
	w := weighedCase{place: "mild"}
	return &more{body: b, table: table, known: damage.Known{Body: b, Histories: w.levels(t), LeadFailed: make([]int, len(b.Items))}}
}

// read is a record of one item that was seen.
func (m *more) read(t *testing.T, i, condition int) *damage.Likelihood {
	t.Helper()
	p := m.body.PartOf(i)
	l, err := evidence.Reading(p, evidence.SurveyEntry{Condition: car.ConditionIDs[condition], Opened: !p.SeenWhenStripped})
	must(t, err)
	return l
}

// model conditions on a survey with one record replaced.
func (m *more) model(t *testing.T, base []*damage.Likelihood, i, condition int) *damage.Model {
	t.Helper()
	m.known.Seen = slices.Clone(base)
	m.known.Seen[i] = m.read(t, i, condition)
	out, err := damage.NewAfter(m.known, damage.StandardGrids, m.last)
	must(t, err)
	m.last = out
	return out
}

// medians returns the median price of each randomisation: runs with one seed differ
// only by what was recorded.
func (m *more) medians(model *damage.Model, seed uint64, blocks int) (out [estimate.Randomisations]float64) {
	run := estimate.NewRun(model, []*pricing.Table{m.table}, seed)
	for range blocks {
		run.Add()
	}
	var part []int64
	for j := range out {
		part = part[:0]
		for at := j * estimate.Replicates; at < len(run.Totals(0)); at += estimate.Randomisations * estimate.Replicates {
			part = append(part, run.Totals(0)[at:at+estimate.Replicates]...)
		}
		slices.Sort(part)
		out[j] = chance.QuantileMinor(part, .5)
	}
	return out
}

// fall is the amount by which a price falls, with its standard error; negative if it
// rises.
func fall(from, to [estimate.Randomisations]float64) (by, se float64) {
	n := float64(len(from))
	for j := range from {
		by += (from[j] - to[j]) / n
	}
	for j := range from {
		d := from[j] - to[j] - by
		se += d * d / (n - 1) / n
	}
	return by, math.Sqrt(se)
}

// sweep records each of some items as worse and worse, and lists where the price falls
// and where the model does not believe a record.
func (m *more) sweep(t *testing.T, name string, surveyed []int8, items []int) (falls, doubts []string) {
	t.Helper()
	base := make([]*damage.Likelihood, len(m.body.Items))
	for i := range base {
		base[i] = m.read(t, i, int(surveyed[i]))
	}
	for _, i := range items {
		var before [estimate.Randomisations]float64
		var milder *damage.Model
		for k := range car.Conditions {
			model := m.model(t, base, i, k)
			at, near := model.ChancesOf(i).Condition, 0.0
			for c := max(0, k-1); c <= min(k+1, car.Conditions-1); c++ {
				near += at[c]
			}
			where := fmt.Sprintf("%s, %s, %s recorded %s", m.body.ID, name, m.body.Items[i].ID, car.ConditionIDs[k])
			if near < believedAtLeast {
				doubts = append(doubts, fmt.Sprintf("%s: believed with %.4f", where, near))
			}
			now := m.medians(model, 8, 1)
			if by, se := fall(before, now); k > 0 && by > 3*se+1 {
				// Of thousands of falls some are chance, so a fall counts only if other
				// cars confirm it.
				if by, se = fall(m.medians(milder, 9, 8), m.medians(model, 9, 8)); by > 3*se+1 {
					falls = append(falls, fmt.Sprintf("%s: the median falls by %.0f ± %.0f of %.0f", where, by, se, now[0]))
				}
			}
			before, milder = now, model
		}
	}
	return falls, doubts
}

// TestMoreDamageNeverCostsLess checks a few parts of one body, or with -slow every part
// of every body.
func TestMoreDamageNeverCostsLess(t *testing.T) {
	bodies, each := []string{"two_door_unitary"}, 11
	if *slow {
		bodies, each = car.BodyIDs[:], 1
	} else {
		t.Log("not run without -slow: five bodies, and ten parts of eleven")
	}
	for _, id := range bodies {
		m := newMore(t, id)
		var items []int
		for i := 0; i < len(m.body.Items); i += each {
			items = append(items, i)
		}
		for _, base := range moreBases {
			falls, doubts := m.sweep(t, base.name, base.of(t, m), items)
			for _, f := range append(falls, doubts...) {
				t.Error(f)
			}
			if *slow {
				t.Logf("%s, %s: %d records, %d falls, %d not believed", id, base.name, len(items)*car.Conditions, len(falls), len(doubts))
			}
		}
	}
}

// TestMoreDamageCanFail: in reverse, the price does fall; and the model does not
// believe a reading as weak as that of a closed box from outside.
func TestMoreDamageCanFail(t *testing.T) {
	m := newMore(t, "two_door_unitary")
	i := itemsNamed(t, m.body, "outer_sill.left")[0]
	base := make([]*damage.Likelihood, len(m.body.Items))
	for n := range base {
		base[n] = m.read(t, n, 0)
	}
	worse, better := m.medians(m.model(t, base, i, 5), 8, 1), m.medians(m.model(t, base, i, 0), 8, 1)
	if by, se := fall(worse, better); by <= 3*se+1 {
		t.Errorf("from gone to sound the median falls by %.0f ± %.0f only", by, se)
	}
	for n := range base {
		base[n] = m.read(t, n, 5)
	}
	var err error
	base[i], err = evidence.Reading(&car.Part{}, evidence.SurveyEntry{Condition: car.ConditionIDs[0]}) // of a box that stayed shut
	must(t, err)
	m.known.Seen = base
	model, err := damage.New(m.known, damage.StandardGrids)
	must(t, err)
	if c := model.ChancesOf(i).Condition; c[0]+c[1] >= believedAtLeast {
		t.Error("a weak record among bad ones is believed")
	}
}
