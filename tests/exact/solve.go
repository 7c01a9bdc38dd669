package exact

import (
	"runtime"
	"sync"

	"underpaint/engine/exposure"

	"underpaint/tests/figures"
)

// solver holds what does not depend on theta or on the whole-car factors.
type solver struct {
	*Case
	grids  grids
	hour   factors // what an hour costs, by trade
	parts  []*partWork
	leaves []leafChances
	rust   [][][exposure.Readings]rustTable // [level][part]
	fails  []float64                        // by level
	weight []figures.ByState                // of level and repair state
	lines  *lines
	same   float64
	at     [][2]float64 // scores of the factors
	share  []float64
}

func (c *Case) solver() (*solver, error) {
	if err := c.check(); err != nil {
		return nil, err
	}
	s := &solver{Case: c, grids: c.grids(), same: c.sameForAll()}
	for trade := range s.hour {
		s.hour[trade] = c.anHour(trade)
	}
	var err error
	if s.lines, err = c.lines(); err != nil {
		return nil, err
	}
	for p := range c.Known.Body.Parts {
		one, err := c.partWork(&c.Known.Body.Parts[p])
		if err != nil {
			return nil, err
		}
		s.parts, s.leaves = append(s.parts, one), append(s.leaves, c.Figures.leafChances(&c.Known.Body.Parts[p]))
	}
	s.setFactors()
	return s, s.setLevels()
}

// setFactors lays an even grid over the two scores of the whole car and leaves out the
// corners.
func (s *solver) setFactors() {
	metal, own := normalGrid(0.8, 4.8), normalGrid(1, 4)
	for a := range metal.at {
		for b := range own.at {
			if w := metal.weight[a] * own.weight[b]; w > 1e-6 {
				s.at, s.share = append(s.at, [2]float64{metal.at[a], own.at[b]}), append(s.share, w)
			}
		}
	}
}

func (s *solver) setLevels() error {
	said, err := s.Figures.damage.Answered(&s.Known)
	if err != nil {
		return err
	}
	for n, place := range lastPlaces(s.Known.Histories) {
		history := &s.Known.Histories[n]
		fails, err := s.Figures.damage.LeadFails(place)
		if err != nil {
			return err
		}
		s.fails = append(s.fails, fails)
		repair := s.Figures.damage.RepairPrior(history.AgeYears)
		for r := range repair {
			repair[r] *= history.Weight * said[r]
		}
		s.weight = append(s.weight, repair)
		var tables [][exposure.Readings]rustTable
		for p := range s.Known.Body.Parts {
			part := &s.Known.Body.Parts[p]
			var one [exposure.Readings]rustTable
			for r, mu := range history.Medians(part.Rust.M, part.Rust.B, part.Rust.Life, part.Splash, part.MM) {
				one[r] = s.rustTable(&s.grids, part, mu)
			}
			tables = append(tables, one)
		}
		s.rust = append(s.rust, tables)
	}
	return nil
}

// phi is the characteristic function, about centre, times the probability of everything
// that was seen, up to the scale of the likelihoods.
func (s *solver) phi(theta, centre float64) complex128 {
	sums := make([]complex128, len(s.at))
	next := make(chan int)
	var wait sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		wait.Go(func() {
			for n := range next {
				f := s.Figures.factorsAt(s.at[n][0], s.at[n][1])
				sums[n] = complex(s.share[n], 0) * s.lines.phi(theta, &f) * s.tree(theta, &f)
			}
		})
	}
	for n := range s.at {
		next <- n
	}
	close(next)
	wait.Wait()
	sum := complex(0, 0)
	for _, v := range sums {
		sum += v
	}
	return sum * turned([]float64{s.same - centre}, theta)[0]
}

// tree sums all items over all levels.
func (s *solver) tree(theta float64, f *factors) (sum complex128) {
	done := map[float64][]*costs{} // by the probability that a lead joint failed
	for level := range s.rust {
		items := done[s.fails[level]]
		if items == nil {
			items = s.items(theta, f, level)
			done[s.fails[level]] = items
		}
		for state, w := range s.weight[level] {
			sum += complex(w, 0) * s.grids.carMessage(s.arranged(items, level, state))
		}
	}
	return sum
}

// likeItem identifies items that are alike: one part, nothing seen.
type likeItem struct{ part, counted int }

// items returns the costs of every item, worked out once for those that are alike.
func (s *solver) items(theta float64, f *factors, level int) []*costs {
	done := map[likeItem]*costs{}
	out := make([]*costs, len(s.Known.Body.Items))
	for i := range out {
		_, counted := likelihoodOf(&s.Known, i)
		like := likeItem{s.Known.Body.Items[i].Part, counted}
		if done[like] == nil {
			c := s.parts[like.part].costs(theta, &s.hour, f, s.fails[level], counted)
			done[like] = &c
		}
		out[i] = done[like]
	}
	return out
}

// arranged arranges the items by group and pocket.
func (s *solver) arranged(items []*costs, level, state int) (groups [][][]*atItem) {
	body := s.Known.Body
	for g := range body.Groups {
		var pockets [][]*atItem
		for _, p := range body.Groups[g].Pockets {
			var pocket []*atItem
			for _, i := range body.Pockets[p].Items {
				seen, _ := likelihoodOf(&s.Known, i)
				part := body.Items[i].Part
				leaf, one := &s.leaves[part], &atItem{shape: s.shapeOf(&body.Parts[part])}
				for n, w := range leaf.ways[state] {
					one.ways = append(one.ways, atWay{s.rust[level][part][w.reading], leaf.given(items[i], seen, state, n, &s.Known.Histories[level])})
				}
				pocket = append(pocket, one)
			}
			pockets = append(pockets, pocket)
		}
		groups = append(groups, pockets)
	}
	return groups
}
