package pricing

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/floats/scalar"
	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/money"
)

// TestNormalConditioning: for two standard normals with correlation .5, seeing the
// first at 1.2 leaves the second with mean .6 and variance .75 (conditional normal,
// Anderson, An Introduction to Multivariate Statistical Analysis, section 2.5).
func TestNormalConditioning(t *testing.T) {
	f := newFactorPosterior()
	f.observe([2]float64{1, 0}, 0, 1.2)
	second := [2]float64{.5, math.Sqrt(.75)}
	mean := second[0]*f.mean[0] + second[1]*f.mean[1]
	variance := second[0]*second[0]*f.cov[0] + 2*second[0]*second[1]*f.cov[1] + second[1]*second[1]*f.cov[2]
	if math.Abs(mean-.6) > 1e-15 || math.Abs(variance-.75) > 1e-15 {
		t.Errorf("mean %g, variance %g", mean, variance)
	}
	a, b := f.at(2, 0)
	if a != 1.2 || b != 0 {
		t.Errorf("what is known is drawn as %g, and the other as %g", a, b)
	}
	f.observe([2]float64{1, 0}, 0, 1.2) // seen twice, it stays finite and the same
	if f.mean[0] != 1.2 || f.cov[0] != 0 || math.IsNaN(f.root[1]) {
		t.Errorf("said twice: %+v", f)
	}
}

// worked decides strip hours: these multiples of the median of each trade's outlook.
func worked(table *Table, times map[car.Trade]float64) Decided {
	d := Undecided()
	outlook := table.StripOutlook()
	for trade, x := range times {
		d.StripHours[trade] = outlook[trade][1] * x
	}
	return d
}

var stripTrades = []car.Trade{car.Metal, car.Prep, car.Paint, car.Fit}

// TestFactorsAgainstGonum conditions the joint normal of both scores and the log hours
// of every subset of trades all at once, in matrices (gonum/mat), and compares with one
// observation after another.
func TestFactorsAgainstGonum(t *testing.T) {
	_, table := testTable(t, "four_door_saloon", "show")
	for subset := 1; subset < 1<<len(stripTrades); subset++ {
		times := map[car.Trade]float64{}
		var rows [][2]float64
		var noise, y []float64
		for k, trade := range stripTrades {
			if subset>>k&1 == 1 {
				times[trade] = []float64{1.4, .8, 1.1, 1.25}[k]
				_, v, _ := table.stripSum(trade)
				rows, noise, y = append(rows, table.onScores(trade)), append(noise, v), append(y, math.Log(times[trade]))
			}
		}
		// Mean Σ₁₂Σ₂₂⁻¹y and covariance Σ₁₁ − Σ₁₂Σ₂₂⁻¹Σ₂₁ (Anderson, section 2.5).
		seen, cross := mat.NewSymDense(len(rows), nil), mat.NewDense(2, len(rows), nil)
		for a, h := range rows {
			cross.Set(0, a, h[0])
			cross.Set(1, a, h[1])
			for b, g := range rows {
				seen.SetSym(a, b, h[0]*g[0]+h[1]*g[1])
			}
			seen.SetSym(a, a, h[0]*h[0]+h[1]*h[1]+noise[a])
		}
		var factor mat.Cholesky
		if !factor.Factorize(seen) {
			t.Fatal("not a covariance")
		}
		var gain, mean, taken mat.Dense
		if err := factor.SolveTo(&gain, cross.T()); err != nil {
			t.Fatal(err)
		}
		mean.Mul(gain.T(), mat.NewVecDense(len(y), y))
		taken.Mul(cross, &gain)
		got := with(t, table, worked(table, times)).decided.factors
		l := got.root
		for name, pair := range map[string][2]float64{
			"mean of metal": {got.mean[0], mean.At(0, 0)}, "mean of the rest": {got.mean[1], mean.At(1, 0)},
			"variance of metal": {l[0] * l[0], 1 - taken.At(0, 0)}, "covariance": {l[0] * l[1], -taken.At(0, 1)},
			"variance of the rest": {l[1]*l[1] + l[2]*l[2], 1 - taken.At(1, 1)},
		} {
			if !scalar.EqualWithinAbs(pair[0], pair[1], 1e-11) {
				t.Errorf("subset %b, %s: %.14g, gonum %.14g", subset, name, pair[0], pair[1])
			}
		}
	}
}

