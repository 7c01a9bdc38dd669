package damage

import (
	"testing"

	"underpaint/engine/car"
)

// TestPieces: chances come pocket by pocket. After each piece those that are there stay
// as they are and are distributions; in the end every item has its own, each once, and
// no piece holds more than a third of them. With a look at a whole side and without.
func TestPieces(t *testing.T) {
	b := body(t, "two_door_unitary")
	for name, worst := range map[string][]MaxEvidence{"apart": nil, "together": {onSide(b, car.Left, gapBad), either(t, b, "drip_rail.left", "drip_rail.right", holeSeen)}} {
		m, err := New(Known{Body: b, Histories: salted(t), Worst: worst, EarlierWork: "not_sure"}, coarse)
		if err != nil {
			t.Fatal(err)
		}
		was := make([]Chances, len(b.Items))
		pieces, done := m.ChancesInPieces(), 0
		for pieces.Next() {
			fresh := 0
			for i, c := range pieces.Chances {
				if c == was[i] {
					continue
				}
				if was[i] != (Chances{}) {
					t.Errorf("%s, item %d: worked out twice", name, i)
				}
				sum := 0.0
				for _, v := range c.Condition {
					sum += v
				}
				near(t, name+": sum of conditions", sum, 1, 1e-9)
				fresh++
			}
			copy(was, pieces.Chances)
			if fresh == 0 || 3*fresh > len(b.Items) {
				t.Errorf("%s: %d of %d items in one piece", name, fresh, len(b.Items))
			}
			done += fresh
		}
		if done != len(b.Items) {
			t.Errorf("%s: %d of %d items", name, done, len(b.Items))
		}
	}
}
