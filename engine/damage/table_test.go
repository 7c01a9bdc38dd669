package damage

import (
	"math"
	"testing"
)

// TestReadingBetweenPoints: between the points of a table a chance is off by less than
// 8e-8, the bound that the fourth derivative gives; half the points, by more than that
// and less than sixteen times as much.
func TestReadingBetweenPoints(t *testing.T) {
	fig, err := loadFigures()
	if err != nil {
		t.Fatal(err)
	}
	off := func(perUnit int) (worst float64) {
		for _, share := range fig.share {
			deviation := fig.sigma * math.Sqrt(share.residual)
			table := newConditionTable(newScale(perUnit), fig.logStep, deviation)
			for n := range 40_000 {
				x := tableLow + 0.01 + float64(n)*(tableHigh-tableLow-0.02)/40_000
				exact := conditionsAt(x, fig.logStep, deviation)
				for k, p := range table.read(x) {
					worst = math.Max(worst, math.Abs(p-exact[k]))
				}
			}
		}
		return worst
	}
	whole, half := off(pointsToAUnit), off(pointsToAUnit/2)
	if whole > 8e-8 || whole < 1e-9 || half < 8e-8 || half > 16*8e-8 {
		t.Errorf("off by %.3g, with half the points by %.3g", whole, half)
	}
	t.Logf("off by %.3g, with half the points by %.3g", whole, half)
}
