package message

import (
	"underpaint/engine/session"
	"underpaint/engine/wording"
)

func askTwenty(o *openShop, q carRequest) (Reply, error) {
	v, err := o.Twenty(q.car)
	if err != nil {
		return nil, err
	}
	a := session.NewAxis(o.Rates.Currency, v.Most, 0)
	dots := session.PackDots(v.Totals, a)
	out := &TwentyReply{Drawing: v.Body.ID, Axis: newAxis(a), Line: wording.TwentyLine, Note: wording.TwentyNote}
	for k, total := range v.Totals {
		one := OneOfTwenty{TotalText: o.text.Likely(total), FoundText: o.text.Found(v.Body, v.Holed[k]), At: dots[k].At, Stack: dots[k].Stack}
		for _, i := range v.Holed[k] {
			one.Holed = append(one.Holed, v.Body.Items[i].ID)
		}
		out.Cars = append(out.Cars, one)
	}
	return out, nil
}

func askTwoWays(o *openShop, q carRequest) (Reply, error) {
	independent, together, err := o.TwoWays(q.car)
	if err != nil {
		return nil, err
	}
	out := &TwoWaysReply{Line: wording.TwoWaysLine, Compared: wording.TwoWays(independent, together), Note: wording.TwoWaysNote}
	out.Axis, out.Rows = whyRows(o, []string{wording.IndependentLabel, wording.TogetherLabel}, independent, together)
	return out, nil
}

// whyRows lays out rows of prices on one axis.
func whyRows(o *openShop, labels []string, prices ...session.Prices) (axis Axis, rows []WhyRow) {
	a := session.NewAxis(o.Rates.Currency, session.MostDot(prices...), 0)
	for k, p := range prices {
		rows = append(rows, WhyRow{labels[k], newDots(p.Dots(), a), wording.Dots, o.text.EightOf(p)})
	}
	return newAxis(a), rows
}

func askSuppose(o *openShop, q carRequest) (Reply, error) {
	v, err := o.Suppose(q.car, q.on, q.condition)
	if err != nil {
		return nil, err
	}
	out := &SupposeReply{On: q.on, Condition: v.Condition, Name: o.text.Item(v.Body, v.Item), Line: wording.SupposeLine, Compared: wording.Supposed(&v)}
	out.Axis, out.Rows = whyRows(o, []string{wording.AsKnownLabel, wording.IfSoLabel}, v.Now, v.IfSo)
	for _, n := range v.Neighbours {
		out.Neighbours = append(out.Neighbours, NeighbourMoved{v.Body.Items[n.Item].ID, o.text.Item(v.Body, n.Item), wording.InTen(n.Before), wording.InTen(n.Now), n.SameWater})
	}
	return out, nil
}
