package estimate

import (
	"math"
	"math/rand/v2"
	"slices"
	"strconv"
	"testing"

	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"
	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/damage"
	"underpaint/engine/money"
	"underpaint/engine/pricing"
	"underpaint/engine/rates"
)

// offering adds another two-door to a shop's rates, at the starting hours.
func offering(price [3]float64, had float64) func(*rates.Rates) {
	return func(r *rates.Rates) {
		a := *rates.StartingAnotherBody()
		a.Offered = []rates.OfferedBody{{Body: "two_door_unitary", Price: price, ToBeHad: had, Weeks: [3]float64{4, 12, 40}}}
		r.AnotherBody = &a
	}
}

var invented = [3]float64{4000, 9000, 20000}

// anotherRun is a run with rows without any offer, with this one only priced, and taken.
func anotherRun(t testing.TB, blocks int, doubt pricing.Doubt, changes ...func(*rates.Rates)) *Run {
	t.Helper()
	plain := testRun(t, func(r *rates.Rates) {
		for _, change := range changes {
			change(r)
		}
		r.AnotherBody = nil
	})
	offered := testRun(t, func(r *rates.Rates) {
		for _, change := range changes {
			change(r)
		}
	})
	table := offered.rows[0].table.Doubting(doubt)
	r := NewRun(plain.model, []*pricing.Table{plain.rows[0].table.Doubting(doubt), table, table.TakingAnotherBody(true)}, 1)
	for range blocks {
		r.Add()
	}
	return r
}

var toldDoubt = pricing.Doubt{SD: .15, Growth: .0677}

// TestAnotherBodyIsOnlyPriced: a body that is offered and not taken leaves every figure of
// every car as it is without the offer. A taken one whose price is a million does the same.
func TestAnotherBodyIsOnlyPriced(t *testing.T) {
	r := anotherRun(t, 2, toldDoubt, offering([3]float64{1e6, 1e6, 1e6}, 1))
	for k := range r.rows[1:] {
		for _, lists := range [][2][]int64{{r.rows[0].total, r.rows[k+1].total}, {r.rows[0].hours, r.rows[k+1].hours}, {r.rows[0].weeks, r.rows[k+1].weeks}, {r.rows[0].metal, r.rows[k+1].metal}} {
			if !slices.Equal(lists[0], lists[1]) {
				t.Fatalf("row %d differs from the row without an offer", k+1)
			}
		}
		for kind := range Kinds {
			if !slices.Equal(r.rows[0].kinds[kind], r.rows[k+1].kinds[kind]) {
				t.Fatalf("row %d: %s differs", k+1, KindIDs[kind])
			}
		}
	}
	if a := r.AnotherBody(2); !a.Offered || !a.Taken || a.Advised != 0 || a.Had != 1 || r.AnotherBody(0) != (AnotherBody{}) {
		t.Errorf("%+v", a)
	}
	cheap := anotherRun(t, 1, toldDoubt, offering(invented, .6))
	if !slices.Equal(cheap.rows[0].total, cheap.rows[1].total) {
		t.Error("a cheap body that is not taken changes the totals")
	}
	if slices.Equal(cheap.rows[1].total, cheap.rows[2].total) {
		t.Error("a cheap body that is taken changes nothing")
	}
}

