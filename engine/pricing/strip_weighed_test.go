package pricing

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/stat"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/damage"
)

// sample holds the logs of both whole-car factors and the hours after the survey of
// many simulated cars.
type sample struct{ metal, rest, hours, strip []float64 }

func draw(model *damage.Model, table *Table, n int) (out sample) {
	c, u, b := model.NewCar(), table.NewUniforms(), table.NewBill()
	for k := range uint64(n) {
		damaged, priced := chance.NewStream(seed, 2*k), chance.NewStream(seed, 2*k+1)
		model.Draw(&damaged, c)
		u.Fill(&priced)
		table.Price(c, "salt", u, b)
		f := table.factors(u)
		hours := int64(0)
		for _, h := range b.AfterHours {
			hours += h
		}
		out.metal, out.rest = append(out.metal, math.Log(f[car.Metal])), append(out.rest, math.Log(f[car.Fit]))
		out.hours, out.strip = append(out.hours, float64(hours)/1000), append(out.strip, float64(b.StripHours[car.Prep])/1000)
	}
	return out
}

// around returns the squared distances from a centre.
func around(x []float64, centre float64) (out []float64) {
	for _, v := range x {
		out = append(out, (v-centre)*(v-centre))
	}
	return out
}

// within returns the gap between two means and its standard error; wa holds the weights
// of a, or is nil.
func within(a, wa, b []float64) (gap, se float64) {
	ess := func(w []float64, n int) float64 {
		if w == nil {
			return float64(n)
		}
		sum, squares := 0.0, 0.0
		for _, v := range w {
			sum, squares = sum+v, squares+v*v
		}
		return sum * sum / squares
	}
	ma, va := stat.MeanVariance(a, wa)
	if wa != nil {
		va = stat.MomentAbout(2, a, ma, wa)
	}
	mb, vb := stat.MeanVariance(b, nil)
	return math.Abs(ma - mb), math.Sqrt(va/ess(wa, len(a)) + vb/float64(len(b)))
}

// TestStripHoursAgainstWeighing conditions on the hours worked in another way: on plain
// cars, each weighted by how likely those hours are for it (importance weighting).
// Means agree to five standard errors; those of the unweighted cars do not.
func TestStripHoursAgainstWeighing(t *testing.T) {
	model, table := testTable(t, "two_door_unitary", "show")
	times := map[car.Trade]float64{car.Metal: 1.3, car.Prep: 1.15, car.Fit: .95}
	const n = 12000
	plain := draw(model, table, n)
	known := draw(model, with(t, table, worked(table, times)), n)
	weight := make([]float64, n)
	for k := range weight {
		log := 0.0
		for trade, x := range times {
			_, v, _ := table.stripSum(trade)
			factor := plain.rest[k]
			if trade == car.Metal {
				factor = plain.metal[k]
			}
			log -= (math.Log(x) - factor) * (math.Log(x) - factor) / (2 * v)
		}
		weight[k] = math.Exp(log)
	}
	check := func(name string, a, b []float64) {
		gap, se := within(a, weight, b)
		plainGap, plainSE := within(a, nil, b)
		t.Logf("%s: gap %.4g, standard error %.4g; unweighed %.4g", name, gap, se, plainGap)
		if gap > 5*se {
			t.Errorf("%s: gap %g, standard error %g", name, gap, se)
		}
		if plainGap < 5*plainSE {
			t.Errorf("%s: cars that know nothing of the hours agree too", name)
		}
	}
	check("log of the metal factor", plain.metal, known.metal)
	check("log of the other factor", plain.rest, known.rest)
	check("hours after the survey", plain.hours, known.hours)
	for name, pair := range map[string][2][]float64{"metal": {plain.metal, known.metal}, "other": {plain.rest, known.rest}} {
		check("spread of the "+name+" factor", around(pair[0], stat.Mean(pair[1], nil)), around(pair[1], stat.Mean(pair[1], nil)))
	}
}

// TestLognormalStageIsGoodEnough keeps the plain cars whose drawn preparation hours are
// within 3 % of those entered, without any lognormal or formula. The mean factor agrees
// to four standard errors plus .01 for taking the sum as lognormal.
func TestLognormalStageIsGoodEnough(t *testing.T) {
	model, table := testTable(t, "two_door_unitary", "show")
	times := 1.2
	plain := draw(model, table, 20000)
	entered := table.StripOutlook()[car.Prep][1] * times
	var kept []float64
	for k, h := range plain.strip {
		if math.Abs(math.Log(h/entered)) < .03 {
			kept = append(kept, plain.rest[k])
		}
	}
	f := with(t, table, worked(table, map[car.Trade]float64{car.Prep: times})).decided.factors
	h := table.onScores(car.Prep)
	want := h[0]*f.mean[0] + h[1]*f.mean[1]
	mean, variance := stat.MeanVariance(kept, nil)
	se := math.Sqrt(variance / float64(len(kept)))
	t.Logf("%d cars kept: mean %.4f ± %.4f, by the formula %.4f", len(kept), mean, se, want)
	if len(kept) < 300 || math.Abs(mean-want) > 4*se+.01 {
		t.Errorf("%d cars kept: mean %.4f ± %.4f, by the formula %.4f", len(kept), mean, se, want)
	}
	if math.Abs(want) < .03 {
		t.Error("the hours entered say nothing")
	}
}
