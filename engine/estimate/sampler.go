package estimate

import (
	"slices"

	"underpaint/engine/chance"
	"underpaint/engine/damage"
	"underpaint/engine/pricing"
)

// spread keeps the streams of neighbouring cars far apart. It is the odd number nearest
// to 2^64 over the golden ratio.
const spread = 0x9E3779B97F4A7C15

// The stream numbers of the points. They keep the scrambles and shifts independent of the
// cars and of each other. Each randomisation adds its index to the last two, so it has its
// own streams.
const (
	pointStream  = 0x50B01
	matrixStream = 0x50B02
	partsStream  = 0x50C00
	workStream   = 0x50D00
	doubtMatrix  = 0x50E01
	doubtStream  = 0x50E10
	riseMatrix   = 0x52501
	riseStream   = 0x52510
	supplyMatrix = 0x50F01
	supplyStream = 0x50F10
	supplySeed   = 0x50F30
	oldMatrix    = 0x51001
	oldStream    = 0x51010

	anotherMatrix = 0x51101 // what comes from another car
	anotherStream = 0x51110
)

// sampler simulates one car after another. Car n is point n/Randomisations of
// randomisation n mod Randomisations. Scrambled Sobol points supply the few factors that
// matter most, one Latin hypercube the single parts, and another the single pieces of
// work. The car's own stream supplies the rest.
type sampler struct {
	seed   uint64
	model  *damage.Model
	shared *damage.SharedFactors
	points [Randomisations]chance.Points // the two whole-car factors of hours, then the shared factors of the damage
	parts  hypercubes                    // the damage of single parts
	work   hypercubes                    // the single pieces of work
	doubts hypercubes                    // what the figures may have wrong about the car
	rises  hypercubes                    // how fast prices rise
	supply hypercubes                    // how the parts of the car come
	old    hypercubes                    // old damage and the work on it; unmade where no table reckons with it
	others hypercubes                    // what comes from another car
	point  []float64
	lead   []float64 // the first uniforms of the damage of a car
	tape   []float64 // all uniforms of its work
}

// factors is how many coordinates of a point are whole-car factors of hours.
const factors = 2

// newSampler makes a sampler for work that takes the given number of uniforms, which may
// be 0.
func newSampler(model *damage.Model, seed uint64, works int) *sampler {
	m := &sampler{seed: seed, model: model, shared: model.NewSharedFactors(), tape: make([]float64, works)}
	n := factors + m.shared.Coordinates()
	m.point, m.lead = make([]float64, n), make([]float64, m.shared.Uniforms()+model.PartUniforms())
	s, matrices := chance.NewStream(seed, pointStream), chance.NewStream(seed, matrixStream)
	ofParts, ofWork := chance.NewMatrices(model.PartUniforms(), &matrices), chance.NewMatrices(works, &matrices)
	m.parts, m.work = shiftedHypercubes(ofParts, seed, partsStream), shiftedHypercubes(ofWork, seed, workStream)
	m.doubts = newHypercubes(seed, doubtMatrix, doubtStream, 1)
	m.rises = newHypercubes(seed, riseMatrix, riseStream, 1)
	m.supply = newHypercubes(seed, supplyMatrix, supplyStream, supplyFactors)
	m.others = newHypercubes(seed, anotherMatrix, anotherStream, pricing.AnotherUniforms)
	for j := range m.points {
		m.points[j] = chance.NewPoints(n, &s)
	}
	return m
}

// draw fills c with car n and returns the uniforms of its whole-car factors of hours.
func (m *sampler) draw(n int, c *damage.Car) (z [factors]float64) {
	j, k, shared := n%Randomisations, uint32(n/Randomisations), m.shared.Uniforms()
	m.points[j].At(k, m.point)
	m.shared.Fill(m.point[factors:], m.lead[:shared])
	m.parts.at(n, 0, m.lead[shared:])
	s := chance.StreamWithPrefix(m.lead, m.seed, uint64(2*n+1)*spread)
	m.model.Draw(&s, c)
	return [factors]float64(m.point)
}

// fill sets the uniforms of the work on car n in one replicate, except the whole-car
// factors. Every table gets the same numbers.
func (m *sampler) fill(n, replicate int, u *pricing.Uniforms) {
	tape := m.tape[:u.Count()]
	m.work.at(n, replicate, tape)
	s := chance.FixedStream(tape)
	u.Fill(&s)
	if m.old.made() {
		m.old.at(n, replicate, u.Old)
	}
}

