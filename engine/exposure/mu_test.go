package exposure

import (
	"math"
	"testing"

	"underpaint/engine/car"
)

// TestMuReference compares with the separate calculation of reference_data_test.go.
func TestMuReference(t *testing.T) {
	for _, c := range referenceCases {
		levels, err := Exact([]Alternative{{1, c.periods}})
		if err != nil || len(levels) != 3 {
			t.Fatalf("%s: %d levels, %v", c.name, len(levels), err)
		}
		// The reference lists the rates as told, × .75, × 1.33 with these weights.
		for k, want := range []struct{ weight, times float64 }{{.7, 1}, {.15, .75}, {.15, 1.33}} {
			l := levels[k]
			if k > 0 && l.RatesTimes != want.times { // equal weights go by content
				l = levels[3-k]
			}
			if l.Weight != want.weight || l.RatesTimes != want.times {
				t.Fatalf("%s: level %d is %+v", c.name, k, l)
			}
			for _, i := range c.items {
				if got := l.Mu(i.m, i.b, i.life, i.splash, i.mm); math.Abs(got-i.mu[k]) > 1e-9 {
					t.Errorf("%s, %s, level %d: μ = %.10f, want %.9f", c.name, i.item, k, got, i.mu[k])
				}
			}
		}
	}
}

// TestReferenceConstants: the constants of the reference are those of the bodies.
func TestReferenceConstants(t *testing.T) {
	bodies := []string{"two_door_unitary", "hardtop_on_frame", "two_door_unitary"}
	for k, c := range referenceCases {
		body, err := car.Load(bodies[k])
		if err != nil {
			t.Fatal(err)
		}
		for _, i := range c.items {
			n, ok := body.ItemNamed(i.item)
			if !ok {
				t.Fatalf("%s: no item %s", bodies[k], i.item)
			}
			p := body.PartOf(n)
			if (p.Rust != car.Rust{M: i.m, B: i.b, Life: i.life}) || p.Splash != i.splash || p.MM != i.mm {
				t.Errorf("%s %s: %+v %g %g", bodies[k], i.item, p.Rust, p.Splash, p.MM)
			}
		}
	}
}

// slowMu follows the loss period by period instead of summing times: the loss so
// far is turned into the years that would have given it at the next period's
// rate. Same law, other algebra, and the standard library's functions.
func slowMu(l Level, m, b, paintLife, splashShare, mm float64) float64 {
	figures := map[string][3]float64{"dry": {7, 7, 1.5}, "mild": {20, 24, 1}, "damp": {30, 45, .8}, "salt": {36, 60, .6}, "sea": {90, 95, .45}}
	shares := map[string]float64{"driven_all_year": 1, "driven_in_summer": .5, "dry_or_heated_garage": .05, "garage": .12, "open_shed_or_outside": .4}
	worn, lost, r := 0.0, 0.0, 0.0
	for _, p := range l.Periods {
		c, s := figures[p.Climate], shares[p.Kept]
		if p.Kept == "driven_in_summer" {
			c[1] = c[0]
		}
		r = l.RatesTimes * math.Pow(c[0], 1-splashShare) * math.Pow(c[1], splashShare)
		wear := s / (c[2] * paintLife)
		until := math.Min(p.Years, (1-worn)/wear)
		worn += until * wear
		if tau := s * (p.Years - until); tau > 0 {
			lost = r * math.Pow(math.Pow(lost/r, 1/b)+tau, b)
		}
	}
	return math.Log(m * math.Max(lost, r*math.Pow(.25, b)) / (1000 * mm))
}

// TestMuByHand: cases that can be checked on paper.
func TestMuByHand(t *testing.T) {
	open := func(periods ...Period) Level { return Level{RatesTimes: 1, Periods: periods} }
	for _, c := range []struct {
		name              string
		l                 Level
		m, b, life, share float64
		um                float64 // depth
	}{
		// 16 years, 4 under paint, 12 bare at 30 µm, exponent 1/2 would be 30·√12.
		{"paint first", open(Period{"damp", 16, "driven_all_year"}), 1, .5, 5, 0, 30 * math.Sqrt(12)},
		// In a garage a year wears as 0.12 of one: 50 years are 6, and 4 go to the paint.
		{"garage", open(Period{"damp", 50, "garage"}), 2, 1, 5, 0, 2 * 30 * 2},
		// Summers only: splash rusts as the air does, at half time; 3 of 10 years to the paint.
		{"summers", open(Period{"salt", 20, "driven_in_summer"}), 1, 1, 5, 1, 36 * 7},
		// Whole paint: a quarter of a year at the last climate's rate.
		{"least loss", open(Period{"sea", 1, "driven_all_year"}, Period{"dry", 1, "garage"}), 1, 1, 5, 1, 7 * .25},
		{"no paint", open(Period{"mild", 3, "driven_all_year"}), 1, 1, 0, 1, 72},
		{"two rates", open(Period{"mild", 10, "driven_all_year"}, Period{"sea", 2, "driven_all_year"}), 1, 1, 4, 0, 6*20 + 2*90},
	} {
		if got := math.Exp(c.l.Mu(c.m, c.b, c.life, c.share, 1)) * 1000; math.Abs(got/c.um-1) > 1e-12 {
			t.Errorf("%s: %.12g µm, want %.12g", c.name, got, c.um)
		}
	}
}

func BenchmarkMu(b *testing.B) {
	l := Level{RatesTimes: 1, Periods: []Period{{"salt", 9, "driven_all_year"}, {"dry", 47, "garage"}}}
	for b.Loop() {
		l.Mu(2, .85, 5, .5, 1)
	}
}
