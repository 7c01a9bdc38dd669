package main

import (
	"underpaint/engine/car"
	"underpaint/engine/exposure"
)

// sweeps lists what grows inside the engine. Odds are conditioned on a survey of every
// item, unless the survey itself grows, because with nothing seen there is next to
// nothing to do.
func (g *growing) sweeps() ([]sweep, error) {
	var items, levels []int
	bodies, histories := map[int]*car.Body{}, map[int][]exposure.History{}
	for _, n := range []int{1, 2, 4, 8, 16} {
		b := quarters(g.body, n)
		items, bodies[len(b.Items)] = append(items, len(b.Items)), b
	}
	for _, n := range []int{1, 2, 5, 10, 20, 40} {
		l, err := equal(n)
		if err != nil {
			return nil, err
		}
		levels, histories[len(l)] = append(levels, len(l)), l
	}
	all := len(g.body.Items)
	return []sweep{
		{name: "odds", over: "items of the body", sizes: items, base: 2, work: func(n int) (func() error, error) {
			return odds(bodies[n], g.histories, n, 0)
		}},
		{name: "odds", over: "alternatives of its history", sizes: levels, base: 3, work: func(n int) (func() error, error) {
			return odds(g.body, histories[n], all, 0)
		}},
		{name: "odds", over: "records of a survey", sizes: []int{0, all / 8, all / 4, all / 2, all}, base: 4, work: func(n int) (func() error, error) {
			return odds(g.body, g.histories, n, 0)
		}},
		{name: "odds", over: "sides whose door gaps were checked", sizes: []int{0, 1, 2}, work: func(n int) (func() error, error) {
			return odds(g.body, g.histories, all, n)
		}},
		{name: "drawing and pricing a car", over: "items of the body", sizes: items, base: 2, work: func(n int) (func() error, error) {
			return g.drawing(bodies[n], g.histories)
		}},
		{name: "drawing and pricing a car", over: "alternatives of its history", sizes: levels, base: 3, work: func(n int) (func() error, error) {
			return g.drawing(g.body, histories[n])
		}},
		{name: "a range", over: "simulated cars", sizes: []int{256, 512, 1024, 2048, 4096, 6144}, base: 2, work: g.ranging},
	}, nil
}
