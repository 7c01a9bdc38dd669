package network

import "math/bits"

// rowCache keeps pocket rows by number, one per slot; a second row that hashes to the
// same slot replaces the first. It starts small, doubles while misses continue, and
// never grows past most slots. So a posterior sampled a few times stays cheap and one
// sampled for long stays bounded. A dropped row is worked out again with the same bits.
type rowCache struct {
	width  int // values per row
	most   int // limit on the number of slots, a power of two
	shift  uint
	misses int
	key    []int // row number + 1 by slot; 0 = empty
	value  []float64
}

const (
	fewestSlots = 1 << 9
	mostValues  = 1 << 18 // 2 MB, for each group and width
)

// slotsOf is the most rows of a width to keep: 2^14, or fewer if they are wide.
func slotsOf(width int) int {
	slots := 1 << 14
	for slots > 1 && slots*width > mostValues {
		slots /= 2
	}
	return slots
}

// at returns the slot of row n and whether it already holds that row. If not, the
// caller must fill it.
func (c *rowCache) at(n int) (row []float64, known bool) {
	if len(c.key) > 0 {
		if slot := c.slot(n); c.key[slot] == n+1 {
			return c.value[slot*c.width : (slot+1)*c.width], true
		}
	}
	if c.misses >= len(c.key) && len(c.key) < c.most {
		c.grow()
	}
	slot := c.slot(n)
	c.key[slot] = n + 1
	c.misses++
	return c.value[slot*c.width : (slot+1)*c.width], false
}

// slot is multiplicative hashing by 2^64 ÷ golden ratio (D. E. Knuth, "The Art of
// Computer Programming" 3, 6.4). It spreads the numbers 0 to n-1 so evenly that with
// three slots per number no two collide, and the cache stops growing.
func (c *rowCache) slot(n int) int {
	return int(uint64(n) * 0x9e3779b97f4a7c15 >> c.shift)
}

// grow doubles the slots and drops all rows, which are worked out again on demand.
func (c *rowCache) grow() {
	slots := min(c.most, max(fewestSlots, 2*len(c.key)))
	c.key, c.value = make([]int, slots), make([]float64, slots*c.width)
	c.shift = uint(64 - bits.TrailingZeros(uint(slots)))
	c.misses = 0
}
