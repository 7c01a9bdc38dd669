package estimate

import (
	"underpaint/engine/chance"
	"underpaint/engine/damage"
	"underpaint/engine/pricing"
)

// spread keeps the seeds of neighbouring cars far apart (the odd number nearest
// to 2^64 over the golden ratio).
const spread = 0x9E3779B97F4A7C15

// The streams of the points, which keep their scrambles and shifts apart from the cars
// and from each other; each randomisation of what stands last has one of its own.
const (
	pointStream  = 0x50B01
	matrixStream = 0x50B02
	partsStream  = 0x50C00
	workStream   = 0x50D00
)

// sampler imagines car after car. Car n is point n/Randomisations of randomisation
// n mod Randomisations: of scrambled Sobol points for what much hangs on, of a Latin
// hypercube for the single parts, and of another for the single pieces of work. What
// they leave open comes from a stream of the car's own.
type sampler struct {
	seed   uint64
	model  *damage.Model
	shared *damage.SharedFactors
	points [Randomisations]chance.Points // the two whole-car factors of hours, then what is shared of the damage
	parts  [Randomisations]*chance.Latin // what is each part's alone
	work   [Randomisations]*chance.Latin // the work
	point  []float64
	lead   []float64 // the first uniforms of the damage of a car
	tape   []float64 // all uniforms of its work
}

// factors is how many coordinates of a point are whole-car factors of hours.
const factors = 2

// newSampler prepares cars for work of so many uniforms, which may be 0.
func newSampler(model *damage.Model, seed uint64, works int) *sampler {
	m := &sampler{seed: seed, model: model, shared: model.NewSharedFactors(), tape: make([]float64, works)}
	n := factors + m.shared.Coordinates()
	m.point, m.lead = make([]float64, n), make([]float64, m.shared.Uniforms()+model.PartUniforms())
	s, matrices := chance.NewStream(seed, pointStream), chance.NewStream(seed, matrixStream)
	ofParts, ofWork := chance.NewMatrices(model.PartUniforms(), &matrices), chance.NewMatrices(works, &matrices)
	for j := range m.points {
		m.points[j] = chance.NewPoints(n, &s)
		shifts := chance.NewStream(seed, partsStream+uint64(j))
		m.parts[j] = ofParts.Shifted(&shifts)
		shifts = chance.NewStream(seed, workStream+uint64(j))
		m.work[j] = ofWork.Shifted(&shifts)
	}
	return m
}

// draw fills c with car n and returns the uniforms of its factors of hours.
func (m *sampler) draw(n int, c *damage.Car) (z [factors]float64) {
	j, k, shared := n%Randomisations, uint32(n/Randomisations), m.shared.Uniforms()
	m.points[j].At(k, m.point)
	m.shared.Fill(m.point[factors:], m.lead[:shared])
	m.parts[j].At(k, 0, m.lead[shared:])
	s := chance.StreamWithPrefix(m.lead, m.seed, uint64(2*n+1)*spread)
	m.model.Draw(&s, c)
	return [factors]float64(m.point)
}

// fill fills in what the work on car n takes in a replicate, without the whole-car factors.
// Every table sees the same numbers.
func (m *sampler) fill(n, replicate int, u *pricing.Uniforms) {
	tape := m.tape[:u.Count()]
	m.work[n%Randomisations].At(uint32(n/Randomisations), uint32(replicate), tape)
	s := chance.FixedStream(tape)
	u.Fill(&s)
}

// Imagine shows the first n cars of a seed to each, one after another, with what
// they take and cost: the same cars as those of a [Run], each in its first replicate, of
// which nothing is kept. With a nil table the cars are not priced.
func Imagine(model *damage.Model, table *pricing.Table, seed uint64, n int, each func(n int, c *damage.Car, b *pricing.Bill)) {
	if table == nil {
		m, c := newSampler(model, seed, 0), model.NewCar()
		for k := range n {
			m.draw(k, c)
			each(k, c, nil)
		}
		return
	}
	firstReplicates(model, table, seed, n, func(k int, c *damage.Car, u *pricing.Uniforms, bill *pricing.Bill) {
		table.Price(c, model.Histories[c.History].LastClimate, u, bill)
		each(k, c, bill)
	})
}

// explained is [Imagine] with every line of the work written down.
func explained(model *damage.Model, table *pricing.Table, seed uint64, n int, each func(n int, c *damage.Car, b *pricing.Bill, lines []pricing.Line)) {
	firstReplicates(model, table, seed, n, func(k int, c *damage.Car, u *pricing.Uniforms, bill *pricing.Bill) {
		each(k, c, bill, table.Explain(c, model.Histories[c.History].LastClimate, u, bill))
	})
}

// firstReplicates shows the first n cars to each with the uniforms of their first replicate.
func firstReplicates(model *damage.Model, table *pricing.Table, seed uint64, n int, each func(n int, c *damage.Car, u *pricing.Uniforms, b *pricing.Bill)) {
	c, u, bill := model.NewCar(), table.NewUniforms(), table.NewBill()
	m := newSampler(model, seed, u.Count())
	for k := range n {
		z := m.draw(k, c)
		m.fill(k, 0, u)
		u.Car = z
		each(k, c, u, bill)
	}
}
