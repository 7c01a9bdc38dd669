package exposure

import (
	"fmt"
	"math"
	"strings"
	"testing"
)

// asked is the year in which all tests ask.
var asked = Asked{Year: 2026}

func one(id string) []Weighted { return []Weighted{{id, 1}} }

func year(age float64) Ages { return Ages{{age, 1}} }

// text writes the histories at undoubted rates, one per line: the weight before doubt,
// then the periods.
func text(histories []History) string {
	var b strings.Builder
	for _, l := range histories {
		if l.RatesTimes == 1 {
			fmt.Fprintf(&b, "%.4f", l.Weight/.7)
			for _, p := range l.Periods {
				fmt.Fprintf(&b, " | %s %g %s%s", p.Climate, p.Years, p.Kept, []string{"", " on", " off"}[p.Use])
			}
			b.WriteString("\n")
		}
	}
	return b.String()
}

// TestHistories compares the meaning of answers with histories worked out by hand from
// the tables in data/*.json.
func TestHistories(t *testing.T) {
	for _, c := range []struct {
		name string
		ages Ages
		told []ToldPeriod
		want string
	}{
		{"road years not sure", year(55), []ToldPeriod{{one("mild"), 0, "driven_all_year", NotSure}}, `
0.5000 | mild 15 driven_all_year on | mild 40 driven_all_year off
0.2500 | mild 22.5 driven_all_year on | mild 32.5 driven_all_year off
0.2500 | mild 9 driven_all_year on | mild 46 driven_all_year off
`},
		{"road years not asked", year(55), []ToldPeriod{{one("mild"), 0, "garage", ""}}, `
1.0000 | mild 55 garage
`},
		{"cut at the car's age, equal ones merged", year(12), []ToldPeriod{{one("mild"), 0, "garage", NotSure}}, `
0.7500 | mild 12 garage on
0.2500 | mild 9 garage on | mild 3 garage off
`},
		{"summers, years told", year(50), []ToldPeriod{{one("salt"), 0, "driven_in_summer", "20_to_35"}}, `
0.5000 | salt 27 driven_in_summer on | salt 23 driven_in_summer off
0.2500 | salt 23 driven_in_summer on | salt 27 driven_in_summer off
0.2500 | salt 32 driven_in_summer on | salt 18 driven_in_summer off
`},
		{"a dry garage", year(40), []ToldPeriod{{one("dry"), 0, "dry_or_heated_garage", "under_10"}}, `
0.5000 | dry 7 dry_or_heated_garage on | dry 33 dry_or_heated_garage off
0.2500 | dry 4 dry_or_heated_garage on | dry 36 dry_or_heated_garage off
0.2500 | dry 9.5 dry_or_heated_garage on | dry 30.5 dry_or_heated_garage off
`},
		{"outside", year(60), []ToldPeriod{{one("sea"), 0, "open_shed_or_outside", "over_35"}}, `
0.5000 | sea 45 open_shed_or_outside on | sea 15 open_shed_or_outside off
0.2500 | sea 38 open_shed_or_outside on | sea 22 open_shed_or_outside off
0.2500 | sea 52 open_shed_or_outside on | sea 8 open_shed_or_outside off
`},
		{"places not sure", year(8), []ToldPeriod{{[]Weighted{{"mild", .6}, {"sea", .4}}, 0, "driven_all_year", "10_to_20"}}, `
0.6000 | mild 8 driven_all_year on
0.4000 | sea 8 driven_all_year on
`},
		{"earlier place first", year(30), []ToldPeriod{
			{one("salt"), 5, "driven_all_year", "10_to_20"}, {one("dry"), 0, "driven_all_year", ""}}, `
1.0000 | salt 5 driven_all_year on | dry 25 driven_all_year
`},
		// Cars are on the road for 10 years in salt and 20 in dry places. One multiplier,
		// 1, 0.6 or 1.5, applies to both.
		{"one multiplier for a history", year(80), []ToldPeriod{
			{one("salt"), 30, "driven_all_year", NotSure}, {one("dry"), 0, "garage", NotSure}}, `
0.5000 | salt 10 driven_all_year on | salt 20 driven_all_year off | dry 20 garage on | dry 30 garage off
0.2500 | salt 15 driven_all_year on | salt 15 driven_all_year off | dry 30 garage on | dry 20 garage off
0.2500 | salt 6 driven_all_year on | salt 24 driven_all_year off | dry 12 garage on | dry 38 garage off
`},
		{"kept not sure, on the road all its life: outside equals driven all year", year(5), []ToldPeriod{{one("mild"), 0, NotSure, "10_to_20"}}, `
0.6000 | mild 5 driven_all_year on
0.2000 | mild 5 driven_in_summer on
0.1500 | mild 5 garage on
0.0500 | mild 5 dry_or_heated_garage on
`},
		{"kept not sure, road years not asked", year(50), []ToldPeriod{{one("mild"), 0, NotSure, ""}}, `
0.4000 | mild 50 driven_all_year
0.2000 | mild 50 open_shed_or_outside
0.2000 | mild 50 driven_in_summer
0.1500 | mild 50 garage
0.0500 | mild 50 dry_or_heated_garage
`},
		{"an age that does not fit is ruled out", Ages{{54, .3}, {61, .4}, {64, .3}}, []ToldPeriod{
			{one("salt"), 60, "garage", ""}, {one("dry"), 0, "garage", "over_35"}}, `
0.5714 | salt 60 garage | dry 1 garage on
0.4286 | salt 60 garage | dry 4 garage on
`},
	} {
		histories, err := Histories(c.ages, c.told, asked)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if got := text(histories); got != c.want[1:] {
			t.Errorf("%s:\n%swant\n%s", c.name, got, c.want)
		}
		checkHistories(t, c.name, histories)
		checkDoubt(t, c.name, histories)
	}
}

