package estimate

import (
	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/damage"
	"underpaint/engine/money"
	"underpaint/engine/work"
)

// Accuracy says when a range is good enough.
type Accuracy struct {
	// ShareOfWidth is the greatest standard error of either end, as a share of
	// the width of the range.
	ShareOfWidth float64
	Budget       int // the most imagined cars
}

// StandardAccuracy makes twice the standard error about a hundredth of the
// width, a fifth of the step to which ends are rounded on screen (assumption).
var StandardAccuracy = Accuracy{ShareOfWidth: 0.006, Budget: 1 << 16}

// Randomisations is how many independent parts a run is dealt into; their
// spread gives the standard errors.
const Randomisations = 16

// Block is the number of imagined cars that one step adds to a run.
const Block = 64 * Randomisations

// Kind is a kind of line of the bill.
type Kind int

// The kinds of line, in the order of the bill.
const (
	StripStage Kind = iota
	MetalLabour
	PrepLabour
	BodyLabour
	PaintLabour
	FitLabour
	Materials
	Parts
	SentOut
	Supplies
	Tax // on top of the total
	Kinds
)

// KindIDs name them in replies.
var KindIDs = [Kinds]string{"strip_and_survey", "metal", "prep", "body", "paint", "fit", "materials", "parts", "sent_out", "supplies", "tax"}

// row is what is kept of every imagined car at one standard.
type row struct {
	table   *work.Table
	u       *work.Uniforms
	bill    *work.Bill
	total   []int64 // minor units, by car
	hours   []int64 // thousandths
	weeks   []int64 // thousandths
	metal   []int64 // thousandths of metalwork after the strip
	kinds   [Kinds][]int64
	known   ends // as of the first knownAt cars, so that asking again costs nothing
	knownAt int
	ordered []int32 // cars by price, once asked for
}

// Run is a growing set of imagined cars, priced at one or more standards.
type Run struct {
	Seed uint64

	model *damage.Model
	car   *damage.Car
	rows  []row
	cars  int
	holed []int32 // by item: cars in which it is rusted through or gone
	zone  []int32 // by zone: cars in which anything there is
	part  []int32 // by part
	seen  []bool

	memory *memory // nil = what each car was like is let go
}

// NewRun starts a run without cars.
func NewRun(model *damage.Model, tables []*work.Table, seed uint64) *Run {
	b := model.Body
	r := &Run{Seed: seed, model: model, car: model.NewCar(), holed: make([]int32, len(b.Items)),
		zone: make([]int32, len(b.Zones)), part: make([]int32, len(b.Parts)), seen: make([]bool, len(b.Zones)+len(b.Parts))}
	for _, t := range tables {
		r.rows = append(r.rows, row{table: t, u: t.NewUniforms(), bill: t.NewBill()})
	}
	return r
}

// Cars is the number of imagined cars so far.
func (r *Run) Cars() int { return r.cars }

// Rows is the number of standards priced.
func (r *Run) Rows() int { return len(r.rows) }

// spread keeps the seeds of neighbouring cars far apart (the odd number nearest
// to 2^64 over the golden ratio).
const spread = 0x9E3779B97F4A7C15

// Add imagines one more block of cars. Car n belongs to randomisation
// n mod Randomisations.
func (r *Run) Add() {
	for n := r.cars; n < r.cars+Block; n++ {
		drawCar(r.model, r.Seed, n, r.car)
		r.countHoles()
		if r.memory != nil {
			r.memory.add(r.car)
		}
		for k := range r.rows {
			one := &r.rows[k]
			priceCar(r.model, one.table, r.Seed, n, r.car, one.u, one.bill)
			one.keep()
		}
	}
	r.cars += Block
}

// drawCar fills c with car n of a seed; priceCar prices it. Every table sees the
// same uniforms.
func drawCar(model *damage.Model, seed uint64, n int, c *damage.Car) {
	damaged := chance.NewStream(seed, uint64(2*n+1)*spread)
	model.Draw(&damaged, c)
}

