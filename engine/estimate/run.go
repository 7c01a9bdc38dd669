package estimate

import (
	"underpaint/engine/car"
	"underpaint/engine/damage"
	"underpaint/engine/money"
	"underpaint/engine/pricing"
)

// Accuracy says when a range is good enough.
type Accuracy struct {
	// ShareOfWidth is the greatest standard error of either end, as a share of
	// the width of the range.
	ShareOfWidth float64
	Budget       int // the largest number of simulated cars
}

// StandardAccuracy makes twice the standard error about a hundredth of the width of the
// range, a fifth of the step to which the ends are rounded on screen (assumption).
var StandardAccuracy = Accuracy{ShareOfWidth: 0.006, Budget: 6 << 10}

// Randomisations is the number of independent parts of a run. Their spread gives the
// standard errors.
const Randomisations = 16

// Block is the number of simulated cars that one step adds to a run. First is the number
// of cars behind a first range, a quarter of the first block: its standard errors are
// about twice as large, and it is ready in a quarter of the time.
const (
	Block = 16 * Randomisations
	First = Block / 4
)

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
	AnotherBodyKind // everything to do with another body, where the job is done on one
	Tax             // on top of the total
	Kinds
)

// KindIDs name them in replies.
var KindIDs = [Kinds]string{"strip_and_survey", "metal", "prep", "body", "paint", "fit", "materials", "parts", "sent_out", "supplies", "another_body", "tax"}

// row holds the results of every simulated car at one standard: all replicates of a car,
// then those of the next.
type row struct {
	table    *pricing.Table
	uniforms *pricing.Uniforms
	bill     *pricing.Bill
	total    []int64 // minor units
	hours    []int64 // thousandths
	weeks    []int64 // thousandths
	metal    []int64 // thousandths of metalwork after the strip
	rise     []int64 // minor units that are there because prices rise; empty where none does
	fitting  []int64 // what bought parts that do not come as they should cost more
	kinds    [Kinds][]int64
	weighed  []pricing.AnotherBody // empty where the shop offers none
	replaced int64                 // cm², of all replicates of all cars together
	known    ends                  // of the first knownAt replicates, so that asking again costs nothing
	knownAt  int                   // in replicates
	ordered  []int32               // cars by price, once asked for
}

// Run is a growing set of simulated cars, priced at one or more standards.
type Run struct {
	model      *damage.Model
	sampler    *sampler
	car        *damage.Car
	rows       []row
	cars       int
	replicates int     // of each car
	holed      []int32 // by item: cars in which it is rusted through or gone
	zone       []int32 // by zone: cars in which any of its items is
	own        []int32 // by zone: those in which every such item has a cause of its own
	part       []int32 // by part: cars in which any of its items is
	seen       []bool
	rusted     []bool // by zone: the last car has such an item without a cause of its own

	memory *memory // nil if the run does not keep the damage of its cars
}

// NewRun starts a run without cars.
func NewRun(model *damage.Model, tables []*pricing.Table, seed uint64) *Run {
	b := model.Body
	r := &Run{model: model, car: model.NewCar(), replicates: Replicates, holed: make([]int32, len(b.Items)),
		zone: make([]int32, len(b.Zones)), own: make([]int32, len(b.Zones)), part: make([]int32, len(b.Parts)), seen: make([]bool, len(b.Zones)+len(b.Parts)), rusted: make([]bool, len(b.Zones))}
	works := 0
	for _, t := range tables {
		r.rows = append(r.rows, row{table: t, uniforms: t.NewUniforms(), bill: t.NewBill()})
		works = max(works, r.rows[len(r.rows)-1].uniforms.Count())
	}
	r.sampler = newSampler(model, seed, works)
	r.sampler.reckon(tables...)
	return r
}

// Cars is the number of simulated cars so far.
func (r *Run) Cars() int { return r.cars }

// Rows is the number of standards priced.
func (r *Run) Rows() int { return len(r.rows) }

// Begin simulates the first cars of the first block, if there are none yet.
func (r *Run) Begin() {
	if r.cars == 0 {
		r.addTo(First)
	}
}

// Add simulates the remaining cars of a block that was begun, or one more block.
func (r *Run) Add() { r.addTo(r.cars - r.cars%Block + Block) }

// addTo simulates cars until the run has the given number. Car n belongs to randomisation
// n mod Randomisations.
func (r *Run) addTo(cars int) {
	for n := r.cars; n < cars; n++ {
		z := r.sampler.draw(n, r.car)
		r.countHoles()
		if r.memory != nil {
			r.memory.add(r.car)
		}
		for k := range r.rows {
			r.sampler.priceReplicates(n, r.car, z, r.replicates, &r.rows[k])
		}
	}
	r.cars = cars
}

func (r *Run) countHoles() {
	clear(r.seen)
	clear(r.rusted)
	zones := len(r.zone)
	for i, k := range r.car.Condition {
		if k < 4 {
			continue
		}
		p := r.model.Body.Items[i].Part
		r.holed[i]++
		z := r.model.Body.Parts[p].Zone
		r.rusted[z] = r.rusted[z] || !r.car.OwnCause[i]
		if !r.seen[z] {
			r.seen[z] = true
			r.zone[z]++
		}
		if !r.seen[zones+p] {
			r.seen[zones+p] = true
			r.part[p]++
		}
	}
	for z := range r.zone {
		if r.seen[z] && !r.rusted[z] {
			r.own[z]++
		}
	}
}

func (one *row) keep() {
	b := one.bill
	hours := int64(0)
	for t := range b.AfterHours {
		hours += b.StripHours[t] + b.AfterHours[t]
	}
	one.replaced += int64(float64(b.ReplacedM2*1e4) + 0.5)
	one.total = append(one.total, int64(b.Total))
	one.hours = append(one.hours, hours)
	one.metal = append(one.metal, b.AfterHours[car.Metal])
	if one.table.DrawsSupply() {
		one.fitting = append(one.fitting, int64(b.Fitting))
	}
	one.weeks = append(one.weeks, int64(float64(b.Weeks*1000)+0.5))
	if one.table.Rises() {
		one.rise = append(one.rise, int64(b.Rise))
	}
	amounts := [Kinds]money.Minor{StripStage: b.Strip, Materials: b.Materials + b.Consumables, Parts: b.Parts,
		SentOut: b.SentOut, Supplies: b.Supplies + b.Least, AnotherBodyKind: b.AnotherBody, Tax: b.Tax}
	for t, v := range b.Labour {
		amounts[MetalLabour+Kind(t)] = v
	}
	for k, v := range amounts {
		one.kinds[k] = append(one.kinds[k], int64(v))
	}
	if one.table.OffersAnotherBody() {
		one.weighed = append(one.weighed, b.Another)
	}
}

// Settled reports whether both ends of every row are as accurate as a asks.
func (r *Run) Settled(a Accuracy) bool {
	if r.cars < 4*Block {
		return false
	}
	for k := range r.rows {
		ends := r.rows[k].ends(r.replicates)
		if w := ends.high - ends.low; ends.seLow > a.ShareOfWidth*w || ends.seHigh > a.ShareOfWidth*w {
			return false
		}
	}
	return true
}

// Settle adds cars until the run is settled or the budget is spent, and reports whether
// it is settled.
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

// Model returns the model that the cars are drawn from.
func (r *Run) Model() *damage.Model { return r.model }
