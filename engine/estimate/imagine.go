package estimate

import (
	"underpaint/engine/chance"
	"underpaint/engine/damage"
	"underpaint/engine/work"
)

// spread keeps the seeds of neighbouring cars far apart (the odd number nearest
// to 2^64 over the golden ratio).
const spread = 0x9E3779B97F4A7C15

// pointStream keeps the scrambles of the points apart from the cars.
const pointStream = 0x50B01

// maker imagines car after car. Car n is point n/Randomisations of randomisation
// n mod Randomisations; what a point leaves open, single items and single pieces of
// work, comes from a stream of the car's own.
type maker struct {
	seed   uint64
	model  *damage.Model
	shared *damage.Shared
	points [Randomisations]chance.Points
	point  []float64 // the two whole-car factors of hours, then what is shared of the damage
	lead   []float64
}

// factors is how many coordinates of a point are whole-car factors of hours.
const factors = 2

func newMaker(model *damage.Model, seed uint64) *maker {
	m := &maker{seed: seed, model: model, shared: model.NewShared()}
	n := factors + m.shared.Coordinates()
	m.point, m.lead = make([]float64, n), make([]float64, m.shared.Coordinates()-1)
	s := chance.NewStream(seed, pointStream)
	for j := range m.points {
		m.points[j] = chance.NewPoints(n, &s)
	}
	return m
}

// draw fills c with car n and returns the uniforms of its factors of hours.
func (m *maker) draw(n int, c *damage.Car) (z [factors]float64) {
	m.points[n%Randomisations].At(uint32(n/Randomisations), m.point)
	m.shared.Uniforms(m.point[factors:], m.lead)
	s := chance.Led(m.lead, m.seed, uint64(2*n+1)*spread)
	m.model.Draw(&s, c)
	return [factors]float64(m.point)
}

// work is the stream for the work on car n. Every table sees the same one.
func (m *maker) work(n int) chance.Stream {
	return chance.NewStream(m.seed, uint64(2*n+2)*spread)
}

// fill fills in what the work on car n takes in its first turn.
func (m *maker) fill(n int, z [factors]float64, u *work.Uniforms) {
	s := m.work(n)
	u.Fill(&s)
	u.Car = z
}

// Imagine shows the first n cars of a seed to each, one after another, with what
// they take and cost: the same cars as those of a [Run], each in its first turn, of
// which nothing is kept. With a nil table the cars are not priced.
func Imagine(model *damage.Model, table *work.Table, seed uint64, n int, each func(n int, c *damage.Car, b *work.Bill)) {
	m, c := newMaker(model, seed), model.NewCar()
	var u *work.Uniforms
	var bill *work.Bill
	if table != nil {
		u, bill = table.NewUniforms(), table.NewBill()
	}
	for k := range n {
		z := m.draw(k, c)
		if table != nil {
			m.fill(k, z, u)
			table.Do(c, model.Levels[c.Level].LastClimate, u, bill)
		}
		each(k, c, bill)
	}
}

// explained is [Imagine] with every line of the work written down.
func explained(model *damage.Model, table *work.Table, seed uint64, n int, each func(n int, c *damage.Car, b *work.Bill, lines []work.Line)) {
	m, c, u, bill := newMaker(model, seed), model.NewCar(), table.NewUniforms(), table.NewBill()
	for k := range n {
		m.fill(k, m.draw(k, c), u)
		each(k, c, bill, table.Explain(c, model.Levels[c.Level].LastClimate, u, bill))
	}
}