func priceCar(model *damage.Model, table *work.Table, seed uint64, n int, c *damage.Car, u *work.Uniforms, b *work.Bill) {
	fillCar(seed, n, u)
	table.Do(c, model.Levels[c.Level].LastClimate, u, b)
}

// fillCar fills in what the work on car n of a seed takes.
func fillCar(seed uint64, n int, u *work.Uniforms) {
	priced := chance.NewStream(seed, uint64(2*n+2)*spread)
	u.Fill(&priced)
}

// Imagine shows the first n cars of a seed to each, one after another, with what
// they take and cost: the same cars as those of a [Run], of which nothing is kept.
// With a nil table the cars are not priced.
func Imagine(model *damage.Model, table *work.Table, seed uint64, n int, each func(n int, c *damage.Car, b *work.Bill)) {
	c := model.NewCar()
	var u *work.Uniforms
	var bill *work.Bill
	if table != nil {
		u, bill = table.NewUniforms(), table.NewBill()
	}
	for k := range n {
		drawCar(model, seed, k, c)
		if table != nil {
			priceCar(model, table, seed, k, c, u, bill)
		}
		each(k, c, bill)
	}
}

func (r *Run) countHoles() {
	clear(r.seen)
	zones := len(r.zone)
	for i, k := range r.car.Condition {
		if k < 4 {
			continue
		}
		p := r.model.Body.Items[i].Part
		r.holed[i]++
		if z := r.model.Body.Parts[p].Zone; !r.seen[z] {
			r.seen[z] = true
			r.zone[z]++
		}
		if !r.seen[zones+p] {
			r.seen[zones+p] = true
			r.part[p]++
		}
	}
}

func (one *row) keep() {
	b := one.bill
	hours := int64(0)
	for t := range b.AfterHours {
		hours += b.StripHours[t] + b.AfterHours[t]
	}
	one.total = append(one.total, int64(b.Total))
	one.hours = append(one.hours, hours)
	one.metal = append(one.metal, b.AfterHours[car.Metal])
	one.weeks = append(one.weeks, int64(b.Weeks*1000+0.5))
	amounts := [Kinds]money.Minor{StripStage: b.Strip, Materials: b.Materials + b.Consumables, Parts: b.Parts,
		SentOut: b.SentOut, Supplies: b.Supplies + b.Least, Tax: b.Tax}
	for t, v := range b.Labour {
		amounts[MetalLabour+Kind(t)] = v
	}
	for k, v := range amounts {
		one.kinds[k] = append(one.kinds[k], int64(v))
	}
}

// Settled says whether both ends of every row are as good as asked.
func (r *Run) Settled(a Accuracy) bool {
	if r.cars < 4*Block {
		return false
	}
	for k := range r.rows {
		ends := r.rows[k].ends()
		if w := ends.high - ends.low; ends.seLow > a.ShareOfWidth*w || ends.seHigh > a.ShareOfWidth*w {
			return false
		}
	}
	return true
}

// Settle adds cars until the run is settled or its budget is spent, and says
// which.
func (r *Run) Settle(a Accuracy) (settled bool) {
	for {
		if r.Settled(a) {
			return true
		}
		if r.cars+Block > a.Budget {
			return false
		}
		r.Add()
	}
}

// explained shows the first n cars of a seed to each, with every line of their work
// written down.
func explained(model *damage.Model, table *work.Table, seed uint64, n int, each func(n int, c *damage.Car, b *work.Bill, lines []work.Line)) {
	c, u, bill := model.NewCar(), table.NewUniforms(), table.NewBill()
	for k := range n {
		drawCar(model, seed, k, c)
		fillCar(seed, k, u)
		each(k, c, bill, table.Explain(c, model.Levels[c.Level].LastClimate, u, bill))
	}
}

// Model is the model that the cars are drawn from.
func (r *Run) Model() *damage.Model { return r.model }
