package network_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"underpaint/engine/network"
)

// batchedLeaf is a tableLeaf that is asked about several root states at once.
type batchedLeaf struct {
	tableLeaf
	asked *int
}

var _ network.BatchLeaf = batchedLeaf{}

func (l batchedLeaf) MultiplyBatch(r, states, p int, dst []float64) {
	*l.asked++
	width := len(dst) / states
	for s := range states {
		l.Multiply(r+s, p, dst[s*width:(s+1)*width])
	}
}

// inBatches returns the same network, in which two leaves out of three are asked in
// batches. Some likelihoods are far too small to be multiplied in plain float64.
func inBatches(r *rand.Rand, n network.Nested, asked *int) network.Nested {
	out := network.Nested{Root: n.Root, Batch: 2 + r.IntN(4)}
	count := 0
	for _, g := range n.Groups {
		group := network.Group{Weights: g.Weights}
		for _, p := range g.Pockets {
			pocket := network.Pocket{Weights: p.Weights}
			for _, leaf := range p.Leaves {
				if count++; count%3 != 0 {
					leaf = batchedLeaf{leaf.(tableLeaf), asked}
				}
				pocket.Leaves = append(pocket.Leaves, leaf)
			}
			group.Pockets = append(group.Pockets, pocket)
		}
		out.Groups = append(out.Groups, group)
	}
	return out
}

// TestBatchesChangeNothing checks that asking in batches, the last of which may be
// short, gives the same bits, including for evidence of any size and impossible states.
func TestBatchesChangeNothing(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 1))
	asked, compared := 0, 0
	for range 2000 {
		n := randomNested(r, 7)
		for _, g := range n.Groups {
			for _, p := range g.Pockets {
				for _, leaf := range p.Leaves {
					if r.IntN(2) == 0 {
						shrink(r, leaf.(tableLeaf))
					}
				}
			}
		}
		one, errOne := n.Condition()
		batched := inBatches(r, n, &asked)
		all, errAll := batched.Condition()
		if !errors.Is(errAll, errOne) {
			t.Fatalf("error %v, in batches %v", errOne, errAll)
		}
		if errOne != nil {
			continue
		}
		compared++
		if a, b := one.LogEvidence(), all.LogEvidence(); a != b {
			t.Fatalf("evidence %v, in batches of %d %v", a, batched.Batch, b)
		}
		for g := range n.Groups {
			for k := range n.Groups[g].Pockets {
				want := map[[3]int]float64{}
				one.Levels(g, k, func(r, p, q int, w float64) { want[[3]int{r, p, q}] = w })
				all.Levels(g, k, func(r, p, q int, w float64) {
					if want[[3]int{r, p, q}] != w {
						t.Fatalf("root %d, levels %d and %d: %v, in batches of %d %v", r, p, q, want[[3]int{r, p, q}], batched.Batch, w)
					}
					delete(want, [3]int{r, p, q})
				})
				if len(want) > 0 {
					t.Fatalf("batches of %d leave out %v", batched.Batch, want)
				}
			}
		}
	}
	if asked < 1000 || compared < 500 {
		t.Errorf("asked %d times in batches, compared %d networks: too few to test anything", asked, compared)
	}
}

// shrink makes the likelihoods of some root states so small that a plain product loses
// digits. It makes others so large that the product returns to a normal size, which
// hides the loss.
func shrink(r *rand.Rand, leaf tableLeaf) {
	for root := range leaf {
		if r.IntN(2) == 0 {
			continue
		}
		by := math.Ldexp(1, []int{-1050, 900}[r.IntN(2)])
		for p := range leaf[root] {
			for q := range leaf[root][p] {
				leaf[root][p][q] *= by
			}
		}
	}
}

// TestABandNamesALeafThatMisbehaves checks that an unusable likelihood is an error that
// names the leaf if its root state is possible, and is ignored if it is not.
func TestABandNamesALeafThatMisbehaves(t *testing.T) {
	asked := 0
	bad := batchedLeaf{tableLeaf{{{1}}, {{math.NaN()}}, {{-1}}, {{1}}}, &asked}
	n := network.Nested{Root: []float64{1, 0, 0, 1}, Batch: 2, Groups: []network.Group{{Weights: []float64{1}, Pockets: []network.Pocket{{Weights: []float64{1}, Leaves: []network.Leaf{bad}}}}}}
	if post, err := n.Condition(); err != nil || post.Root()[0] != 0.5 || post.Root()[3] != 0.5 {
		t.Errorf("unusable likelihood at an impossible state: %v", err)
	}
	n.Root[1] = 1
	if _, err := n.Condition(); err == nil {
		t.Error("accepted a likelihood that is not a number")
	}
}
