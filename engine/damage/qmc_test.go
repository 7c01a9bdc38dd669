package damage

import (
	"math"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/chance"
)

// randomisations of points that evenly draws from, and points in each.
const (
	testRandomisations = 40
	testPoints         = 64
)

// evenly draws cars from points and shows them by randomisation.
func evenly(m *Model, each func(randomisation int, c *Car)) {
	s := m.NewSharedFactors()
	scrambles := chance.NewStream(3, 1)
	c, point, lead := m.NewCar(), make([]float64, s.Coordinates()), make([]float64, s.Coordinates()-1)
	for r := range testRandomisations {
		points := chance.NewPoints(s.Coordinates(), &scrambles)
		for n := range testPoints {
			points.At(uint32(n), point)
			s.Fill(point, lead)
			stream := chance.StreamWithPrefix(lead, 4, uint64(r*testPoints+n))
			m.Draw(&stream, c)
			each(r, c)
		}
	}
}

// TestEvenlySpreadCars holds shares of cars drawn from points to the exact chances,
// with and without what was seen of the worst of several items, to five standard
// errors measured over the randomisations. That the first coordinate sorts cars by
// how badly they have come off is held by the number of holes: its mean over a
// randomisation varies much less than over as many cars from plain streams.
func TestEvenlySpreadCars(t *testing.T) {
	bare, err := New(Known{Body: body(t, "pickup"), Histories: salted(t), EarlierWork: "not_sure"}, coarse)
	if err != nil {
		t.Fatal(err)
	}
	sides, _ := worstCases["a side and a pair"].build(t, coarse)
	for name, m := range map[string]*Model{"nothing seen": bare, "sides seen": sides} {
		holed := make([][testRandomisations]float64, len(m.Body.Items))
		var repairs [RepairStates][testRandomisations]float64
		var holes, plain [testRandomisations]float64
		evenly(m, func(r int, c *Car) {
			repairs[c.Repair][r] += 1.0 / testPoints
			for i, k := range c.Condition {
				if k >= 4 {
					holed[i][r] += 1.0 / testPoints
					holes[r] += 1.0 / testPoints
				}
			}
		})
		for i, one := range m.Chances() {
			agrees(t, name+" "+m.Body.Items[i].ID, holed[i], one.Holed())
		}
		for k, want := range m.RepairState() {
			agrees(t, name+" "+RepairStateIDs[k], repairs[k], want)
		}
		c := m.NewCar()
		for n := range testRandomisations * testPoints {
			s := chance.NewStream(5, uint64(n))
			m.Draw(&s, c)
			for _, k := range c.Condition {
				if k >= 4 {
					plain[n/testPoints] += 1.0 / testPoints
				}
			}
		}
		_, even := meanVariance(holes)
		if _, v := meanVariance(plain); v < 4*even {
			t.Errorf("%s: variance of the mean number of holes %.3g, from plain streams %.3g", name, even, v)
		}
	}
}

// agrees holds a mean over randomisations to what it should be. A share that cannot
// be told from 0 varies too little for its own standard error to say so.
func agrees(t *testing.T, what string, got [testRandomisations]float64, want float64) {
	t.Helper()
	mean, variance := meanVariance(got)
	se := math.Max(math.Sqrt(variance/testRandomisations), math.Sqrt(want*(1-want)/(testRandomisations*testPoints))/2)
	if math.Abs(mean-want) > 5*se {
		t.Errorf("%s: share %.4f, exact %.4f, standard error %.4f", what, mean, want, se)
	}
}

func meanVariance(v [testRandomisations]float64) (mean, variance float64) {
	for _, x := range v {
		mean += x / testRandomisations
	}
	for _, x := range v {
		variance += (x - mean) * (x - mean) / (testRandomisations - 1)
	}
	return mean, variance
}

// TestCoordinatesFit: there are Sobol points for the shared factors of every body,
// and for the two whole-car factors of hours beside them.
func TestCoordinatesFit(t *testing.T) {
	for _, id := range car.BodyIDs {
		m, err := New(Known{Body: body(t, id), Histories: salted(t)}, coarse)
		if err != nil {
			t.Fatal(err)
		}
		if n := m.NewSharedFactors().Coordinates() + 2; n < 20 || n > chance.MostDimensions {
			t.Errorf("%s: %d coordinates, there are points of %d", id, n, chance.MostDimensions)
		}
	}
}
