//go:build !js

package tests

import (
	"slices"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/chance"
	"underpaint/engine/damage"
	"underpaint/engine/evidence"
	"underpaint/engine/exposure"
	"underpaint/engine/pricing"
	"underpaint/engine/rates"
	"underpaint/tests/figures"
)

// setting is one kind of invented car that takes part.
type setting struct {
	body      *car.Body
	table     *pricing.Table
	histories []exposure.History
	prior     *damage.Model
	fig       *figures.Damage
}

func settings(t *testing.T) (out []setting) {
	r, err := rates.Decode(rates.Sample())
	must(t, err)
	common, err := car.LoadCommon()
	must(t, err)
	fig, err := figures.ReadDamage("..")
	must(t, err)
	for _, one := range []struct {
		body, place string
		workedIn    int
	}{{"two_door_unitary", "mild", 0}, {"open_two_seater", "salt", 1995}, {"pickup", "dry", 0}} {
		b, err := car.Load(one.body)
		must(t, err)
		histories, err := exposure.Exact([]exposure.Alternative{
			{Chance: 1, Periods: []exposure.Period{{Climate: one.place, Years: 15, Kept: "driven_all_year"}, {Climate: one.place, Years: 40, Kept: "garage"}}}},
			exposure.Asked{Year: 2026, WorkedIn: one.workedIn})
		must(t, err)
		table, err := pricing.NewTable(b, common, r, "show", "whole_body")
		must(t, err)
		prior, err := damage.New(damage.Known{Body: b, Histories: histories}, calibrationGrids)
		must(t, err)
		out = append(out, setting{b, table.Supplied(pricing.Supply{}), histories, prior, fig})
	}
	return out
}

// calibrationGrids are used for both drawing and inference. The convergence test of
// package damage checks that finer grids give the same.
var calibrationGrids = damage.CoarseGrids

const calibrationSeed = 0xCA11B

// oneCar draws a car and its price, simulates the evidence of every stage and ranks the
// price at each.
func oneCar(s setting, how trial, k uint64) (out [len(stageNames)]tally, err error) {
	stream := chance.NewStream(calibrationSeed, k)
	truth := s.prior.NewCar()
	s.prior.Draw(&stream, truth)
	u, bill, again := s.table.NewUniforms(), s.table.NewBill(), s.table.NewBill()
	u.Fill(&stream)
	s.table.Price(truth, s.histories[truth.History].LastClimate, u, bill)
	wrong := chance.NewStream(calibrationSeed+2, k)
	u.Doubt, u.Rise = wrong.Uniform(), wrong.Uniform()
	u.Supply.Fill(&wrong)

	covered := stream.Uniform() < s.fig.Cover.Chance[truth.Repair]
	known := damage.Known{Body: s.body, Histories: s.histories, Independent: how.alone, Seen: make([]*damage.Likelihood, len(s.body.Items))}
	if known.EarlierWork, err = s.answer(truth.Repair, stream.Uniform()); err != nil {
		return out, err
	}
	if asked, said := stream.Uniform() < .5, stream.Uniform(); asked {
		known.Cover.Answer = s.answerOfCover(covered, said)
	}
	table, shut, odds := s.table, known, s.prior
	for stage := 0; stage <= how.last; stage++ {
		switch stage {
		case 1:
			if err = carfile.AddLooks(&known, s.body, evidence.ImagineWalkRound(s.body, truth, covered, &stream)); err != nil {
				return out, err
			}
			how.double(&known)
		case 2:
			entries := evidence.ImagineSurvey(s.body, truth, false, &stream)
			known.LeadFailed = counted(truth)
			shut = known
			how.read(&shut, entries, func(i int) bool { return s.body.PartOf(i).SeenWhenStripped })
			how.read(&known, entries, func(int) bool { return true })
		case 3:
			d := pricing.Undecided()
			for trade, h := range bill.StripHours {
				if h > 0 {
					d.StripHours[trade] = float64(h) / 1000
				}
			}
			if table, err = s.table.With(d); err != nil {
				return out, err
			}
		case 4:
			known = shut
			how.read(&known, evidence.ImagineSurvey(s.body, truth, true, &stream), func(i int) bool { return !s.body.PartOf(i).SeenWhenStripped })
		}
		if stage != 3 { // hours say nothing about rust
			if odds, err = damage.NewAfter(known, calibrationGrids, odds); err != nil {
				return out, err
			}
		}
		// What the figures have wrong is smaller at every stage, and so in the true price.
		doubt := pricing.DoubtAt(s.table.Rates, doubted[stage])
		s.table.Doubting(doubt).Price(truth, s.histories[truth.History].LastClimate, u, bill)
		price := int64(bill.Total)
		if stage >= 3 { // the charge of the strip follows from its hours alone
			table.Price(truth, s.histories[truth.History].LastClimate, u, again)
			price += int64(again.Strip - bill.Strip)
		}
		out[stage] = rank(odds, table.Doubting(doubt), price, truth, k*31+uint64(stage))
	}
	return out, nil
}