// TestAnotherBodyNeverCostsMore: car by car, the total with another body allowed is at or
// below that without, below it exactly where another is advised; a higher price, a smaller
// chance or a wider margin never makes more cars advised, and never lowers a total. It
// holds for any shares of supplies and tax.
func TestAnotherBodyNeverCostsMore(t *testing.T) {
	properties := gopter.NewProperties(parameters(12))
	properties.Property("capped cars cost no more", prop.ForAll(func(price, dearer, had, margin, percent, capped float64) bool {
		at := func(price, had, margin float64) *Run {
			return anotherRun(t, 1, toldDoubt, offering([3]float64{price / 2, price, 2 * price}, had), func(r *rates.Rates) {
				if percent > 0 {
					r.Supplies.ShareOfLabour, r.Supplies.Percent = true, percentOf(t, percent)
					r.Supplies.Capped, r.Supplies.NoMoreThan = capped > .5, 50000
				}
				r.AnotherBody.DearerByPercent = margin
			})
		}
		first, second := at(price, had, margin), at(price*dearer, had*.7, margin+10)
		for n, kept := range first.rows[1].total {
			w, dear := first.rows[2].weighed[n], second.rows[2].weighed[n]
			total := first.rows[2].total[n]
			if total > kept || (total < kept) != w.Advised || w != first.rows[1].weighed[n] {
				t.Logf("car %d: %d without, %d with, %+v", n, kept, total, w)
				return false
			}
			if dear.Advised && !w.Advised || second.rows[2].total[n] < total || dear.Keep != w.Keep {
				t.Logf("car %d: %d at %+v, but %d at %+v", n, total, w, second.rows[2].total[n], dear)
				return false
			}
			sum := int64(0)
			for kind := range Tax {
				sum += first.rows[2].kinds[kind][n]
			}
			if sum != total || w.Advised != (first.rows[2].kinds[AnotherBodyKind][n] > 0) {
				t.Logf("car %d: the kinds of line add up to %d, the total is %d", n, sum, total)
				return false
			}
		}
		return true
	}, gen.Float64Range(500, 40000), gen.Float64Range(1, 3), gen.Float64Range(0, 1), gen.Float64Range(0, 60), gen.Float64Range(-30, 90), gen.Float64Range(0, 1)))
	properties.TestingRun(t)
}

// published is J-QPD-S by its published form, with sinh and its inverse (C. C. Hadlock and
// J. E. Bickel, Decision Analysis 14(1), 2017, equation 9), for figures whose likely one is
// not the geometric mean of the others. z is a standard normal.
func published(t [3]float64, z float64) float64 {
	c := distuv.UnitNormal.Quantile(.9)
	l, b, h := math.Log(t[0]), math.Log(t[1]), math.Log(t[2])
	least := math.Min(b-l, h-b)
	delta := math.Sinh(math.Acosh((h-l)/(2*least))) / c
	theta, n := l, 1.0
	if l+h < 2*b {
		theta, n = h, -1
	}
	return math.Exp(theta + least/(delta*c)*math.Sinh(math.Asinh(delta*z)+math.Asinh(n*c*delta)))
}