// TestStripSum compares mean and variance of a trade's hours in the stage with drawn
// sums, to five standard errors (for the variance from the fourth moment).
func TestStripSum(t *testing.T) {
	_, table := testTable(t, "hardtop_on_frame", "show")
	const n = 20000
	u, f := table.NewUniforms(), [car.Trades]float64{1, 1, 1, 1, 1}
	drawn := [car.Trades][]float64{}
	b := table.NewBill()
	for k := range uint64(n) {
		s := chance.NewStream(seed, k)
		u.Fill(&s)
		u.Old[oldMeasure] = s.Uniform()
		b.StripHours, b.billed = [car.Trades]int64{}, [car.Trades]int64{}
		table.stripCar(u, b)
		table.chargeStrip(&f, b)
		for trade, h := range b.StripHours {
			drawn[trade] = append(drawn[trade], float64(h)/1000)
		}
	}
	for _, trade := range stripTrades {
		m, v, _ := table.stripSum(trade)
		mean := math.Exp(m + v/2)
		variance := mean * mean * (math.Exp(v) - 1)
		gotMean, gotVariance := stat.MeanVariance(drawn[trade], nil)
		seMean := math.Sqrt(gotVariance / n)
		seVariance := gotVariance * math.Sqrt((stat.ExKurtosis(drawn[trade], nil)+2)/n)
		if math.Abs(mean-gotMean) > 5*seMean || math.Abs(variance-gotVariance) > 5*seVariance {
			t.Errorf("%s: mean %.3f, drawn %.3f; variance %.3f, drawn %.3f", car.TradeIDs[trade], mean, gotMean, variance, gotVariance)
		}
	}
	if _, _, has := table.stripSum(car.BodyWork); has {
		t.Error("the strip has body work")
	}
}

// TestWorkedHoursAreASum: with every trade entered, the stage costs the same on every
// car except for what is sent out and the primer, and its hours are those entered; with one entered,
// the others remain uncertain.
func TestWorkedHoursAreASum(t *testing.T) {
	model, table := testTable(t, "two_door_unitary", "show")
	all := map[car.Trade]float64{}
	for _, trade := range stripTrades {
		all[trade] = 1.1
	}
	d := worked(table, all)
	known, one := with(t, table, d), with(t, table, worked(table, map[car.Trade]float64{car.Prep: 3}))
	c, u, b := model.NewCar(), table.NewUniforms(), table.NewBill()
	costs, fit := map[money.Minor]bool{}, map[int64]bool{}
	for n := range uint64(50) {
		s := chance.NewStream(seed, n)
		model.Draw(&s, c)
		u.Fill(&s)
		known.Price(c, "salt", u, b)
		costs[b.Strip-b.sentIn-known.primer(b.ReplacedM2)] = true
		for _, trade := range stripTrades {
			if want := int64(math.Round(d.StripHours[trade] * 1000)); b.StripHours[trade] != want {
				t.Fatalf("%s: %d, worked %d", car.TradeIDs[trade], b.StripHours[trade], want)
			}
		}
		one.Price(c, "salt", u, b)
		fit[b.StripHours[car.Fit]] = true
		for k := range one.strip {
			line := &one.strip[k]
			if line.chargedAsWorked() && line.ceiling > 0 && one.decided.charged[k] > thousandths(line.ceiling) {
				t.Fatalf("%s is charged above its ceiling", line.id)
			}
		}
	}
	if len(costs) != 1 || len(fit) < 40 {
		t.Errorf("%d costs of a stage that is worked, %d different hours of fitting", len(costs), len(fit))
	}
	// The stage's list adds up to what every car pays, apart from one rounding per line
	// instead of one per trade.
	for k := range u.Sent {
		u.Sent[k] = .5
	}
	known.Price(c, "salt", u, b)
	if stage := known.StagePriceFor(b.ReplacedM2).Likely; stage-b.Strip > 12 || b.Strip-stage > 12 {
		t.Errorf("the stage is written out at %d and paid at %d", stage, b.Strip)
	}
	// Undercoat, sealer and pits are charged as worked: without ceilings their share of
	// the hours is their share of the likely hours.
	free := *table
	free.strip = append([]stripLine(nil), table.strip...)
	likely, charged := 0.0, 0.0
	for k := range free.strip {
		free.strip[k].ceiling = 0
		if l := &free.strip[k]; l.trade == car.Prep {
			likely += l.likely
			if l.chargedAsWorked() {
				charged += l.likely
			}
		}
	}
	double := with(t, &free, worked(&free, map[car.Trade]float64{car.Prep: 2}))
	double.Price(c, "salt", u, b)
	want := 2 * table.StripOutlook()[car.Prep][1] * charged / likely
	if charged == 0 || math.Abs(float64(b.billed[car.Prep])/1000-want) > .005 {
		t.Errorf("charged %d thousandths, want %.3f hours", b.billed[car.Prep], want)
	}
}
