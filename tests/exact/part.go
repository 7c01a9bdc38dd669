package exact

import (
	"math/cmplx"
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/damage"
	"underpaint/engine/rates"
)

// scoreAt is the grid of the score that sets the hours of all trades on one item.
var (
	scores               = normalGrid(0.5, 5)
	scoreAt, scoreWeight = scores.at, scores.weight
)

// partWork is what the ways of repairing one part take, by score.
type partWork struct {
	chance  [car.Conditions][car.Ways]float64 // of each way that is done, by condition
	hours   [car.Ways][car.Trades][]float64   // nil = none
	price   [car.Ways][]float64               // minor units with handling, nil = no part
	extra   [4][]float64                      // patch, filler over a hole, over a dent, a lead joint
	joints  int
	primed  float64 // what primer costs more if the part is replaced, in minor units
	anyWays [car.Ways]bool
}

// extraIDs are the findings that add metalwork, in the order of partWork.extra.
var extraIDs = [4]string{"patch_over_rust", "filler_over_hole", "filler_over_dent", "cracked_lead"}

func (c *Case) partWork(p *car.Part) (w *partWork, err error) {
	w = &partWork{joints: p.LeadJoints, primed: c.primed(p)}
	standard := c.Figures.work.Standards.Factors["show"]
	for way := car.Leave; way < car.Ways; way++ {
		one := &p.Ways[way]
		if !one.Done {
			continue
		}
		for trade, h := range one.Hours {
			if h == (car.Hours{}) {
				continue
			}
			if w.hours[way][trade], err = figure(three(h), standard[car.TradeIDs[trade]]*c.pace(trade), scoreAt); err != nil {
				return nil, err
			}
		}
		if w.price[way], err = c.partPrice(p, way); err != nil {
			return nil, err
		}
	}
	for n, id := range extraIDs {
		if w.extra[n], err = figure(c.Figures.hoursOf(id), standard["metal"]*c.pace(int(car.Metal)), scoreAt); err != nil {
			return nil, err
		}
	}
	had := c.Rates.Parts.HadAs(c.Known.Body.ID, p.ID)
	for k, id := range car.ConditionIDs {
		for way, v := range c.Figures.work.Done.Standards["show"][p.Table][id] {
			done := &p.Ways[way]
			switch {
			case done.Once == "" && !done.Done:
				way = int(done.Instead)
			case done.Done && car.Way(way) == car.Full && slices.Contains([]string{"section_only", "by_hand"}, had):
				way = int(car.Fabricate)
			}
			w.chance[k][way] += v
			w.anyWays[way] = w.anyWays[way] || v > 0
		}
	}
	return w, nil
}

// partPrice is the shop's price of a part, or the starting price times its factor.
func (c *Case) partPrice(p *car.Part, way car.Way) ([]float64, error) {
	price, factor := three(p.Ways[way].Price), c.Rates.Parts.PriceFactor.Float()
	if own, found := c.Rates.Parts.Find(c.Known.Body.ID, p.ID, way); found && own.Priced {
		price, factor = own.Price, 1
	}
	if price == (three{}) {
		return nil, nil
	}
	return figure(price, factor*c.minorPerMajor()*(1+c.Rates.Parts.Handling.Published.Float()/100), scoreAt)
}

// primed is how much more primer costs if a part is replaced: one coat later instead of
// those in the strip stage.
func (c *Case) primed(p *car.Part) (sum float64) {
	faces := c.Figures.work.Strip.Faces
	of := faces.Closed
	switch {
	case p.Face == car.Outer:
		of = faces.Outer
	case p.Face == car.SeenWhenOpen:
		of = faces.Seen
	case p.SeenWhenStripped:
		of = faces.Open
	}
	for _, m := range c.Rates.Materials {
		cost := p.AreaM2 * of * m.UnitsPerM2() * m.Price.Published.Float() * c.minorPerMajor()
		switch {
		case m.Area == rates.Replaced:
			sum += cost
		case m.Area == rates.Reached && m.How == rates.ByFilm && m.Stage == rates.StripStage:
			sum -= cost
		}
	}
	return sum
}

// costs are characteristic functions of one item's cost, by condition, finding and
// presence of filler over a dent.
type costs [car.Conditions][damage.Findings][2]complex128

// costs works them out at one theta and one pair of factors. fails is the probability
// that a lead joint failed; counted is how many did, or negative if nobody counted.
func (w *partWork) costs(theta float64, hour, f *factors, fails float64, counted int) (out costs) {
	var extra [4][]complex128
	for n := range extra {
		extra[n] = turned(w.extra[n], theta*hour[car.Metal]*f[car.Metal])
	}
	more := findings(&extra, w.lead(extra[3], fails, counted))
	for way := car.Leave; way < car.Ways; way++ {
		if !w.anyWays[way] {
			continue
		}
		price := complex(1, 0)
		if w.price[way] != nil {
			price = mean(turned(w.price[way], theta))
		}
		work := w.work(way, theta, hour, f)
		var each [3][2]complex128 // nothing more to do, a patch, filler over a hole
		for found := range each {
			for dent := range each[found] {
				switch {
				case way < car.Full:
					each[found][dent] = dot(work, more[found][dent]) * price
				default:
					each[found][dent] = mean(work) * price * cmplx.Rect(1, theta*w.primed)
				}
			}
		}
		for k := range out {
			share := complex(w.chance[k][way], 0)
			for found := range out[k] {
				for dent := range out[k][found] {
					out[k][found][dent] += share * each[found%len(each)][dent] // replaced adds as little as no finding
				}
			}
		}
	}
	return out
}

// findings is exp(iθ·what findings add) by finding, filler over a dent and score, times
// the weight of the score.
func findings(extra *[4][]complex128, lead []complex128) (more [3][2][]complex128) {
	for found := range more {
		for dent := range more[found] {
			v := make([]complex128, len(lead))
			for j := range v {
				v[j] = complex(scoreWeight[j], 0) * lead[j]
				if found > 0 {
					v[j] *= extra[found-1][j]
				}
				if dent == 1 {
					v[j] *= extra[2][j]
				}
			}
			more[found][dent] = v
		}
	}
	return more
}

// work is exp(iθ·labour) of one way, by score.
func (w *partWork) work(way car.Way, theta float64, hour, f *factors) []complex128 {
	sum := make([]float64, len(scoreAt))
	for trade, h := range w.hours[way] {
		for j := range h {
			sum[j] += h[j] * hour[trade] * f[trade]
		}
	}
	return turned(sum, theta)
}

// lead is the mean over the number of failed joints, by score; all joints take the
// item's score.
func (w *partWork) lead(one []complex128, fails float64, counted int) []complex128 {
	out := make([]complex128, len(one))
	for j := range out {
		out[j] = 1
		for n := range w.joints {
			switch {
			case counted < 0:
				out[j] *= complex(1-fails, 0) + complex(fails, 0)*one[j]
			case n < counted:
				out[j] *= one[j]
			}
		}
	}
	return out
}

func turned(amount []float64, by float64) []complex128 {
	out := make([]complex128, len(amount))
	for j, v := range amount {
		out[j] = cmplx.Rect(1, by*v)
	}
	return out
}

func dot(a, b []complex128) (sum complex128) {
	for j := range a {
		sum += a[j] * b[j]
	}
	return sum
}

// mean is the mean over the grid of scores.
func mean(v []complex128) (sum complex128) {
	for j := range v {
		sum += complex(scoreWeight[j], 0) * v[j]
	}
	return sum
}
