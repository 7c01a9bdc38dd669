package damage

import (
	"math/rand/v2"
	"testing"
)

// TestLeftOut: without one entry the chances are those of a model that never had it.
func TestLeftOut(t *testing.T) {
	b, histories, r := smallBody(t), bruteHistories(t), rand.New(rand.NewPCG(7, 4))
	known := Known{Body: b, Histories: histories, Seen: make([]*Likelihood, len(b.Items)), Worst: []MaxEvidence{{Items: []int{0, 1, 2}, Likely: gapBad}}}
	entry := make([]*Likelihood, len(b.Items))
	for i := range known.Seen {
		entry[i] = randomLikelihood(r)
		known.Seen[i] = entry[i]
	}
	m, err := New(known, coarse)
	if err != nil {
		t.Fatal(err)
	}
	for i, got := range m.LeftOut(entry) {
		fewer := known
		fewer.Seen = append([]*Likelihood{}, known.Seen...)
		fewer.Seen[i] = nil
		without, err := New(fewer, coarse)
		if err != nil {
			t.Fatal(err)
		}
		want := without.ChancesOf(i)
		for k := range want.Condition {
			near(t, b.Items[i].ID, got.Condition[k], want.Condition[k], 1e-7)
		}
	}
}
