package session

import (
	"math"

	"underpaint/engine/carfile"
	"underpaint/engine/estimate"
	"underpaint/engine/money"
	"underpaint/engine/pricing"
	"underpaint/engine/rates"
)

// RatesComparison shows what a change of the rates does to a few cars. It keeps the runs
// at the old rates while the shop changes the new ones. The zero value is ready for Open.
type RatesComparison struct {
	oldKey, newKey, carsKey string
	old, new                *ratesSide // old is nil where there is nothing to compare with
}

// ratesSide is all cars at one set of rates. Both sides simulate the same cars.
type ratesSide struct {
	s    *Session
	cars []ratesCar
}

type ratesCar struct {
	plain *pricing.Table
	run   *estimate.Run
}

// Open takes the text of the old rates (empty where there is nothing to compare with),
// the text of the new rates, and cars with one body each. It keeps the runs that have not
// changed since the last Open. After an error the comparison is the zero value again.
func (j *RatesComparison) Open(oldText, newText string, cars []*carfile.Car) error {
	err := j.open(oldText, newText, cars)
	if err != nil {
		*j = RatesComparison{}
	}
	return err
}

func (j *RatesComparison) open(oldText, newText string, cars []*carfile.Car) (err error) {
	carsKey := ""
	for _, c := range cars {
		carsKey += string(c.Text())
	}
	if j.carsKey != carsKey {
		*j = RatesComparison{carsKey: carsKey}
	}
	if j.old == nil || j.oldKey != oldText {
		j.old, j.oldKey = nil, oldText
		if oldText != "" {
			if j.old, err = newRatesSide(oldText, cars); err != nil {
				return err
			}
		}
	}
	if j.new == nil || j.newKey != newText {
		j.new, err = newRatesSide(newText, cars)
		j.newKey = newText
	}
	return err
}

func newRatesSide(ratesText string, cars []*carfile.Car) (*ratesSide, error) {
	s, err := New([]byte(ratesText))
	if err != nil {
		return nil, err
	}
	return sideOf(s, cars)
}

func sideOf(s *Session, cars []*carfile.Car) (*ratesSide, error) {
	side := &ratesSide{s: s}
	for _, c := range cars {
		j, now, err := s.openNow(c)
		if err != nil {
			return nil, err
		}
		priced, err := j.plain.With(c.Decided(j.body, c.LastStage(), true))
		if err != nil {
			return nil, err
		}
		priced = doubted(s.Rates, priced, c, j.body, c.LastStage(), true)
		side.cars = append(side.cars, ratesCar{j.plain, estimate.NewRun(now.model, []*pricing.Table{priced}, Seed)})
	}
	return side, nil
}

// comparisonAccuracy is the accuracy of the ranges beside the form. It is enough because
// the step to which pages round an end is several times as long (assumption).
var comparisonAccuracy = estimate.Accuracy{ShareOfWidth: 0.012, Budget: 1 << 12}

// Step first gives every run one block of simulated cars, which makes a rough answer.
// Each further call adds a block to the run of either side that is furthest behind.
func (j *RatesComparison) Step() State {
	rough := false
	behind := (*estimate.Run)(nil)
	for _, side := range []*ratesSide{j.new, j.old} {
		if side == nil {
			continue
		}
		for k := range side.cars {
			r := side.cars[k].run
			if r.Cars() == 0 {
				r.Add()
				rough = true
			}
			done := r.Settled(comparisonAccuracy) || r.Cars() >= comparisonAccuracy.Budget
			if !done && (behind == nil || r.Cars() < behind.Cars()) {
				behind = r
			}
		}
	}
	switch {
	case rough:
		return Rough
	case behind == nil:
		return Settled
	}
	behind.Add()
	return Refining
}

// Old is the shop at the old rates, nil where there is nothing to compare with.
func (j *RatesComparison) Old() *Shop {
	if j.old == nil {
		return nil
	}
	return j.old.s.Shop
}

// New is the shop at the new rates.
func (j *RatesComparison) New() *Shop { return j.new.s.Shop }

// Comparable says whether both sides are in the same currency.
func (j *RatesComparison) Comparable() bool {
	return j.old != nil && j.Old().Rates.Currency.Code == j.New().Rates.Currency.Code
}

// PricedCar is one car at one set of rates.
type PricedCar struct {
	Exact estimate.PriceRange
	Shown Ends
	Strip pricing.Stage
}

func (c *ratesCar) priced() PricedCar {
	x := c.run.Price(0)
	return PricedCar{x, RoundEnds(x.Low, x.Half, x.SetAside, x.High), c.plain.StagePriceFor(c.run.ReplacedM2(0))}
}

// HeldLong returns the weeks of the longest job in ten, over all cars at the new rates,
// where the shop holds its prices for the whole job and that is longer than anyone expects
// of it. It is 0 elsewhere.
func (j *RatesComparison) HeldLong() (weeks float64) {
	if o := j.New().Rates.OverTime; o == nil || o.Promise.How != rates.HeldThroughout {
		return 0
	}
	for k := range j.new.cars {
		weeks = max(weeks, j.new.cars[k].run.Weeks(0).High/1000)
	}
	if weeks <= rates.LongestHeld {
		return 0
	}
	return weeks
}

// Car returns the k-th car at the old rates (nil where the two sides cannot be compared)
// and at the new ones.
func (j *RatesComparison) Car(k int) (old *PricedCar, now PricedCar) {
	if j.Comparable() {
		c := j.old.cars[k].priced()
		old = &c
	}
	return old, j.new.cars[k].priced()
}

// MostDot returns the most expensive of all dots, in minor units.
func (j *RatesComparison) MostDot() float64 {
	most := 1.0
	for k := range j.new.cars {
		old, now := j.Car(k)
		most = math.Max(most, now.Exact.Dots[19])
		if old != nil {
			most = math.Max(most, old.Exact.Dots[19])
		}
	}
	return most
}

// KindMoved is a kind of line with how much more it costs at the new rates, as the mean
// over all simulated cars, in minor units.
type KindMoved struct {
	Kind estimate.Kind
	More float64
}

// mostChanged is how many kinds of line Changed returns at most.
const mostChanged = 5

// Changed returns the kinds of line that changed most, by one major unit or more, and
// none where the two sides cannot be compared.
func (j *RatesComparison) Changed() (out []KindMoved) {
	if !j.Comparable() {
		return nil
	}
	for kind := range estimate.Kinds {
		more := 0.0
		for k := range j.new.cars {
			now, before := j.new.cars[k].run, j.old.cars[k].run
			both := min(now.Cars(), before.Cars())
			more += now.Mean(0, kind, both) - before.Mean(0, kind, both)
		}
		out = append(out, KindMoved{kind, more / float64(len(j.new.cars))})
	}
	sortByFloat(out, func(m KindMoved) float64 { return -math.Abs(m.More) })
	n := 0
	for n < min(len(out), mostChanged) && money.Minor(math.Floor(math.Abs(out[n].More)+0.5)) >= money.Minor(math.Pow10(j.New().Rates.Currency.Digits)) {
		n++
	}
	return out[:n]
}
