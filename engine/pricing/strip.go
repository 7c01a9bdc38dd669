package pricing

import (
	"math"
	"slices"
	"strconv"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/strict"
)

// factorPosterior is the bivariate normal of the two independent scores behind the
// whole-car factors of hours (metal, and what is particular to the other trades), given
// hours already worked. The zero value is not the prior; use newFactorPosterior.
type factorPosterior struct {
	mean [2]float64
	cov  [3]float64 // variance of the first, covariance, variance of the second
	root [3]float64 // lower Cholesky factor of cov: 11, 21, 22
}

func newFactorPosterior() factorPosterior {
	return factorPosterior{cov: [3]float64{1, 0, 1}, root: [3]float64{1, 0, 1}}
}

// observe conditions on h·score + noise = value, where noise is normal with the given
// variance: the exact formula for a normal observation (Anderson, An Introduction to
// Multivariate Statistical Analysis, section 2.5). Several observations in turn give
// the same result as all at once.
func (f *factorPosterior) observe(h [2]float64, noise, value float64) {
	c := [2]float64{float64(f.cov[0]*h[0]) + float64(f.cov[1]*h[1]), float64(f.cov[1]*h[0]) + float64(f.cov[2]*h[1])}
	s := float64(h[0]*c[0]) + float64(h[1]*c[1]) + noise
	if s <= 1e-12 {
		return // already known without doubt
	}
	miss := value - float64(h[0]*f.mean[0]) - float64(h[1]*f.mean[1])
	f.mean[0] += float64(c[0] * miss / s)
	f.mean[1] += float64(c[1] * miss / s)
	f.cov[0] = math.Max(0, f.cov[0]-float64(c[0]*c[0]/s))
	f.cov[1] -= float64(c[0] * c[1] / s)
	f.cov[2] = math.Max(0, f.cov[2]-float64(c[1]*c[1]/s))
	f.root = [3]float64{math.Sqrt(f.cov[0]), 0, 0}
	if f.root[0] > 0 {
		f.root[1] = f.cov[1] / f.root[0]
	}
	f.root[2] = math.Sqrt(math.Max(0, f.cov[2]-float64(f.root[1]*f.root[1])))
}

// at maps two independent standard normal scores to the posterior.
func (f *factorPosterior) at(metal, own float64) (a, b float64) {
	a = f.mean[0] + float64(f.root[0]*metal)
	b = f.mean[1] + float64(f.root[1]*metal) + float64(f.root[2]*own)
	return a, b
}

// stripSum takes the hours of a trade in the strip and survey, without the whole-car
// factor, as lognormal with the exact mean and variance of the sum of its lines (the
// approximation of Fenton, IRE Transactions on Communications Systems 8, 1960). It
// returns the mean and variance of the log, and whether the trade has any line.
func (t *Table) stripSum(trade car.Trade) (logMean, logVariance float64, has bool) {
	mean, variance := 0.0, 0.0
	for k := range t.strip {
		if line := &t.strip[k]; line.trade == trade && !line.byCustomer {
			m, v := line.hours.Moments()
			mean, variance, has = mean+m, variance+v, true
		}
	}
	if !has {
		return 0, 0, false
	}
	logVariance = chance.Log(1 + variance/float64(mean*mean))
	return chance.Log(mean) - float64(logVariance/2), logVariance, true
}

// onScores returns the coefficients of the log of a trade's whole-car factor on the two
// scores.
func (t *Table) onScores(trade car.Trade) [2]float64 {
	if trade == car.Metal {
		return [2]float64{t.fig.sdMetal, 0}
	}
	return [2]float64{float64(t.fig.sdOther * t.fig.rho), float64(t.fig.sdOther * t.money.rhoRest)}
}

// SameStrip says whether the strip and survey has the same steps, the same hours and
// the same people as on another table of the body. Only on such tables do hours worked
// under one wish say how hard the work on the car goes.
func (t *Table) SameStrip(other *Table) bool {
	return slices.EqualFunc(t.strip, other.strip, func(a, b stripLine) bool {
		return a.id == b.id && a.trade == b.trade && *a.hours == *b.hours && a.how == b.how && a.ceiling == b.ceiling && a.byCustomer == b.byCustomer
	})
}