// reckon prepares the uniforms of old damage if a table reckons with it.
func (m *sampler) reckon(tables ...*pricing.Table) {
	if !slices.ContainsFunc(tables, func(t *pricing.Table) bool { return t.Reckoning() != nil }) {
		return
	}
	m.old = newHypercubes(m.seed, oldMatrix, oldStream, pricing.OldUniforms(m.model.Body))
}

// doubt is the uniform of what the figures may have wrong about car n.
func (m *sampler) doubt(n int) float64 {
	var u [1]float64
	m.doubts.at(n, 0, u[:])
	return u[0]
}

// rise is the uniform of how fast prices rise while the work on car n is done.
func (m *sampler) rise(n int) float64 {
	var u [1]float64
	m.rises.at(n, 0, u[:])
	return u[0]
}

// supplyFactors is how many uniforms of how parts come are of the whole car.
const supplyFactors = 3

// supplied are the uniforms of how the parts of car n come in one replicate. Those of the
// whole car fall once into every quarter over the four.
func (m *sampler) supplied(n, replicate int) pricing.SupplyUniforms {
	var u [supplyFactors]float64
	m.supply.at(n, replicate, u[:])
	return pricing.SupplyUniforms{Source: u[0], State: u[1], Assembly: u[2], Seed: chance.Hash(m.seed+supplySeed, uint64(n*hourReplicates+replicate))}
}

// another sets the uniforms of what comes from another car, in one replicate of the work
// on car n.
func (m *sampler) another(n, replicate int, u *pricing.Uniforms) {
	m.others.at(n, replicate, u.Another[:])
}

// Imagine simulates the first n cars of a seed and calls each with every car and its bill.
// They are the cars of a [Run] in their first replicate. The car and the bill are reused
// for the next car. With a nil table the cars are not priced and the bill is nil.
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

// explained is [Imagine] with every line of work on the bill.
func explained(model *damage.Model, table *pricing.Table, seed uint64, n int, each func(n int, c *damage.Car, b *pricing.Bill, lines []pricing.Line)) {
	firstReplicates(model, table, seed, n, func(k int, c *damage.Car, u *pricing.Uniforms, bill *pricing.Bill) {
		each(k, c, bill, table.Explain(c, model.Histories[c.History].LastClimate, u, bill))
	})
}

// firstReplicates calls each with the first n cars, the uniforms of their first replicate
// and a bill to fill.
func firstReplicates(model *damage.Model, table *pricing.Table, seed uint64, n int, each func(n int, c *damage.Car, u *pricing.Uniforms, b *pricing.Bill)) {
	c, u, bill := model.NewCar(), table.NewUniforms(), table.NewBill()
	m := newSampler(model, seed, u.Count())
	m.reckon(table)
	for k := range n {
		z := m.draw(k, c)
		m.fill(k, 0, u)
		u.Car, u.Doubt, u.Rise, u.Supply = z, m.doubt(k), m.rise(k), m.supplied(k, 0)
		m.another(k, 0, u)
		each(k, c, u, bill)
	}
}

// hypercubes are one Latin hypercube for each randomisation. Car n is point
// n/Randomisations of randomisation n mod Randomisations.
type hypercubes [Randomisations]*chance.Latin

// newHypercubes makes them for points of n numbers. matrices and shifts number the streams
// that the matrices and the shifts come from; each randomisation adds its index to shifts.
func newHypercubes(seed, matrices, shifts uint64, n int) hypercubes {
	s := chance.NewStream(seed, matrices)
	return shiftedHypercubes(chance.NewMatrices(n, &s), seed, shifts)
}

// shiftedHypercubes does the same with matrices that are already there.
func shiftedHypercubes(matrices *chance.Matrices, seed, shifts uint64) (h hypercubes) {
	for j := range h {
		s := chance.NewStream(seed, shifts+uint64(j))
		h[j] = matrices.Shifted(&s)
	}
	return h
}

// made says whether they were made, and not left out.
func (h *hypercubes) made() bool { return h[0] != nil }

// at sets u to the numbers of car n in one replicate of its work.
func (h *hypercubes) at(n, replicate int, u []float64) {
	h[n%Randomisations].At(uint32(n/Randomisations), uint32(replicate), u)
}
