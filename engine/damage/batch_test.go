package damage

import (
	"math/rand/v2"
	"testing"

	"underpaint/engine/car"
)

// TestABandOfRepairStates: asked about all repair states at once, a leaf gives the
// bits that it gives for each.
func TestABandOfRepairStates(t *testing.T) {
	body, err := car.Load("two_door_unitary")
	if err != nil {
		t.Fatal(err)
	}
	r := rand.New(rand.NewPCG(5, 2))
	known := Known{Body: body, Histories: salted(t), Seen: make([]*Likelihood, len(body.Items))}
	for i := range known.Seen {
		known.Seen[i] = NoEvidence()
		for k := range known.Seen[i] {
			for f := range known.Seen[i][k] {
				known.Seen[i][k][f] = [2]float64{r.Float64(), r.Float64()}
			}
		}
	}
	m, err := New(known, CoarseGrids)
	if err != nil {
		t.Fatal(err)
	}
	compared := 0
	for pocket := range body.Pockets {
		for _, leaf := range m.given[0].leaves(pocket) {
			l := leaf.(*seenLeaf)
			width := len(l.b.sideOf(l.item))
			together, each := make([]float64, RepairStates*width), make([]float64, RepairStates*width)
			for range 50 {
				root, p := RepairStates*r.IntN(m.blocks()), r.IntN(len(m.group))
				for q := range together {
					together[q] = r.Float64()
				}
				copy(each, together)
				l.MultiplyBatch(root, RepairStates, p, together)
				for s := range RepairStates {
					l.Multiply(root+s, p, each[s*width:(s+1)*width])
				}
				for q := range each {
					if together[q] != each[q] {
						t.Fatalf("item %d, root %d: %v together, %v each", l.item, root, together[q], each[q])
					}
					compared++
				}
			}
		}
	}
	if compared < 10000 {
		t.Errorf("only %d likelihoods were compared", compared)
	}
}