// TestEndsOfAnotherBody: both ends and the middle of everything to do with another body,
// by a simulation of its own in floating point: figures of the file, the published form of
// three figures, another source of random numbers. Supplies are in the rate of the sample,
// and the strip is at its likely price.
func TestEndsOfAnotherBody(t *testing.T) {
	one := anotherRun(t, 0, toldDoubt, offering(invented, .6))
	table, got := one.rows[2].table, AnotherBody{}
	const runs = 4 // of seeds of their own, put together
	for seed := range uint64(runs) {
		r := NewRun(one.model, []*pricing.Table{table}, seed+2)
		for range 8 {
			r.Add()
		}
		a := r.AnotherBody(0)
		got.Other.Low, got.Other.Half, got.Other.High = got.Other.Low+a.Other.Low/runs, got.Other.Half+a.Other.Half/runs, got.Other.High+a.Other.High/runs
		got.SE.Low, got.SE.High = math.Hypot(got.SE.Low, a.SE.Low/runs), math.Hypot(got.SE.High, a.SE.High/runs)
		if math.Abs(a.Crosses-1.15*a.Other.Half) > 1e-6*a.Crosses {
			t.Errorf("advised from %.0f, middle %.0f", a.Crosses, a.Other.Half)
		}
	}
	metal, fit := 85.0, 75.0 // of the sample, as published
	strip := float64(table.StagePrice().Likely) / 100
	random := rand.New(rand.NewPCG(20260604, 1))
	normal := random.NormFloat64
	const n = 160000
	var all []float64
	for range n {
		z := normal()
		hard, other := math.Exp(.15*z), math.Exp(.12*(.7*z+math.Sqrt(1-.7*.7)*normal()))
		wrong := math.Exp(toldDoubt.Growth + toldDoubt.SD*normal())
		hours := published([3]float64{60, 170, 420}, normal())*hard*wrong + published([3]float64{4, 10, 24}, normal())*hard
		v := published(invented, normal()) + published([3]float64{100, 250, 800}, normal()) + strip
		v += fit * other * (published([3]float64{6, 15, 40}, normal()) + published([3]float64{12, 24, 50}, normal()))
		v += hours * (metal + published([3]float64{3, 4.5, 6}, normal()))
		all = append(all, 100*v)
	}
	part := func(p float64) (v, se float64) {
		v = quantileOf(all, p)
		var few []float64
		for j := range 20 {
			few = append(few, quantileOf(all[j*n/20:(j+1)*n/20], p))
		}
		return v, stat.StdDev(few, nil) / math.Sqrt(20)
	}
	for _, end := range []struct {
		name    string
		got, se float64
		p       float64
	}{{"low", got.Other.Low, got.SE.Low, .1}, {"middle", got.Other.Half, math.Max(got.SE.Low, got.SE.High), .5}, {"high", got.Other.High, got.SE.High, .9}} {
		want, se := part(end.p)
		if math.Abs(end.got-want) > 3*math.Hypot(end.se, se) {
			t.Errorf("%s end %.0f ± %.0f, simulated alone %.0f ± %.0f", end.name, end.got, end.se, want, se)
		}
		if end.se <= 0 || end.se > .02*end.got {
			t.Errorf("%s end: standard error %.0f", end.name, end.se)
		}
	}
}

func quantileOf(v []float64, p float64) float64 {
	v = slices.Clone(v)
	slices.Sort(v)
	return stat.Quantile(p, stat.LinInterp, v, nil)
}

// TestAdvisedShare counts by brute force on cars drawn with plain random numbers: the
// metalwork of each car line by line at the published rates, everything to do with another
// body as in TestEndsOfAnotherBody, and one of ten found for six. The shares agree to three
// standard errors.
func TestAdvisedShare(t *testing.T) {
	r := anotherRun(t, 16, toldDoubt, offering(invented, .6))
	got, table := r.AnotherBody(2), r.rows[0].table // lines of a table that offers nothing
	strip := float64(table.StagePrice().Likely) / 100
	m, c, u, b := r.model, r.model.NewCar(), table.NewUniforms(), table.NewBill()
	random := rand.New(rand.NewPCG(4, 20260604))
	const n = 6000
	had, advised := 0.0, 0.0
	for k := range n {
		s := chance.NewStream(77, uint64(k))
		m.Draw(&s, c)
		u.Fill(&s)
		u.Doubt = random.Float64()
		z := distuv.UnitNormal.Quantile
		keep, wire := 0.0, published([3]float64{3, 4.5, 6}, z(u.Wire))
		for _, l := range table.Explain(c, m.Histories[c.History].LastClimate, u, b) {
			switch {
			case l.Strip:
			case l.Price > 0:
				keep += float64(l.Price) / 100 * 1.1 // handling of the sample
			case l.Trade == car.Metal:
				keep += float64(l.Thousandths) / 1000 * (85 + wire)
			}
		}
		hard := math.Exp(.15 * z(u.Car[0]))
		other := math.Exp(.12 * (.7*z(u.Car[0]) + math.Sqrt(1-.7*.7)*z(u.Car[1])))
		wrong := math.Exp(toldDoubt.Growth + toldDoubt.SD*z(u.Doubt))
		normal := random.NormFloat64
		sum := published(invented, normal()) + published([3]float64{100, 250, 800}, normal()) + strip
		sum += 75 * other * (published([3]float64{6, 15, 40}, normal()) + published([3]float64{12, 24, 50}, normal()))
		sum += (85 + wire) * hard * (published([3]float64{60, 170, 420}, normal())*wrong + published([3]float64{4, 10, 24}, normal()))
		if random.Float64() < .6 {
			had++
			if keep > 1.15*sum {
				advised++
			}
		}
	}
	for _, one := range []struct {
		name          string
		got, want, se float64
	}{{"found", got.Had, had / n, 0}, {"advised", got.Advised, advised / n, got.SE.Advised}} {
		se := math.Hypot(one.se, math.Sqrt(one.want*(1-one.want)/n))
		if math.Abs(one.got-one.want) > 3*se {
			t.Errorf("%s: %.4f, counted %.4f ± %.4f", one.name, one.got, one.want, se)
		}
	}
	for k := 0; k < len(r.rows[2].weighed); k += Replicates {
		n := 0
		for _, w := range r.rows[2].weighed[k : k+Replicates] {
			if w.Had {
				n++
			}
		}
		if n != 2*factorReplicates && n != 3*factorReplicates { // six of ten, spread over four draws of each car
			t.Fatalf("car %d: found in %d of %d replicates", k/Replicates, n, Replicates)
		}
	}
	if advised/n < .05 || advised/n > .55 {
		t.Errorf("%.3f advised: the count says little", advised/n)
	}
}

