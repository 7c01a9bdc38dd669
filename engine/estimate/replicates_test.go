package estimate

import (
	"slices"
	"testing"
)

// TestHourReplicates: over the hour replicates of a car, every uniform of its work falls
// once into each quarter, and tables that take different numbers of uniforms get the same
// ones.
func TestHourReplicates(t *testing.T) {
	run := testRun(t, nil)
	u, other := run.rows[0].uniforms, run.rows[0].table.NewUniforms()
	few := newSampler(run.model, 1, u.Count())
	many := newSampler(run.model, 1, u.Count()+20)
	for n := range 40 {
		met := make([][hourReplicates]bool, len(u.Way)+len(u.Hours)+len(u.Price))
		for h := range hourReplicates {
			few.fill(n, h, u)
			many.fill(n, h, other)
			all := slices.Concat(u.Way, u.Hours, u.Price)
			for k, v := range all {
				if quarter := &met[k][int(v*hourReplicates)]; *quarter {
					t.Fatalf("car %d, uniform %d: twice in one quarter", n, k)
				} else {
					*quarter = true
				}
			}
			if !slices.Equal(all, slices.Concat(other.Way, other.Hours, other.Price)) {
				t.Fatalf("car %d, turn %d: other numbers where more are asked", n, h)
			}
		}
	}
}

// TestPairs: the pairs of whole-car factors are a Latin hypercube on an orthogonal array
// (B. Tang, Journal of the American Statistical Association 88, 1993), whatever their
// shift. The four pairs of an hour replicate put one into each quarter of both factors.
// All sixteen put one into each sixteenth of both and into each square of a quarter by a
// quarter. Using the first factor twice breaks this.
func TestPairs(t *testing.T) {
	if n := doubles(pair); n != 0 {
		t.Errorf("%d pairs share a place", n)
	}
	for f := range factors {
		if n := doubles(func(z [factors]float64, h, i int) [factors]float64 {
			return [factors]float64{pair([factors]float64{z[0], z[0]}, h, i)[f], doubtOf(z[1], h, i)}
		}); n != 0 {
			t.Errorf("factor %d and doubt: %d pairs share a place", f, n)
		}
		if n := doubles(func(z [factors]float64, h, i int) [factors]float64 {
			return [factors]float64{pair([factors]float64{z[0], z[0]}, h, i)[f], riseOf(z[1], h, i)}
		}); n != 0 {
			t.Errorf("factor %d and rising prices: %d pairs share a place", f, n)
		}
	}
	if n := doubles(func(z [factors]float64, h, i int) [factors]float64 {
		return [factors]float64{doubtOf(z[0], h, i), riseOf(z[1], h, i)}
	}); n != 0 {
		t.Errorf("doubt and rising prices: %d pairs share a place", n)
	}
	if doubles(func(z [factors]float64, h, i int) [factors]float64 {
		p := pair(z, h, i)
		return [factors]float64{p[0], p[0]}
	}) == 0 {
		t.Error("twice the same factor passes")
	}
}

// doubles counts the pairs that fall into a place that already holds one.
func doubles(pair func(z [factors]float64, h, i int) [factors]float64) (n int) {
	type place struct{ what, at int }
	// Even shifts keep whole quarters and sixteenths together.
	for move := range Replicates * Replicates {
		z := [factors]float64{(float64(move%Replicates) + 0.5) / Replicates, (float64(move/Replicates) + 0.5) / Replicates}
		met := map[place]bool{}
		meet := func(what, at int) {
			if met[place{what, at}] {
				n++
			}
			met[place{what, at}] = true
		}
		start := pair(z, 0, 0)
		for h := range hourReplicates {
			for i := range factorReplicates {
				p := pair(z, h, i)
				square := 0
				for d, v := range p {
					back := int(shifted(v, 1-start[d]+0.5/Replicates) * Replicates)
					meet(d, back)
					meet(10+10*h+d, back/factorReplicates)
					square = square*factorReplicates + back/factorReplicates
				}
				meet(2, square)
			}
		}
	}
	return n
}