// rank draws cars given the evidence and says where the true one falls.
func rank(m *damage.Model, table *pricing.Table, price int64, truth *damage.Car, seed uint64) (out tally) {
	c, u, bill := m.NewCar(), table.NewUniforms(), table.NewBill()
	stream := chance.NewStream(calibrationSeed+1, seed)
	is := [measures]int64{price, holes(truth), steps(truth)}
	prices := make([]int64, ranks)
	var below, alike [measures]int
	for n := range prices {
		m.Draw(&stream, c)
		u.Fill(&stream)
		u.Doubt, u.Rise = stream.Uniform(), stream.Uniform()
		u.Supply.Fill(&stream)
		table.Price(c, m.Histories[c.History].LastClimate, u, bill)
		prices[n] = int64(bill.Total)
		for what, v := range [measures]int64{prices[n], holes(c), steps(c)} {
			switch {
			case v < is[what]:
				below[what]++
			case v == is[what]:
				alike[what]++
			}
		}
	}
	for what := range below {
		// Ties are broken at random, or the rank would not be uniform.
		out.by[what] = place(below[what] + int(stream.Uniform()*float64(alike[what]+1)))
	}
	out.width = width(prices)
	return out
}

// steps adds up how bad a car's items are, in steps on the scale of conditions.
func steps(c *damage.Car) (sum int64) {
	for _, k := range c.Condition {
		sum += int64(k)
	}
	return sum
}

// holes is the number of items rusted through or gone.
func holes(c *damage.Car) (n int64) {
	for _, k := range c.Condition {
		if k >= through {
			n++
		}
	}
	return n
}

// width is the 80 % range of drawn prices.
func width(prices []int64) float64 {
	slices.Sort(prices)
	return chance.QuantileMinor(prices, 0.9) - chance.QuantileMinor(prices, 0.1)
}

// answer draws what the customer says about earlier work.
func (s setting) answer(repair int, u float64) (string, error) {
	for _, id := range damage.Answers {
		said, err := s.fig.Answered(&damage.Known{EarlierWork: id})
		if err != nil {
			return "", err
		}
		if u -= said[repair]; u < 0 {
			return id, nil
		}
	}
	return damage.Answers[len(damage.Answers)-1], nil
}

// answerOfCover draws what the customer says about recent paint and undercoat.
func (s setting) answerOfCover(covered bool, u float64) string {
	of := 0
	if covered {
		of = 1
	}
	for _, id := range damage.CoverAnswers {
		if u -= s.fig.Cover.Answer[id][of]; u < 0 {
			return id
		}
	}
	return damage.CoverAnswers[len(damage.CoverAnswers)-1]
}

// counted are the failed lead joints, which bare metal shows exactly.
func counted(c *damage.Car) (out []int) {
	for _, n := range c.LeadFailed {
		out = append(out, int(n))
	}
	return out
}
