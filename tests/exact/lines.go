package exact

import (
	"math"
	"math/cmplx"
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/rates"
)

// factors are the whole-car factors of hours, by trade.
type factors [car.Trades]float64

// factorsAt returns the factors at two independent standard normal scores.
func (f *Figures) factorsAt(metal, own float64) (out factors) {
	w := &f.work.WholeCar
	other := w.Correlation*metal + math.Sqrt(1-w.Correlation*w.Correlation)*own
	for trade := range out {
		out[trade] = math.Exp(w.Other * other)
	}
	out[car.Metal] = math.Exp(w.Metal * metal)
	return out
}

// figure is a three-point figure, times a factor, at every node of a grid of scores.
func figure(h three, times float64, at []float64) ([]float64, error) {
	tp, err := chance.NewThreePoint(h[0]*times, h[1]*times, h[2]*times)
	if err != nil {
		return nil, err
	}
	ninety := chance.NormalQuantile(0.9)
	out := make([]float64, len(at))
	for k, z := range at {
		out[k] = tp.At(z / ninety)
	}
	return out, nil
}

// plain is work or a price that belongs to no item: amounts by score.
type plain struct {
	trade   int // −1 = a price
	amount  []float64
	hour    float64 // minor units per hour, or per unit of the price
	ceiling float64 // hours charged at most, 0 = all
}

// lines are everything on the bill except the items, each on a score of its own.
type lines struct {
	weight []float64
	all    []plain
}

func (c *Case) lines() (*lines, error) {
	g := normalGrid(0.1, 6)
	l := &lines{weight: g.weight}
	var err error
	add := func(p plain, h three, times float64) {
		if times == 0 || h == (three{}) || err != nil {
			return
		}
		p.amount, err = figure(h, times, g.at)
		l.all = append(l.all, p)
	}
	body := c.Known.Body
	for n, s := range c.Figures.work.Strip.Steps {
		trade := slices.Index(car.TradeIDs[:], s.Trade)
		charge, hours, factor := c.Rates.Strip.Charged[n], s.Hours, body.StageFactor
		if s.OnAFrame != nil && body.OnAFrame {
			hours, factor = s.OnAFrame.Hours, 1
		}
		if s.PerJoint != nil {
			hours, factor = c.Figures.work.Lead.TakeOut, float64(body.LeadJoints())
		}
		factor *= c.pace(trade)
		if charge.How != rates.ByTheHour && charge.How != rates.AtCost {
			continue
		}
		p := plain{trade: trade, hour: c.Rates.Labour.Trades[trade].Rate.Published.Float() * c.minorPerMajor()}
		if charge.How == rates.ByTheHour && charge.Capped {
			p.ceiling = charge.NoMoreThan * factor
		}
		add(p, hours, factor)
	}
	for _, w := range c.Figures.work.After.Work {
		trade := slices.Index(car.TradeIDs[:], w.Trade)
		if slices.Contains(w.Scopes, "whole_body") {
			add(plain{trade: trade, hour: c.anHour(trade)}, w.Show, body.AfterSurveyFactor[w.ID]*c.pace(trade))
		}
	}
	handled := 1 + c.Rates.SentOut.Handling.Published.Float()/100
	for _, s := range c.Rates.SentOut.Work {
		if s.Standards[c.Table.Standard] && s.Scopes[c.Table.Scope] {
			add(plain{trade: -1, hour: handled}, three(s.Price), c.minorPerMajor())
		}
	}
	return l, err
}

// phi is the characteristic function of all lines together, given the factors.
func (l *lines) phi(theta float64, f *factors) complex128 {
	out := complex(1, 0)
	for k := range l.all {
		p, sum := &l.all[k], complex(0, 0)
		for j, v := range p.amount {
			if p.trade >= 0 {
				v *= f[p.trade]
			}
			if p.ceiling > 0 {
				v = min(v, p.ceiling)
			}
			sum += cmplx.Rect(l.weight[j], theta*p.hour*v)
		}
		out *= sum
	}
	return out
}
