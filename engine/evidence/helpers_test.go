package evidence

import (
	"math"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/damage"
)

func load(t testing.TB, id string) *car.Body {
	t.Helper()
	b, err := car.Load(id)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func item(t testing.TB, b *car.Body, id string) int {
	t.Helper()
	i, ok := b.ItemNamed(id)
	if !ok {
		t.Fatalf("no item %s", id)
	}
	return i
}

// one is the likelihood of checks on one item.
func one(t testing.TB, b *car.Body, on string, list ...Look) *damage.Likelihood {
	t.Helper()
	for n := range list {
		list[n].On = on
	}
	seen, err := FromLooks(b, list)
	if err != nil {
		t.Fatal(err)
	}
	return seen.Items[item(t, b, on)]
}

func near(t testing.TB, what string, got, want, tolerance float64) {
	t.Helper()
	if math.IsNaN(got) || math.Abs(got-want) > tolerance {
		t.Errorf("%s: got %.9g, want %.9g", what, got, want)
	}
}
