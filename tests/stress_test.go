//go:build !js

package tests

import (
	"math"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/chance"
	"underpaint/engine/damage"
	"underpaint/engine/evidence"
	"underpaint/engine/olddamage"
	"underpaint/engine/pricing"
	"underpaint/engine/rates"
)

// A harder world than the figures describe. What makes bills larger besides rust comes
// from this file and not from the engine's figures, and no survey records any of it: the
// worst case. Every number is an assumption unless a source stands beside it. Accidents
// are more frequent than any published count of damaged cars allows (21 % of imported
// cars: Irish Times, 2016; 21 % of British cars checked: press, 2022). Prices rise a
// little faster than CWSR0000SETD, maintenance and repair of motor vehicles in the United
// States, has since 1982-84 (3.6 % a year).
const (
	accidents    = .35
	outOfSquare  = 1. / 3 // of accidents
	badWork      = .30
	badPanels    = 3
	poorPanels   = .30 // of cars: new panels fit badly
	poorFit      = .10 // more metalwork and fitting on those
	scopeGrowth  = .05 // median
	scopeSpread  = .06 // standard deviation of the log
	pricesRise   = .045
	weeksInQueue = 20
	stressSeed   = calibrationSeed + 7
	drivenYears  = 15 // of the settings, see there
)

// work is labour outside the figures, in three-point hours.
type work []struct {
	trade car.Trade
	hours car.Hours
}

var (
	accidentWork = work{{car.Metal, car.Hours{6, 14, 32}}, {car.BodyWork, car.Hours{2, 5, 12}}}
	squareWork   = work{{car.Metal, car.Hours{14, 30, 66}}, {car.Fit, car.Hours{3, 6, 14}}}
	badPanelWork = work{{car.Metal, car.Hours{4, 10, 24}}, {car.BodyWork, car.Hours{1, 2, 5}}, {car.Fit, car.Hours{1, 2, 5}}}
)

// world draws what the harder world adds to bills.
type world struct {
	uniform func() float64
	perHour [car.Trades]float64 // minor units
}

func worldOf(r *rates.Rates, s *chance.Stream) world {
	w := world{uniform: s.Uniform}
	for trade, l := range r.Labour.Trades {
		w.perHour[trade] = float64(l.Rate.Of(1000))
	}
	return w
}

// price draws the hours of some work and prices them. Either side of the likely hours is
// half of a lognormal.
func (w world) price(what work) (sum float64) {
	for _, one := range what {
		z, side := chance.NormalQuantile(w.uniform()), math.Log(one.hours[2]/one.hours[1])
		if z < 0 {
			side = math.Log(one.hours[1] / one.hours[0])
		}
		sum += one.hours[1] * math.Exp(z*side/chance.NormalQuantile(.9)) * w.perHour[one.trade]
	}
	return sum
}

// bill is what a car comes to that the figures would bill so, in minor units.
func (w world) bill(b *pricing.Bill) float64 {
	after := float64(b.Total - b.Strip)
	if w.uniform() < accidents {
		after += w.price(accidentWork)
		if w.uniform() < outOfSquare {
			after += w.price(squareWork)
		}
	}
	if w.uniform() < badWork {
		for range badPanels {
			after += w.price(badPanelWork)
		}
	}
	if w.uniform() < poorPanels {
		for _, trade := range []car.Trade{car.Metal, car.Fit} {
			after += poorFit * float64(b.AfterHours[trade]) / 1000 * w.perHour[trade]
		}
	}
	after *= (1 + scopeGrowth) * math.Exp(scopeSpread*chance.NormalQuantile(w.uniform()))
	return float64(b.Strip) + after*math.Pow(1+pricesRise, (weeksInQueue+b.Weeks/2)/52)
}

// stressTables are what a range was before anything besides rust was in it, what the
// doubt and the growth add, and what it is now.
var stressTables = []string{"rust alone", "with doubt and growth", "with all causes"}

