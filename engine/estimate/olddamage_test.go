package estimate

import (
	"math"
	"testing"

	"underpaint/engine/damage"
	"underpaint/engine/olddamage"
	"underpaint/engine/pricing"
)

// reckoning is a run of the test's table that reckons with old damage, and the same table
// without it.
func reckoning(t testing.TB) (*Run, *pricing.Table) {
	t.Helper()
	plain := testRun(t, nil)
	table := plain.rows[0].table
	d := pricing.Undecided()
	d.Old = &olddamage.Known{RoadYears: 20}
	reckons, err := table.With(d)
	if err != nil || reckons.Reckoning() == nil {
		t.Fatal(err)
	}
	return NewRun(plain.model, []*pricing.Table{reckons}, 1), table
}

// TestOldDamageDraws: reckoning with old damage changes no other draw. Where nobody was
// hit, nothing is left by an earlier hand, warped, cracked or packed, every car costs what
// it costs without, and the damage of a car is the same either way.
func TestOldDamageDraws(t *testing.T) {
	with, plain := reckoning(t)
	without := NewRun(with.model, []*pricing.Table{plain}, 1)
	with.Begin()
	without.Begin()
	more, mean := 0, 0.0
	for n, total := range with.rows[0].total {
		switch before := without.rows[0].total[n]; {
		case total < before-200:
			t.Fatalf("car %d: %d with old damage, %d without", n, total, before)
		case total > before+200:
			more++
		}
		mean += float64(total-without.rows[0].total[n]) / float64(len(with.rows[0].total))
	}
	if more == 0 || mean <= 0 {
		t.Error("old damage costs nothing")
	}
	for i := range with.holed {
		if with.holed[i] != without.holed[i] {
			t.Fatalf("item %d: holed in %d cars, without old damage in %d", i, with.holed[i], without.holed[i])
		}
	}
}

// TestOldDamageShare: hits cost what their hours say: the mean of the zones' lines over
// simulated cars is the exact mean (chance of each manner times the mean of its hours), to
// four standard errors.
func TestOldDamageShare(t *testing.T) {
	run, _ := reckoning(t)
	table := run.rows[0].table
	const n = 4096
	var repairs [damage.RepairStates]float64
	var rough, square []float64
	explained(run.model, table, 1, n, func(_ int, c *damage.Car, b *pricing.Bill, _ []pricing.Line) {
		repairs[c.Repair] += 1.0 / n
		old := b.OldDamage()
		v := 0.0
		for _, m := range old.Manner {
			if m >= olddamage.Roughly {
				v++
			}
		}
		rough = append(rough, v)
		if old.Sagged || old.Crooked() {
			square = append(square, 1)
		} else {
			square = append(square, 0)
		}
	})
	exact := table.Reckoning().Chances(repairs)
	want := 0.0
	for _, m := range exact.Manner {
		want += m[olddamage.Roughly] + m[olddamage.Crooked]
	}
	for name, one := range map[string]struct {
		got  []float64
		want float64
	}{"zones to put right": {rough, want}, "out of square": {square, exact.OutOfSquare}} {
		mean, squares := 0.0, 0.0
		for _, v := range one.got {
			mean, squares = mean+v/n, squares+v*v/n
		}
		if se := math.Sqrt((squares - mean*mean) / n); math.Abs(mean-one.want) > 4*se {
			t.Errorf("%s: drawn %.4f, exact %.4f", name, mean, one.want)
		}
	}
}

// TestOldDamageAllocates: pricing a car that reckons with old damage allocates nothing.
func TestOldDamageAllocates(t *testing.T) {
	run, _ := reckoning(t)
	run.Begin()
	c, u, b := run.model.NewCar(), run.rows[0].uniforms, run.rows[0].bill
	m, n := run.sampler, 0
	if got := testing.AllocsPerRun(200, func() {
		z := m.draw(n%100, c)
		m.fill(n%100, 0, u)
		u.Car = z
		run.rows[0].table.Price(c, "mild", u, b)
		n++
	}); got > 0 {
		t.Errorf("%g allocations a car", got)
	}
}

func BenchmarkCarWithOldDamage(b *testing.B)    { benchmarkCar(b, true) }
func BenchmarkCarWithoutOldDamage(b *testing.B) { benchmarkCar(b, false) }

func benchmarkCar(b *testing.B, old bool) {
	run, plain := reckoning(b)
	if !old {
		run = NewRun(run.model, []*pricing.Table{plain}, 1)
	}
	one, n := &run.rows[0], 0
	for b.Loop() {
		z := run.sampler.draw(n%4096, run.car)
		run.sampler.priceReplicates(n%4096, run.car, z, Replicates, one)
		n++
		one.total, one.hours, one.weeks, one.metal = one.total[:0], one.hours[:0], one.weeks[:0], one.metal[:0]
		for k := range one.kinds {
			one.kinds[k] = one.kinds[k][:0]
		}
	}
}
