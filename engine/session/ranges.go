package session

import (
	"sort"

	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/estimate"
	"underpaint/engine/money"
	"underpaint/engine/pricing"
)

// Ranges are the ranges of the open car, one for each body and standard.
type Ranges struct {
	State  State
	Cars   int // simulated cars behind each range, the smallest where there are several bodies
	Car    *carfile.Car
	Bodies []*car.Body
	Rows   []Range
}

// Range is the range of one body at one standard.
type Range struct {
	Body      *car.Body
	Standard  string
	Headline  bool // the only standard of the car
	OfSeveral bool // one of several bodies
	Exact     estimate.Range
	Shown     Ends
	GoodTo    money.Minor // twice the larger standard error of an end, rounded up
	Zones     []ZoneShare
	Strip     pricing.Stage
	Fitting   estimate.Quantiles // of it, what bought parts that do not fit or are used ones cost more
	Old       pricing.OldCost
	Another   AnotherBody
	Wider     float64 // how many times as wide the doubt about the figures makes it
}

// ZoneShare is the share of the simulated cars in which anything in a zone is rusted
// through.
type ZoneShare struct {
	Zone     int // index in Body.Zones
	Share    float64
	OwnCause float64 // the share of these that have a local cause
	Behind   []int   // the hidden parts most often rusted through with it, at most three
	Items    []ItemShare
}

// ItemShare is the same for one item.
type ItemShare struct {
	Item  int
	Share float64
}

// Ranges takes the ranges of the open car from its simulated cars so far.
func (s *Session) Ranges(state State) Ranges {
	out := Ranges{State: state, Cars: s.Cars(), Car: s.car.car}
	for k := range s.car.runs {
		b := &s.car.runs[k]
		out.Bodies = append(out.Bodies, b.body)
		for n := range b.tables {
			out.Rows = append(out.Rows, b.row(n, len(s.car.runs) > 1))
		}
	}
	return out
}

// Cars is the number of simulated cars behind each range of the open car.
func (s *Session) Cars() int { return s.car.cars() }

// MostDot returns the most expensive of all dots, in minor units.
func (r *Ranges) MostDot() (most float64) {
	for k := range r.Rows {
		most = max(most, r.Rows[k].Exact.Dots[19])
	}
	return most
}

func (b *bodyRun) row(k int, several bool) Range {
	x := b.run.Range(k)
	return Range{Body: b.body, Standard: b.standards[k], Headline: len(b.standards) == 1, OfSeveral: several, Exact: x,
		Shown: RoundEnds(x.Low, x.Half, x.SetAside, x.High), GoodTo: RoundUp125(2 * max(x.SELow, x.SEHigh)),
		Zones: b.zones(), Strip: b.tables[k].StagePriceFor(b.run.ReplacedM2(k)), Wider: b.run.Wider(k), Fitting: b.run.Fitting(k),
		Old: b.tables[k].OldCost(b.model.RepairState()), Another: anotherBody(b.run.AnotherBody(k))}
}

// zones lists the zones of a body, first the one most often rusted through.
func (b *bodyRun) zones() (out []ZoneShare) {
	for z := range b.body.Zones {
		one := ZoneShare{Zone: z, Share: b.run.ZoneHoled(z), OwnCause: b.run.ZoneOwnCause(z)}
		one.Behind = b.behind(z, one.Share)
		for i := range b.body.Items {
			if b.body.PartOf(i).Zone == z {
				one.Items = append(one.Items, ItemShare{i, b.run.Holed(i)})
			}
		}
		out = append(out, one)
	}
	sort.SliceStable(out, func(i, k int) bool { return Tenths(out[i].Share) > Tenths(out[k].Share) })
	return out
}

// behind lists at most three hidden parts that are rusted through in at least three out
// of ten of the cars in which the zone is, most often first.
func (b *bodyRun) behind(z int, share float64) (parts []int) {
	among := map[int]float64{}
	for p := range b.body.Parts {
		part := &b.body.Parts[p]
		if part.Zone != z || part.Face == car.Outer || share == 0 {
			continue
		}
		if v := b.run.PartHoled(p) / share; v >= 0.3 {
			parts, among[p] = append(parts, p), v
		}
	}
	sortByFloat(parts, func(p int) float64 { return -among[p] })
	return parts[:min(3, len(parts))]
}
