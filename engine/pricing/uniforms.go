package pricing

import (
	"underpaint/engine/car"
	"underpaint/engine/chance"
)

// Uniforms are the numbers in (0, 1) that one simulated car takes for its work: three
// per item, for the way, the hours of all its trades and the price of its part; one for
// each other line; two for the whole car. All are drawn whether needed or not, so that
// two tables filled from equal streams differ only where the tables do. Whatever is
// added later is drawn last, so that nothing before it moves.
//
// Doubt, Rise, Supply, Old and Another, which is for what comes from another car, are not
// among those that Fill draws: its callers give them streams of their own, so that a table
// without one of them prices the same car.
type Uniforms struct {
	Way, Hours, Price []float64 // by item
	Access, AccessPay []float64 // by access line
	Nut, NutHours     []float64
	Strip, After      []float64
	Sent              []float64
	Wire              float64    // consumables an hour of metalwork
	Week, Wait        float64    // hours a week, weeks of waiting
	Car               [2]float64 // whole-car factors of hours
	Found             []float64  // by finding of the whole car
	Doubt             float64    // what the figures may have wrong about this car
	Rise              float64    // how fast prices rise
	Supply            SupplyUniforms
	Old               []float64 // old damage, see OldUniforms
	Another           [AnotherUniforms]float64
}

// NewUniforms allocates the uniforms of one car. The numbers of access lines and strip
// steps depend on the scope; the sizes here are those of the table.
func (t *Table) NewUniforms() *Uniforms {
	n := len(t.items)
	u := &Uniforms{
		Way: make([]float64, n), Hours: make([]float64, n), Price: make([]float64, n),
		Access: make([]float64, len(t.accesses)), AccessPay: make([]float64, len(t.accesses)),
		Nut: make([]float64, len(t.nuts)), NutHours: make([]float64, len(t.nuts)),
		Strip: make([]float64, t.stripSteps()), After: make([]float64, len(t.after)),
		Sent:  make([]float64, len(t.Rates.SentOut.Work)),
		Found: make([]float64, t.fig.perCar()),
		Doubt: 0.5, Rise: 0.5, Supply: SupplyUniforms{Source: 0.5, State: 0.5, Assembly: 0.5},
		Old: make([]float64, OldUniforms(t.Body)),
	}
	for k := range u.Old {
		u.Old[k] = 0.5
	}
	for k := range u.Another {
		u.Another[k] = 0.5
	}
	return u
}

// Fill draws all uniforms of one car, starting with those common to every standard and
// scope.
func (u *Uniforms) Fill(s *chance.Stream) {
	u.Car[0], u.Car[1] = s.Uniform(), s.Uniform()
	u.Wire, u.Week, u.Wait = s.Uniform(), s.Uniform(), s.Uniform()
	for _, list := range u.lists() {
		s.Fill(list)
	}
}

// lists returns the lists of uniforms in the order of Fill.
func (u *Uniforms) lists() [11][]float64 {
	return [...][]float64{u.Way, u.Hours, u.Price, u.Sent, u.Strip, u.Access, u.AccessPay, u.Nut, u.NutHours, u.After, u.Found}
}

// Count is the number of uniforms.
func (u *Uniforms) Count() int {
	n := len(u.Car) + 3
	for _, list := range u.lists() {
		n += len(list)
	}
	return n
}

// q90 is the 90th percentile of a standard normal, the unit in which ThreePoint.At
// measures.
var q90 = chance.NormalQuantile(0.9)

// scaledDeviate turns a uniform into the argument of ThreePoint.At: its normal deviate,
// in units of the deviate at 0.9.
func scaledDeviate(u float64) float64 { return chance.NormalQuantile(u) / q90 }

// factors returns the two whole-car factors of hours, by trade: how hard the work on
// this car goes, in metal and in all other trades. Their median is 1, until hours
// worked in the strip move them.
func (t *Table) factors(u *Uniforms) (f [car.Trades]float64) {
	metal := chance.NormalQuantile(u.Car[0])
	own := chance.NormalQuantile(u.Car[1])
	if t.decided != nil && t.decided.stripKnown {
		metal, own = t.decided.factors.at(metal, own)
	}
	other := float64(t.fig.rho*metal) + float64(t.money.rhoRest*own)
	rest := chance.Exp(t.fig.sdOther * other)
	for trade := range f {
		f[trade] = rest
	}
	f[car.Metal] = chance.Exp(t.fig.sdMetal * metal)
	return f
}

// Kind says what a uniform of [Uniforms.Fill] decides.
type Kind int

// What uniforms decide.
const (
	OfWholeCar Kind = iota // how hard the work on this car goes
	OfHours                // hours of single pieces of work
	OfPrices               // prices of parts and of work sent out, wire and gas
	OfWays                 // what is done
	OfTime                 // weeks, which change no money
)

// Kinds lists what each uniform decides, in the order of Fill.
func (u *Uniforms) Kinds() (out []Kind) {
	out = append(out, OfWholeCar, OfWholeCar, OfPrices, OfTime, OfTime)
	add := func(k Kind, lists ...[]float64) {
		for _, list := range lists {
			for range list {
				out = append(out, k)
			}
		}
	}
	add(OfWays, u.Way)
	add(OfHours, u.Hours)
	add(OfPrices, u.Price, u.Sent)
	add(OfHours, u.Strip, u.Access)
	add(OfPrices, u.AccessPay)
	add(OfHours, u.Nut, u.NutHours, u.After, u.Found)
	return out
}
