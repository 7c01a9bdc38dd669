package exposure

import (
	"fmt"
	"math"
	"testing"

	"underpaint/engine/car"
)

// unsure is everything that customers can leave open, from little to all.
func unsure() (cases []struct {
	name string
	ages Ages
	told []ToldPeriod
}) {
	all, _ := ClimatesAt(NotSure, "")
	coast, _ := ClimatesAt("us_california", NotSure)
	decade, _ := MadeInDecade(1960, 2026)
	young, _ := MadeInDecade(1990, 2026)
	for _, a := range []struct {
		name string
		ages Ages
	}{{"year", Ages{{59, 1}}}, {"decade", decade}, {"young", young}} {
		for _, p := range []struct {
			name     string
			climates []Weighted
		}{{"place", one("damp")}, {"coast", coast}, {"anywhere", all}} {
			for _, kept := range []string{"driven_all_year", NotSure} {
				main := ToldPeriod{p.climates, 0, kept, NotSure}
				for earlier := range 3 {
					told := []ToldPeriod{main}
					for range earlier {
						told = append([]ToldPeriod{{p.climates, 7, kept, NotSure}}, told...)
					}
					cases = append(cases, struct {
						name string
						ages Ages
						told []ToldPeriod
					}{fmt.Sprintf("%s %s %s +%d", a.name, p.name, kept, earlier), a.ages, told})
				}
			}
		}
	}
	return cases
}

// wholeLevels makes the levels with nothing joined but equals.
func wholeLevels(ages Ages, told []ToldPeriod) (out []Level) {
	for _, a := range ages {
		lives, left := []Level{{Weight: a.Chance, RatesTimes: 1}}, a.Years
		for _, t := range told {
			years := t.Years
			if years == 0 {
				years = left
			}
			left -= years
			lives = cross(lives, t.lives(years))
		}
		for _, l := range lives {
			for _, d := range data().doubt {
				doubted := l
				doubted.Weight *= d.chance
				doubted.RatesTimes = d.value
				out = append(out, doubted)
			}
		}
	}
	return mergeEqual(out)
}

// chancesOf returns the chances that a part of some kinds has lost no more than
// given shares of its sheet, before and after two other parts have been seen:
// one rusted through, or one sound. Parts share .55 of a variance of .85². The
// standard library's functions, independent of the network.
func chancesOf(levels []Level) (out []float64) {
	const sigma, shared = .85, .55
	own := sigma * math.Sqrt(1-shared)
	kinds := [][3]float64{{.523, 10, 0}, {.575, 8, .6}, {.85, 6, .1}, {.85, 5, .5}, {.85, 4, .9}, {.85, 3, 1}}
	below := func(c, mu, k float64) float64 {
		return .5 * math.Erfc(-(math.Log(c)-mu-sigma*math.Sqrt(shared)*k)/own/math.Sqrt2)
	}
	var sums [3][6][3]float64
	var evidence [3]float64
	for _, l := range levels {
		var mu [6]float64
		for i, p := range kinds {
			mu[i] = l.Mu(2.5, p[0], p[1], p[2], 1)
		}
		for k := -5.0; k <= 5; k += .25 {
			w := l.Weight * math.Exp(-k*k/2) * .25 / math.Sqrt(2*math.Pi)
			for e, seen := range []float64{1, 1 - below(1.25, mu[4], k), below(.1, mu[4], k)} {
				evidence[e] += w * seen
				for i := range kinds {
					for c, share := range []float64{.1, .35, 1.25} {
						sums[e][i][c] += w * seen * below(share, mu[i], k)
					}
				}
			}
		}
	}
	for e := range sums {
		for i := range kinds {
			for c := range 3 {
				out = append(out, sums[e][i][c]/evidence[e])
			}
		}
	}
	return out
}