// checkHistories checks the guarantees for every list of histories.
func checkHistories(t *testing.T, name string, histories []History) {
	t.Helper()
	sum, seen := 0.0, map[string]bool{}
	for i, l := range histories {
		sum += l.Weight
		years := 0.0
		for _, p := range l.Periods {
			years += p.Years
			if p.Years <= 0 {
				t.Errorf("%s: empty period in %+v", name, l)
			}
		}
		if math.Abs(years-l.AgeYears) > 1e-9 || l.LastClimate != l.Periods[len(l.Periods)-1].Climate {
			t.Errorf("%s: %+v", name, l)
		}
		if l.Made != float64(asked.Year)-l.AgeYears || l.WorkYearsAgo < 0 || l.WorkYearsAgo > l.AgeYears {
			t.Errorf("%s: %+v", name, l)
		}
		if i > 0 && histories[i-1].Weight < l.Weight {
			t.Errorf("%s: history %d out of order", name, i)
		}
		if seen[l.key()] {
			t.Errorf("%s: %s twice", name, l.key())
		}
		seen[l.key()] = true
	}
	if math.Abs(sum-1) > 1e-12 || len(histories) > MaxHistories {
		t.Errorf("%s: %d histories of weight %.15g", name, len(histories), sum)
	}
}

// checkDoubt checks that every life has its rates as told with weight .7, and a quarter
// lower and a third higher with weight .15 each, which shifts every μ by the same amount.
func checkDoubt(t *testing.T, name string, histories []History) {
	t.Helper()
	of := map[string]map[float64]History{}
	for _, l := range histories {
		if of[l.Life()] == nil {
			of[l.Life()] = map[float64]History{}
		}
		of[l.Life()][l.RatesTimes] = l
	}
	for life, doubted := range of {
		told := doubted[1]
		total := told.Weight + doubted[.75].Weight + doubted[1.33].Weight
		for times, share := range map[float64]float64{1: .7, .75: .15, 1.33: .15} {
			l := doubted[times]
			if len(doubted) != 3 || math.Abs(l.Weight/total-share) > 1e-12 {
				t.Errorf("%s: doubt of %s: %+v", name, life, doubted)
			}
			for _, p := range probes {
				for r, got := range l.Medians(2, p[0], p[1], .5, 1) {
					if want := told.Medians(2, p[0], p[1], .5, 1)[r] + math.Log(times); math.Abs(got-want) > 1e-14 {
						t.Errorf("%s: %s, rates × %g, reading %d: %.17g, want %.17g", name, life, times, r, got, want)
					}
				}
			}
		}
	}
}

// TestWorkYearsAgo checks a known year of work, limited to the life of the car, and an
// unknown one.
func TestWorkYearsAgo(t *testing.T) {
	for _, c := range []struct {
		age  float64
		in   int
		want float64
	}{{55, 0, 25}, {50, 0, 25}, {30, 0, 15}, {.5, 0, .25}, {55, 2006, 20}, {55, 2026, 0}, {55, 2031, 0}, {55, 1971, 55}, {55, 1950, 55}} {
		told := []ToldPeriod{{one("mild"), 0, "garage", ""}}
		for name, make := range map[string]func() ([]History, error){
			"told": func() ([]History, error) { return Histories(year(c.age), told, Asked{2026, c.in}) },
			"exact": func() ([]History, error) {
				return Exact([]Alternative{{1, []Period{{"mild", c.age, "garage", Whole}}}}, Asked{2026, c.in})
			},
		} {
			histories, err := make()
			if err != nil {
				t.Fatal(err)
			}
			for _, l := range histories {
				if l.WorkYearsAgo != c.want || l.AgeYears != c.age || l.Made != 2026-c.age {
					t.Errorf("%s, age %g, worked in %d: %+v, want %g years ago", name, c.age, c.in, l, c.want)
				}
			}
		}
	}
	// A decade gives three ages, each with its own year of make and assumed year of work.
	ages, _ := MadeInDecade(1990, 2026)
	histories, err := Histories(ages, []ToldPeriod{{one("mild"), 0, "garage", ""}}, asked)
	if err != nil || len(histories) != 9 {
		t.Fatalf("%d histories, %v", len(histories), err)
	}
	for _, l := range histories {
		if l.WorkYearsAgo != l.AgeYears/2 {
			t.Errorf("%+v", l)
		}
	}
}
