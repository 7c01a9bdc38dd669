package exposure

import (
	"fmt"
	"math"
	"testing"
)

// unsure lists the combinations of answers that customers can leave open.
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

// wholeHistories builds the histories and merges only equal ones.
func wholeHistories(ages Ages, told []ToldPeriod, asked Asked) (out []History) {
	for _, a := range ages {
		for _, times := range roadTimes(told) {
			lives, left := []History{asked.begin(a.Years)}, a.Years
			lives[0].Weight = a.Chance * times.chance
			for _, t := range told {
				years := t.Years
				if years == 0 {
					years = left
				}
				left -= years
				lives = cross(lives, t.ways(years, times.value))
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
	}
	return mergeEqual(out)
}

// chancesOf returns the chances that parts of several kinds have lost no more than given
// shares of their sheet, without evidence and given one other part rusted through, or
// one sound. Parts share .55 of a variance of .85². Each reading counts with its chance,
// once without an answer about earlier work (car states .36 + .45, .12 and .07) and once
// after "stripped and restored". It uses the standard library's functions and is
// independent of the network.
func chancesOf(histories []History) (out []float64) {
	const sigma, shared = .85, .55
	own := sigma * math.Sqrt(1-shared)
	kinds := [][3]float64{{.523, 10, 0}, {.575, 8, .6}, {.85, 6, .1}, {.85, 5, .5}, {.85, 4, .9}, {.85, 3, 1}}
	below := func(c, mu, k float64) float64 {
		return .5 * math.Erfc(-(math.Log(c)-mu-sigma*math.Sqrt(shared)*k)/own/math.Sqrt2)
	}
	for _, prior := range [][Readings]float64{{.81, .12, .07}, {.2, .41, .39}} {
		var sums [3][6][3]float64
		var evidence [3]float64
		for _, l := range histories {
			var mu [6][Readings]float64
			for i, p := range kinds {
				mu[i] = l.Medians(2.5, p[0], p[1], p[2], 1)
			}
			for r, chance := range prior {
				for k := -5.0; k <= 5; k += .5 {
					w := chance * l.Weight * math.Exp(-k*k/2) * .5 / math.Sqrt(2*math.Pi)
					for e, seen := range []float64{1, 1 - below(1.25, mu[4][r], k), below(.1, mu[4][r], k)} {
						evidence[e] += w * seen
						for i := range kinds {
							for c, share := range []float64{.1, .35, 1.25} {
								sums[e][i][c] += w * seen * below(share, mu[i][r], k)
							}
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
	}
	return out
}

// TestJoining checks that there are at most MaxHistories histories whatever a customer
// leaves open. Joining changes chances, before or after evidence, by at most .005 for
// cars of a known year, .01 for cars of a known decade (whose three ages are not
// joined), and .015 if those are young. It does not compare the full lists of the
// largest cases, over 2,600 combinations.
func TestJoining(t *testing.T) {
	joined, largest, most := 0, 0, 2600
	if !*slow {
		most = 800
		t.Log("not run without -slow: full lists of over 800 combinations")
	}
	for _, c := range unsure() {
		histories, err := Histories(c.ages, c.told, asked)
		if err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		checkHistories(t, c.name, histories)
		combinations := len(c.ages) * len(data().doubt) * len(roadTimes(c.told))
		for _, told := range c.told {
			combinations *= len(told.ways(30, 1))
		}
		largest = max(largest, combinations)
		if combinations > most {
			continue
		}
		whole := wholeHistories(c.ages, c.told, asked)
		if len(whole) <= MaxHistories {
			if len(histories) != len(whole) {
				t.Errorf("%s: %d histories of %d, although no joining is needed", c.name, len(histories), len(whole))
			}
			continue
		}
		joined++
		checkEnds(t, c.name, whole, histories)
		limit, apart := .005, 0.0
		if len(c.ages) > 1 {
			limit = .01
		}
		if c.ages[0].Years < 40 {
			limit = .015
		}
		a, b := chancesOf(whole), chancesOf(histories)
		for i := range a {
			apart = math.Max(apart, math.Abs(a[i]-b[i]))
		}
		t.Logf("%s: %d histories joined into %d, chances change by up to %.5f", c.name, len(whole), len(histories), apart)
		if apart > limit {
			t.Errorf("%s: joining changes a chance by %.5f", c.name, apart)
		}
	}
	if joined < 15 || largest < 100000 {
		t.Errorf("%d cases compared, %d combinations in the largest: too few to test anything", joined, largest)
	}
}

// checkEnds checks that joining changes no chance of a last climate or of an age.
func checkEnds(t *testing.T, name string, whole, joined []History) {
	t.Helper()
	chances := map[string]float64{}
	for _, l := range whole {
		chances[l.LastClimate+years(l.AgeYears)] += l.Weight
	}
	for _, l := range joined {
		chances[l.LastClimate+years(l.AgeYears)] -= l.Weight
	}
	for ending, left := range chances {
		if math.Abs(left) > 1e-12 {
			t.Errorf("%s: joining changes the chance of %[3]s by %[2]g", name, left, ending)
		}
	}
}