// TestJoining: whatever a customer leaves open gives at most MaxLevels levels.
// Joining moves chances, before or after evidence, by no more than .0025 for cars
// over 40 with at most one earlier place, and by no more than .01 for the rest
// (whose ages must stay apart, or whose histories are a hundred times as many).
// The full lists of the largest cases, over 7,000 combinations, are not compared.
func TestJoining(t *testing.T) {
	joined, largest := 0, 0
	for _, c := range unsure() {
		levels, err := Levels(c.ages, c.told)
		if err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		checkLevels(t, c.name, levels)
		combinations := len(c.ages) * len(data().doubt)
		for _, told := range c.told {
			combinations *= len(told.lives(30))
		}
		largest = max(largest, combinations)
		if combinations > 7000 {
			continue
		}
		whole := wholeLevels(c.ages, c.told)
		if len(whole) <= MaxLevels {
			if len(levels) != len(whole) {
				t.Errorf("%s: %d levels of %d though none need be joined", c.name, len(levels), len(whole))
			}
			continue
		}
		joined++
		checkEnds(t, c.name, whole, levels)
		limit, apart := .01, 0.0
		if c.ages[0].Years > 40 && len(c.told) <= 2 {
			limit = .0025
		}
		a, b := chancesOf(whole), chancesOf(levels)
		for i := range a {
			apart = math.Max(apart, math.Abs(a[i]-b[i]))
		}
		t.Logf("%s: %d levels joined to %d, chances move by up to %.5f", c.name, len(whole), len(levels), apart)
		if apart > limit {
			t.Errorf("%s: joining moves a chance by %.5f", c.name, apart)
		}
	}
	if joined < 15 || largest < 100000 {
		t.Errorf("%d cases compared, %d combinations in the largest: the test shows too little", joined, largest)
	}
}

// checkEnds: joining moves no chance of a last climate, nor of an age from 15 to
// 40, between which the chances of earlier repairs change.
func checkEnds(t *testing.T, name string, whole, joined []Level) {
	t.Helper()
	chances := map[string]float64{}
	for _, l := range whole {
		chances[l.LastClimate+years(max(15, min(40, l.AgeYears)))] += l.Weight
	}
	for _, l := range joined {
		chances[l.LastClimate+years(max(15, min(40, l.AgeYears)))] -= l.Weight
	}
	for ending, left := range chances {
		if math.Abs(left) > 1e-12 {
			t.Errorf("%s: joining moved %g of the chance of %s", name, left, ending)
		}
	}
}

func BenchmarkLevelsNothingKnown(b *testing.B) {
	all, _ := ClimatesAt(NotSure, "")
	decade, _ := MadeInDecade(1960, 2026)
	told := ToldPeriod{all, 0, NotSure, NotSure}
	for b.Loop() {
		if _, err := Levels(decade, []ToldPeriod{told}); err != nil {
			b.Fatal(err)
		}
	}
}

// TestCommonCases: with one place and the year known nothing is joined, and the
// number of levels is 3 road years × 3 doubts.
func TestCommonCases(t *testing.T) {
	for _, climate := range Climates() {
		for _, kept := range []string{"driven_all_year", "driven_in_summer", "mostly_garaged", "mostly_outside"} {
			levels, err := Levels(year(55), []ToldPeriod{{one(climate.ID), 0, kept, NotSure}})
			if err != nil || len(levels) != 9 {
				t.Errorf("%s %s: %d levels, %v", climate.ID, kept, len(levels), err)
			}
		}
	}
}

// TestProbes: the kinds of part on which levels are compared are those of the
// six bodies, no more and no fewer.
func TestProbes(t *testing.T) {
	have := map[[2]float64]bool{}
	for _, id := range car.BodyIDs {
		body, err := car.Load(id)
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range body.Parts {
			have[[2]float64{p.Rust.B, p.Rust.Life}] = true
		}
	}
	for _, p := range probes {
		if !have[p] {
			t.Errorf("no part has b %g and paint life %g", p[0], p[1])
		}
		delete(have, p)
	}
	for p := range have {
		t.Errorf("parts have b %g and paint life %g, not probed", p[0], p[1])
	}
}

// TestJoinKeepsMean: joined levels keep the weight, and the mean of μ over levels
// and probes.
func TestJoinKeepsMean(t *testing.T) {
	all, _ := ClimatesAt(NotSure, "")
	decade, _ := MadeInDecade(1960, 2026)
	lives := wholeLevels(decade, []ToldPeriod{{all, 0, NotSure, NotSure}})
	mean := func(levels []Level) (sum float64) {
		for _, l := range levels {
			for _, mu := range probe(l) {
				sum += l.Weight * mu / float64(3*len(probes))
			}
		}
		return sum
	}
	before := mean(lives)
	joined := reduce(lives, 30, probe, sameEnd)
	if len(joined) > 30 {
		t.Fatalf("%d levels", len(joined))
	}
	if after := mean(joined); math.Abs(after-before) > 1e-12 {
		t.Errorf("mean of μ %.15g, was %.15g", after, before)
	}
}
