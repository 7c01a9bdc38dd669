package main

import (
	"os"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/damage"
	"underpaint/engine/estimate"
	"underpaint/engine/evidence"
	"underpaint/engine/exposure"
	"underpaint/engine/pricing"
	"underpaint/engine/rates"
)

// growing is the car on which everything is measured: a two-door of which nothing is
// known, with one property growing at a time.
type growing struct {
	body      *car.Body
	common    *car.Common
	rates     *rates.Rates
	histories []exposure.History
}

// standard is the grid of every measurement, the one that ranges use.
var standard = damage.StandardGrids

func newBench(ratesFile string) (*growing, error) {
	text, err := os.ReadFile(ratesFile)
	if err != nil {
		return nil, err
	}
	g := &growing{}
	if g.rates, err = rates.Decode(text); err != nil {
		return nil, err
	}
	if g.common, err = car.LoadCommon(); err != nil {
		return nil, err
	}
	if g.body, err = car.Load("two_door_unitary"); err != nil {
		return nil, err
	}
	g.histories, err = equal(10)
	return g, err
}

// equal returns n alternatives of equal probability. There are three times as many
// levels, because the rates of each are uncertain.
func equal(n int) ([]exposure.History, error) {
	var all []exposure.Alternative
	for k := range n {
		all = append(all, exposure.Alternative{Chance: 1 / float64(n), Periods: []exposure.Period{
			{Climate: "mild", Years: 5 + 30*float64(k)/float64(n), Kept: "driven_all_year", Use: exposure.OnRoad},
			{Climate: "dry", Years: 30, Kept: "garage", Use: exposure.OffRoad}}})
	}
	return exposure.Exact(all, exposure.Asked{Year: 2026})
}

// quarters returns a body with n quarters of the items: it leaves out whole groups of
// boxes, or adds all of them again. No such body exists; it is only there to be large.
func quarters(b *car.Body, n int) *car.Body {
	out := *b
	out.Groups, out.Pockets, out.Items = nil, nil, nil
	out.Parts = append([]car.Part(nil), b.Parts...)
	for p := range out.Parts {
		out.Parts[p].Items = nil
	}
	for len(out.Items)*4 < n*len(b.Items) {
		for _, group := range b.Groups {
			if len(out.Items)*4 < n*len(b.Items) {
				addGroup(&out, b, group)
			}
		}
	}
	return &out
}

func addGroup(out, b *car.Body, group car.Group) {
	pockets := group.Pockets
	group.Pockets = nil
	for _, k := range pockets {
		pocket := b.Pockets[k]
		items := pocket.Items
		pocket.Group, pocket.Items = len(out.Groups), nil
		for _, i := range items {
			it := b.Items[i]
			it.Pocket = len(out.Pockets)
			pocket.Items = append(pocket.Items, len(out.Items))
			out.Parts[it.Part].Items = append(out.Parts[it.Part].Items, len(out.Items))
			out.Items = append(out.Items, it)
		}
		group.Pockets = append(group.Pockets, len(out.Pockets))
		out.Pockets = append(out.Pockets, pocket)
	}
	out.Groups = append(out.Groups, group)
}

// seen is what is known of a car drawn from the model: the first n records of its
// survey and, on this many sides, a check of the door gaps, whose answer depends on
// everything that carries the side.
func seen(b *car.Body, histories []exposure.History, n, sides int) (damage.Known, error) {
	known := damage.Known{Body: b, Histories: histories}
	prior, err := damage.New(known, standard)
	if err != nil {
		return known, err
	}
	truth, s := prior.NewCar(), chance.NewStream(2026, 11)
	prior.Draw(&s, truth)
	known.Seen = make([]*damage.Likelihood, len(b.Items))
	for i, e := range evidence.ImagineSurvey(b, truth, false, &s)[:n] {
		if known.Seen[i], err = evidence.Reading(b.PartOf(i), e); err != nil {
			return known, err
		}
	}
	for _, side := range []car.Side{car.Left, car.Right}[:sides] {
		// The likelihoods of gaps that have opened (assumption: any will do here).
		known.Worst = append(known.Worst, damage.MaxEvidence{Items: evidence.OnSide(b, "gaps", side.String()), Likely: [car.Conditions]float64{.1, .15, .2, .4, .7, .8}})
	}
	return known, nil
}

// odds conditions the network on what is seen.
func odds(b *car.Body, histories []exposure.History, records, sides int) (func() error, error) {
	known, err := seen(b, histories, records, sides)
	return func() error { _, err := damage.New(known, standard); return err }, err
}

// drawnCars is the number of cars in one timing of drawing.
const drawnCars = 400

// drawing draws and prices cars of which nothing is known, each from a stream of its
// own.
func (g *growing) drawing(b *car.Body, histories []exposure.History) (func() error, error) {
	m, err := damage.New(damage.Known{Body: b, Histories: histories}, standard)
	if err != nil {
		return nil, err
	}
	table, err := pricing.NewTable(b, g.common, g.rates, "show", "whole_body")
	if err != nil {
		return nil, err
	}
	one, u, bill := m.NewCar(), table.NewUniforms(), table.NewBill()
	return func() error {
		for k := range drawnCars {
			s := chance.NewStream(1, uint64(k))
			m.Draw(&s, one)
			u.Fill(&s)
			table.Price(one, m.Histories[one.History].LastClimate, u, bill)
		}
		return nil
	}, nil
}

// ranging makes a range of this many cars, from the first car to the ends in money.
func (g *growing) ranging(cars int) (func() error, error) {
	m, err := damage.New(damage.Known{Body: g.body, Histories: g.histories}, standard)
	if err != nil {
		return nil, err
	}
	table, err := pricing.NewTable(g.body, g.common, g.rates, "show", "whole_body")
	if err != nil {
		return nil, err
	}
	return func() error {
		run := estimate.NewRun(m, []*pricing.Table{table}, 1)
		for run.Cars() < cars {
			run.Add()
		}
		run.Range(0)
		return nil
	}, nil
}
