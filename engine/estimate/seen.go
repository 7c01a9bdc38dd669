package estimate

import (
	"underpaint/engine/damage"
)

// memory holds the damage of every simulated car. The bytes of one item are contiguous
// over all cars, because a check reads one item of every car.
type memory struct {
	packed        [][]byte // by item, then by car
	level, repair []int32  // by car
}

// Remember sets whether the run keeps the damage of every car, one byte per item, so that
// [Run.IfKnown] can weight the cars afterwards. A run that remembers simulates the work on
// each car only once, because the worth of a check needs many cars rather than much about
// each. Call Remember before the first [Run.Add]: it panics once the run has cars.
func (r *Run) Remember(on bool) {
	if r.cars > 0 {
		panic("engine: internal error: a run asked to remember cars it has already let go")
	}
	r.memory, r.replicates = nil, Replicates
	if on {
		r.replicates = 1
		r.memory = &memory{packed: make([][]byte, len(r.model.Body.Items))}
	}
}

// add keeps one car.
func (m *memory) add(c *damage.Car) {
	for i, k := range c.Condition {
		m.packed[i] = append(m.packed[i], Pack(int(k), c.Finding[i], c.Dent[i]))
	}
	m.level, m.repair = append(m.level, int32(c.History)), append(m.repair, int32(c.Repair))
}

// packs bounds the packed bytes: they are all below it.
const packs = 64

// Pack puts condition (0 = sound), finding and filler over a dent into one byte
// below 64. A worse condition always makes a greater byte.
func Pack(condition int, f damage.Finding, dent bool) byte {
	b := byte(condition)<<3 | byte(f)<<1
	if dent {
		b |= 1
	}
	return b
}

// Unpack is the inverse of Pack.
func Unpack(b byte) (condition int, f damage.Finding, dent bool) {
	return int(b >> 3), damage.Finding(b >> 1 & 3), b&1 == 1
}

// Seen is one remembered car.
type Seen struct {
	memory *memory
	car    int
}

// Packed is the damage of item i, packed by [Pack].
func (s Seen) Packed(i int) byte { return s.memory.packed[i][s.car] }

// Condition is the condition of item i, 0 = sound.
func (s Seen) Condition(i int) int { return int(s.Packed(i) >> 3) }

// Finding is what an earlier repair left on item i.
func (s Seen) Finding(i int) damage.Finding {
	_, f, _ := Unpack(s.Packed(i))
	return f
}

// Dent reports whether item i has filler over a dent.
func (s Seen) Dent(i int) bool { return s.Packed(i)&1 == 1 }

// Level is the history level of the car, an index into Model.Levels.
func (s Seen) Level() int { return int(s.memory.level[s.car]) }

// Repair is the state of the car's earlier repairs, an index into
// damage.RepairStateIDs.
func (s Seen) Repair() int { return int(s.memory.repair[s.car]) }