// TestPlanOnAnotherBody: the stages of a car add up to its price where another body is
// taken too, and no stage of any car costs less than nothing.
func TestPlanOnAnotherBody(t *testing.T) {
	r := anotherRun(t, 1, toldDoubt, offering(invented, .9))
	table, taken := r.rows[2].table, 0
	explained(r.model, table, 1, 200, func(n int, _ *damage.Car, b *pricing.Bill, lines []pricing.Line) {
		cost, hours := stepsOf(r.model.Body, table, lines, b)
		sum := 0.0
		for s, v := range cost {
			sum += v
			if v < 0 || hours[s] < 0 {
				t.Fatalf("car %d: stage %d costs %.0f", n, s, v)
			}
		}
		if math.Abs(sum-float64(b.Total)) > .5 || int64(b.Total) != r.rows[2].total[n*Replicates] {
			t.Fatalf("car %d: stages cost %.0f, bill %d, run %d", n, sum, b.Total, r.rows[2].total[n*Replicates])
		}
		if b.Another.Advised {
			taken++
			// Everything to do with another body but the fitting, the prep and the fitting of
			// parts belong to the two stages of metal; nobody charges handling on a body.
			metal := float64(b.AnotherBody + b.Labour[car.Prep])
			for _, l := range lines {
				fit := float64(table.Rates.Labour.Trades[car.Fit].Rate.Of(l.Thousandths))
				switch {
				case l.Trade != car.Fit || l.Strip:
				case l.Item >= 0:
					metal += fit
				case l.ID == pricing.AnotherBodySearch || l.ID == pricing.AnotherBodyMoving:
					metal -= fit
				}
			}
			if got := cost[StepStructure] + cost[StepOuter]; math.Abs(got-metal) > 500 {
				t.Fatalf("car %d: the metal stages cost %.0f, by the bill %.0f", n, got, metal)
			}
		}
	})
	if taken < 20 {
		t.Errorf("only %d of 200 cars on another body", taken)
	}
}

func percentOf(t testing.TB, v float64) rates.Percent {
	t.Helper()
	d, err := money.Parse(strconv.FormatFloat(v, 'f', 4, 64))
	if err != nil {
		t.Fatal(err)
	}
	p, err := money.NewPercent(d)
	if err != nil {
		t.Fatal(err)
	}
	return rates.Percent{Percent: p, Published: d}
}
