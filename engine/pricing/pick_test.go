package pricing

import (
	"math"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/chance"
)

// TestWayEnds compares picking by ends with picking by chances, at random uniforms and
// on both sides of every end: for the starting figures, for chances that fall short of
// 1 by rounding, and for ways that are never picked.
func TestWayEnds(t *testing.T) {
	all, err := StartingWays()
	if err != nil {
		t.Fatal(err)
	}
	odd := [car.Conditions][car.Ways]float64{{1}, {0, 0, 0, 0, 0, 1}, {0, 1. / 3, 1. / 3, 0, 1. / 3}, {.1, .1, .1, .1, .1, .4999999}, {.7, 0, .3}, {}}
	tables := []*[car.Conditions][car.Ways]float64{&odd}
	for s := range all {
		for kind := range all[s] {
			tables = append(tables, &all[s][kind])
		}
	}
	s, seen := chance.NewStream(5, 6), [car.Ways]int{}
	for _, table := range tables {
		ends := newWayEnds(table)
		for k := range table {
			check := func(u float64) {
				got, want := ends.way(int8(k), u), pickWay(&table[k], u)
				if got != want {
					t.Fatalf("chances %v at %v: way %d, want %d", table[k], u, got, want)
				}
				seen[want]++
			}
			for range 500 {
				check(s.Uniform())
			}
			for _, end := range ends[k] {
				check(math.Min(end, 1-0x1p-53))
				check(math.Max(0x1p-60, math.Nextafter(math.Min(end, 1), 0)))
			}
		}
	}
	for w, n := range seen {
		if n == 0 {
			t.Errorf("way %d was never picked", w)
		}
	}
}
