package estimate

import (
	"math"
	"testing"

	"underpaint/engine/chance"
	"underpaint/engine/damage"
	"underpaint/engine/pricing"
)

func sharesSetting(t testing.TB) (*damage.Model, *pricing.Table) {
	r := testRun(t, nil)
	return r.model, r.rows[0].table
}

// TestFixedStreamCars: a car drawn from the recorded numbers of a stream is the car that
// the stream draws, so the shares describe the same cars as the range. The three uniforms
// of the root pick its states with their own probabilities.
func TestFixedStreamCars(t *testing.T) {
	model, table := sharesSetting(t)
	want, got := model.NewCar(), model.NewCar()
	n := len(model.Sources())
	for k := range 200 {
		s := chance.NewStream(3, uint64(k))
		numbers := make([]float64, n)
		for i := range numbers {
			numbers[i] = s.Uniform()
		}
		next := s.Uint64()
		s = chance.NewStream(3, uint64(k))
		model.Draw(&s, want)
		if s.Uint64() != next {
			t.Fatalf("a car takes other than %d numbers", n)
		}
		scripted := chance.FixedStream(numbers)
		model.Draw(&scripted, got)
		for i := range want.Condition {
			if want.Condition[i] != got.Condition[i] || want.Finding[i] != got.Finding[i] || want.LeadFailed[i] != got.LeadFailed[i] {
				t.Fatalf("car %d differs at item %d", k, i)
			}
		}
	}
	u := table.NewUniforms()
	s, again := chance.NewStream(4, 1), chance.NewStream(4, 1)
	u.Fill(&s)
	for range u.Kinds() {
		again.Uniform()
	}
	if s.Uint64() != again.Uint64() {
		t.Errorf("work does not take %d numbers", len(u.Kinds()))
	}
	const cars = 4000
	states, first := make([]float64, damage.RepairStates), chance.NewStream(5, 1)
	prior := make([]float64, damage.RepairStates)
	for k := range cars {
		numbers := make([]float64, n)
		numbers[0] = model.RootUniform(first.Uniform(), first.Uniform(), first.Uniform())
		for i := 1; i < n; i++ {
			numbers[i] = first.Uniform()
		}
		scripted := chance.FixedStream(numbers)
		model.Draw(&scripted, got)
		states[got.Repair]++
		s := chance.NewStream(6, uint64(k))
		model.Draw(&s, want)
		prior[want.Repair]++
	}
	for k := range states {
		p := prior[k] / cars
		if se := math.Sqrt(2 * p * (1 - p) / cars); math.Abs(states[k]/cars-p) > 4*se {
			t.Errorf("repair state %d drawn in %.3f of the cars, %.3f by the stream", k, states[k]/cars, p)
		}
	}
}

// TestShares: the shares add up to 1, their variance is that of the simulated cars of a
// range, and inputs that plainly matter have a share.
func TestShares(t *testing.T) {
	model, table := sharesSetting(t)
	s := NewShares(model, table, 1)
	s.Add(400)
	shares, variance := s.Shares()
	sum := 0.0
	for _, one := range shares {
		sum += one.Share
	}
	if math.Abs(sum-1) > 1e-9 {
		t.Errorf("shares add to %v", sum)
	}
	var total []float64
	Imagine(model, table, 9, 2000, func(_ int, _ *damage.Car, b *pricing.Bill) { total = append(total, float64(b.Total)) })
	mean, square := 0.0, 0.0
	for _, v := range total {
		mean += v / float64(len(total))
	}
	for _, v := range total {
		square += (v - mean) * (v - mean) / float64(len(total)-1)
	}
	if ratio := variance / square; ratio < 0.75 || ratio > 1.3 {
		t.Errorf("variance %v of the walks, %v of simulated cars", variance, square)
	}
	if shares[CarLuck].Share < 0.1 || shares[CarHours].Share < 0.05 {
		t.Errorf("the car's own luck has %.2f, its whole hours %.2f", shares[CarLuck].Share, shares[CarHours].Share)
	}
}