// StripOutlook returns what to expect of each trade's hours in the strip and survey
// before it starts: one car in ten is below the first figure, half are below the
// second, one in ten is above the third. A trade without work in the stage has zeros,
// and entering hours for it is refused.
func (t *Table) StripOutlook() (out [car.Trades]car.Hours) {
	for trade := range out {
		m, v, has := t.stripSum(car.Trade(trade))
		if !has {
			continue
		}
		h := t.onScores(car.Trade(trade))
		sd := math.Sqrt(v + float64(h[0]*h[0]) + float64(h[1]*h[1]))
		out[trade] = car.Hours{chance.Exp(m - float64(q90*sd)), chance.Exp(m), chance.Exp(m + float64(q90*sd))}
	}
	return out
}

// setWorked conditions on the hours already worked. Each trade entered is one
// observation of the whole-car factors, and its hours and charge in the stage are then
// known.
func (t *Table) setWorked(to *decided, d Decided) error {
	to.factors = newFactorPosterior()
	to.charged = make([]int64, len(t.strip))
	for trade, hours := range d.StripHours {
		to.strip[trade] = -1
		if !entered(hours) {
			continue
		}
		path := "strip_hours." + car.TradeIDs[trade]
		m, v, has := t.stripSum(car.Trade(trade))
		if !has {
			return &strict.Error{Path: path, Found: number(hours), Expected: "no hours: the strip and survey has no work of this trade"}
		}
		if !(hours >= 0.001 && hours <= mostHours) {
			return &strict.Error{Path: path, Found: number(hours), Expected: "hours above 0, at most " + strconv.Itoa(mostHours)}
		}
		to.factors.observe(t.onScores(car.Trade(trade)), v, chance.Log(hours)-m)
		to.stripKnown = true
		to.strip[trade] = thousandths(hours)
		t.shareOut(to, car.Trade(trade))
	}
	return nil
}

func number(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }

// shareOut splits the hours worked in a trade among its steps in proportion to their
// likely hours, since nobody records them step by step (assumption). A step charged as
// worked is charged its share, up to its ceiling.
func (t *Table) shareOut(to *decided, trade car.Trade) {
	all := 0.0
	for k := range t.strip {
		if t.strip[k].trade == trade && !t.strip[k].byCustomer {
			all += t.strip[k].likely
		}
	}
	for k := range t.strip {
		line := &t.strip[k]
		if line.trade != trade || line.byCustomer || !line.chargedAsWorked() {
			continue
		}
		share := int64(float64(float64(to.strip[trade])*(line.likely/all)) + 0.5)
		if line.ceiling > 0 {
			share = min(share, thousandths(line.ceiling))
		}
		to.charged[k] = share
	}
}

// worked says whether the strip hours of a trade are known.
func (t *Table) worked(trade car.Trade) bool {
	return t.decided != nil && t.decided.strip[trade] >= 0
}

// stripCar works out the hours of each step of the strip and survey.
func (t *Table) stripCar(u *Uniforms, b *Bill) {
	b.strip = b.strip[:0]
	for k := range t.strip {
		h := 0.0
		if line := &t.strip[k]; !line.byCustomer && !t.worked(line.trade) {
			uniform := &u.Old[oldMeasure]
			if k < len(u.Strip) {
				uniform = &u.Strip[k]
			}
			h = line.hours.At(scaledDeviate(*uniform))
		}
		b.strip = append(b.strip, h)
	}
}

// chargeStrip adds the strip and survey. All its hours are worked, but only steps
// charged by the hour or at cost are charged as worked. Known hours are used as they
// are.
func (t *Table) chargeStrip(f *[car.Trades]float64, b *Bill) {
	for k := range t.strip {
		line := &t.strip[k]
		if line.byCustomer {
			continue
		}
		charged := int64(0)
		if t.worked(line.trade) {
			charged = t.decided.charged[k]
		} else {
			worked := thousandths(b.strip[k] * f[line.trade])
			b.StripHours[line.trade] += worked
			charged = worked
			if line.ceiling > 0 {
				charged = min(charged, thousandths(line.ceiling))
			}
		}
		if line.chargedAsWorked() {
			b.billed[line.trade] += charged
			if b.list != nil {
				b.write(Line{ID: line.id, Item: -1, Trade: line.trade, Thousandths: charged, Strip: true})
			}
		}
	}
	for trade := range b.StripHours {
		if t.worked(car.Trade(trade)) {
			b.StripHours[trade] = t.decided.strip[trade]
		}
	}
}