// tablesOf prices a setting's cars in these ways, of which plain is the first.
func tablesOf(t *testing.T, s setting, plain *pricing.Table, stage string) []*pricing.Table {
	t.Helper()
	doubt := pricing.DoubtAt(s.table.Rates, stage)
	d := pricing.Undecided()
	d.Old = &olddamage.Known{RoadYears: drivenYears}
	all, err := s.table.With(d)
	must(t, err)
	return []*pricing.Table{plain, plain.Doubting(doubt), all.Supplied(pricing.Supply{AllThere: "not_sure"}).Doubting(doubt)}
}

// plainTable is a setting's table at the prices of one day.
func plainTable(t *testing.T, s setting) *pricing.Table {
	t.Helper()
	r := *s.table.Rates
	r.OverTime = nil
	common, err := car.LoadCommon()
	must(t, err)
	plain, err := pricing.NewTable(s.body, common, &r, "show", "whole_body")
	must(t, err)
	return plain
}

// belowOf is how many of the prices drawn from each table are below a bill.
func belowOf(m *damage.Model, tables []*pricing.Table, bill float64, seed uint64) []int {
	below := make([]int, len(tables))
	for k, table := range tables {
		c, u, b := m.NewCar(), table.NewUniforms(), table.NewBill()
		stream := chance.NewStream(stressSeed+1, seed)
		for range ranks {
			m.Draw(&stream, c)
			u.Fill(&stream)
			u.Doubt, u.Rise = stream.Uniform(), stream.Uniform()
			u.Supply.Fill(&stream)
			for n := range u.Old {
				u.Old[n] = stream.Uniform()
			}
			table.Price(c, m.Histories[c.History].LastClimate, u, b)
			if float64(b.Total) < bill {
				below[k]++
			}
		}
	}
	return below
}

// TestRangesInAHarderWorld counts the bills of that world inside the ranges told and
// after a survey. Rust alone holds too few, which shows that the test can fail. With all
// that is in the range now, 80 of 100 are inside but for four standard errors.
func TestRangesInAHarderWorld(t *testing.T) {
	sets, n := settings(t), *calibrationCars
	plain := make([]*pricing.Table, len(sets))
	for k, s := range sets {
		plain[k] = plainTable(t, s)
	}
	all := map[string][]fell{carfile.Told: make([]fell, len(stressTables)), carfile.Survey: make([]fell, len(stressTables))}
	for k := range n {
		s := sets[k%len(sets)]
		stream := chance.NewStream(stressSeed, uint64(k))
		table := plain[k%len(sets)]
		truth, u, b := s.prior.NewCar(), table.NewUniforms(), table.NewBill()
		s.prior.Draw(&stream, truth)
		u.Fill(&stream)
		table.Price(truth, s.histories[truth.History].LastClimate, u, b)
		bill := worldOf(s.table.Rates, &stream).bill(b)

		known, m := damage.Known{Body: s.body, Histories: s.histories}, s.prior
		var err error
		known.EarlierWork, err = s.answer(truth.Repair, stream.Uniform())
		must(t, err)
		for _, stage := range []string{carfile.Told, carfile.Survey} {
			if stage == carfile.Survey {
				known.LeadFailed = counted(truth)
				must(t, carfile.AddReadings(&known, s.body, evidence.ImagineSurvey(s.body, truth, false, &stream), func(int) bool { return true }))
			}
			m, err = damage.NewAfter(known, calibrationGrids, m)
			must(t, err)
			for which, below := range belowOf(m, tablesOf(t, s, table, stage), bill, uint64(k)) {
				all[stage][which].add(place(below))
			}
		}
	}
	for stage, falls := range all {
		for which, f := range falls {
			share := float64(f.inside) / float64(n)
			t.Logf("%s, %s: %.0f %% inside, %.0f below, %.0f above", stage, stressTables[which], 100*share, 100*float64(f.below)/float64(n), 100*float64(f.above)/float64(n))
		}
		least := .8 - 4*math.Sqrt(.16/float64(n))
		if f := falls[len(falls)-1]; float64(f.inside) < least*float64(n) {
			t.Errorf("%s: %d of %d bills inside the range with all causes", stage, f.inside, n)
		}
		if f := falls[0]; within(f.inside, n, .8) && stage == carfile.Survey {
			t.Errorf("%s: %d of %d bills inside the range with rust alone", stage, f.inside, n)
		}
	}
}