func BenchmarkWalk(b *testing.B) {
	model, table := sharesSetting(b)
	s := NewShares(model, table, 1)
	for b.Loop() {
		s.Add(1)
	}
}

// TestOnTheirOwn: independent parts keep their odds, so the mean stays the same; they lose
// their correlation, so the spread shrinks.
func TestOnTheirOwn(t *testing.T) {
	model, table := sharesSetting(t)
	const n = 2000
	var together []float64
	Imagine(model, table, 3, n, func(_ int, _ *damage.Car, b *pricing.Bill) { together = append(together, float64(b.Total)) })
	var apart []float64
	for _, v := range OnTheirOwn(model, table, 3, n) {
		apart = append(apart, float64(v))
	}
	meanOf := func(v []float64) (mean, sd float64) {
		for _, x := range v {
			mean += x / float64(len(v))
		}
		for _, x := range v {
			sd += (x - mean) * (x - mean) / float64(len(v)-1)
		}
		return mean, math.Sqrt(sd)
	}
	m1, s1 := meanOf(together)
	m2, s2 := meanOf(apart)
	if math.Abs(m2/m1-1) > 0.05 {
		t.Errorf("mean %.0f together, %.0f apart", m1, m2)
	}
	if s2 > 0.8*s1 {
		t.Errorf("deviation %.0f together, %.0f apart", s1, s2)
	}
}

// TestDearest: the parts cost more, and are holed more often, in the most expensive fifth
// of the cars than in all of them.
func TestDearest(t *testing.T) {
	model, table := sharesSetting(t)
	all, dearest := 0.0, 0.0
	for _, p := range Dearest(model, table, 3, 1000) {
		all, dearest = all+p.All, dearest+p.Dearest
		if p.HoledDearest < p.HoledAll-0.1 {
			t.Errorf("part %d: holed in %.2f of all cars, in %.2f of the dearest", p.Part, p.HoledAll, p.HoledDearest)
		}
	}
	if all <= 0 || dearest < 1.2*all {
		t.Errorf("parts take %.0f in all cars, %.0f in the dearest fifth", all, dearest)
	}
}

// TestPlan: the costs up to the end of the last stage are the price of the car, finished
// stages count at their actual costs, and no stage has a negative cost or negative hours.
func TestPlan(t *testing.T) {
	model, table := sharesSetting(t)
	plan, left, _ := Plan(model, table, 3, 800, nil)
	if left != plan[StepAssembly].ByThen {
		t.Errorf("nothing is done, yet %v is left of %v", left, plan[StepAssembly].ByThen)
	}
	done, left, _ := Plan(model, table, 3, 800, []int64{2_000_000, 5_000_000})
	if done[StepStructure].ByThen != (Quantiles{7_000_000, 7_000_000, 7_000_000}) || math.Abs(done[StepAssembly].ByThen.Half-left.Half-7_000_000) > 1e-6 {
		t.Errorf("done %v, left %v, in all %v", done[StepStructure].ByThen, left, done[StepAssembly].ByThen)
	}
	var totals []float64
	Imagine(model, table, 3, 800, func(_ int, _ *damage.Car, b *pricing.Bill) { totals = append(totals, float64(b.Total)) })
	if got, want := plan[StepAssembly].ByThen, quantilesOf(totals); math.Abs(got.Half-want.Half) > 1 || math.Abs(got.High-want.High) > 1 {
		t.Errorf("by the end %v, prices %v", got, want)
	}
	for s, one := range plan {
		if one.Money.Low < 0 || one.Money.Half > one.Money.High || one.Hours.Low < 0 || one.Money.High == 0 {
			t.Errorf("stage %d: %+v", s, one)
		}
		if s > 0 && one.ByThen.Half <= plan[s-1].ByThen.Half {
			t.Errorf("stage %d adds nothing", s)
		}
	}
}
