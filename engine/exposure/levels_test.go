package exposure

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"underpaint/engine/strict"
)

func one(id string) []Weighted { return []Weighted{{id, 1}} }

func year(age float64) Ages { return Ages{{age, 1}} }

// text writes the levels whose rates are as told, one a line: weight as told,
// then periods.
func text(levels []Level) string {
	var b strings.Builder
	for _, l := range levels {
		if l.RatesTimes == 1 {
			fmt.Fprintf(&b, "%.4f", l.Weight/.7)
			for _, p := range l.Periods {
				fmt.Fprintf(&b, " %s %g %s", p.Climate, p.Years, p.Kept)
			}
			b.WriteString("\n")
		}
	}
	return b.String()
}

// TestLevels: what the answers stand for, worked out by hand from the tables of
// data/climates.json.
func TestLevels(t *testing.T) {
	for _, c := range []struct {
		name string
		ages Ages
		told []ToldPeriod
		want string
	}{
		{"road years not sure", year(55), []ToldPeriod{{one("mild"), 0, "driven_all_year", NotSure}}, `
0.5000 mild 15 driven_all_year mild 40 garage
0.2500 mild 22.5 driven_all_year mild 32.5 garage
0.2500 mild 9 driven_all_year mild 46 garage
`},
		{"cut at the car's age, equal ones merged", year(12), []ToldPeriod{{one("mild"), 0, "driven_all_year", NotSure}}, `
0.7500 mild 12 driven_all_year
0.2500 mild 9 driven_all_year mild 3 garage
`},
		{"summers, years told", year(50), []ToldPeriod{{one("salt"), 0, "driven_in_summer", "20_to_35"}}, `
0.5000 salt 27 driven_in_summer salt 23 garage
0.2500 salt 23 driven_in_summer salt 27 garage
0.2500 salt 32 driven_in_summer salt 18 garage
`},
		{"mostly garaged: half of what the period allows", year(14), []ToldPeriod{{one("dry"), 0, "mostly_garaged", NotSure}}, `
0.7500 dry 7 driven_all_year dry 7 garage
0.2500 dry 6 driven_all_year dry 8 garage
`},
		{"mostly garaged, years told: as told", year(40), []ToldPeriod{{one("dry"), 0, "mostly_garaged", "under_10"}}, `
0.5000 dry 7 driven_all_year dry 33 garage
0.2500 dry 4 driven_all_year dry 36 garage
0.2500 dry 9.5 driven_all_year dry 30.5 garage
`},
		{"outside", year(60), []ToldPeriod{{one("sea"), 0, "mostly_outside", "over_35"}}, `
0.5000 sea 45 driven_all_year sea 15 open_shed_or_outside
0.2500 sea 38 driven_all_year sea 22 open_shed_or_outside
0.2500 sea 52 driven_all_year sea 8 open_shed_or_outside
`},
		{"places not sure", year(8), []ToldPeriod{{[]Weighted{{"mild", .6}, {"sea", .4}}, 0, "driven_all_year", "10_to_20"}}, `
0.6000 mild 8 driven_all_year
0.4000 sea 8 driven_all_year
`},
		{"earlier place first", year(30), []ToldPeriod{
			{one("salt"), 5, "driven_all_year", "10_to_20"}, {one("dry"), 0, "driven_all_year", "over_35"}}, `
1.0000 salt 5 driven_all_year dry 25 driven_all_year
`},
		{"an age that does not fit is ruled out", Ages{{54, .3}, {61, .4}, {64, .3}}, []ToldPeriod{
			{one("salt"), 60, "driven_all_year", "over_35"}, {one("dry"), 0, "driven_all_year", "over_35"}}, `
0.2857 salt 45 driven_all_year salt 15 garage dry 1 driven_all_year
0.2143 salt 45 driven_all_year salt 15 garage dry 4 driven_all_year
0.1429 salt 38 driven_all_year salt 22 garage dry 1 driven_all_year
0.1429 salt 52 driven_all_year salt 8 garage dry 1 driven_all_year
0.1071 salt 38 driven_all_year salt 22 garage dry 4 driven_all_year
0.1071 salt 52 driven_all_year salt 8 garage dry 4 driven_all_year
`},
	} {
		levels, err := Levels(c.ages, c.told)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if got := text(levels); got != c.want[1:] {
			t.Errorf("%s:\n%swant\n%s", c.name, got, c.want)
		}
		checkLevels(t, c.name, levels)
		doubted := map[float64]float64{}
		for _, l := range levels {
			doubted[l.RatesTimes] += l.Weight
		}
		if len(doubted) != 3 || math.Abs(doubted[1]-.7) > 1e-12 || math.Abs(doubted[.75]-.15) > 1e-12 || math.Abs(doubted[1.33]-.15) > 1e-12 {
			t.Errorf("%s: doubt %v", c.name, doubted)
		}
	}
}

// checkLevels checks what every list of levels promises.
func checkLevels(t *testing.T, name string, levels []Level) {
	t.Helper()
	sum, seen := 0.0, map[string]bool{}
	for i, l := range levels {
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
		if i > 0 && levels[i-1].Weight < l.Weight {
			t.Errorf("%s: level %d out of order", name, i)
		}
		if seen[l.key()] {
			t.Errorf("%s: %s twice", name, l.key())
		}
		seen[l.key()] = true
	}
	if math.Abs(sum-1) > 1e-12 || len(levels) > MaxLevels {
		t.Errorf("%s: %d levels of weight %.15g", name, len(levels), sum)
	}
}

// TestNotSureOfKept: a mixture in the chances .4 .2 .2 .2.
func TestNotSureOfKept(t *testing.T) {
	levels, err := Levels(year(50), []ToldPeriod{{one("mild"), 0, NotSure, "10_to_20"}})
	if err != nil {
		t.Fatal(err)
	}
	by := map[string]float64{}
	for _, l := range levels {
		by[l.Periods[0].Kept+" "+l.Periods[1].Kept] += l.Weight
	}
	// With years told, mostly garaged and driven all year are the same history.
	for kept, want := range map[string]float64{"driven_all_year garage": .6, "driven_in_summer garage": .2, "driven_all_year open_shed_or_outside": .2} {
		if math.Abs(by[kept]-want) > 1e-12 {
			t.Errorf("%s: %.3f, want %.1f", kept, by[kept], want)
		}
	}
}

func TestAges(t *testing.T) {
	for _, c := range []struct {
		name string
		ages func() (Ages, error)
		want Ages
		path string
	}{
		{"year", func() (Ages, error) { return MadeIn(1967, 2026) }, Ages{{59, 1}}, ""},
		{"this year", func() (Ages, error) { return MadeIn(2026, 2026) }, Ages{{.5, 1}}, ""},
		{"next year", func() (Ages, error) { return MadeIn(2027, 2026) }, nil, "made.year"},
		{"decade", func() (Ages, error) { return MadeInDecade(1960, 2026) }, Ages{{64, .3}, {61, .4}, {58, .3}}, ""},
		{"decade not over", func() (Ages, error) { return MadeInDecade(2020, 2026) }, Ages{{4, .3 / .7}, {1, .4 / .7}}, ""},
		{"decade to come", func() (Ages, error) { return MadeInDecade(2030, 2026) }, nil, "made.decade"},
		{"not sure", func() (Ages, error) { return MadeNotSure(2025) }, Ages{{70, .3}, {60, .4}, {50, .3}}, ""},
	} {
		got, err := c.ages()
		var wrong *strict.Error
		if errors.As(err, &wrong) != (c.path != "") || wrong != nil && wrong.Path != c.path || len(got) != len(c.want) {
			t.Errorf("%s: %v %v", c.name, got, err)
			continue
		}
		for i := range got {
			if got[i].Years != c.want[i].Years || math.Abs(got[i].Chance-c.want[i].Chance) > 1e-12 {
				t.Errorf("%s: %v, want %v", c.name, got, c.want)
			}
		}
	}
}

func TestErrors(t *testing.T) {
	main := ToldPeriod{one("mild"), 0, "driven_all_year", NotSure}
	with := func(change func(*ToldPeriod)) ToldPeriod { p := main; p.Years = 5; change(&p); return p }
	for _, c := range []struct {
		name string
		told []ToldPeriod
		want string
	}{
		{"nothing", nil, "life: expected at least the main place, found nothing"},
		{"too long", []ToldPeriod{with(func(p *ToldPeriod) { p.Years = 70 }), main},
			"life[1].years: expected fewer than 55 years, since the car is 55 years old and its main place needs some of them, found 70"},
		{"nothing left for the main place", []ToldPeriod{with(func(p *ToldPeriod) { p.Years = 20 }), with(func(p *ToldPeriod) { p.Years = 35 }), main},
			"life[2].years: expected fewer than 35 years, since the car is 55 years old and its main place needs some of them, found 35"},
		{"no years", []ToldPeriod{with(func(p *ToldPeriod) { p.Years = 0 }), main}, "life[1].years: expected 1 to 200 years, found 0"},
		{"not a number", []ToldPeriod{with(func(p *ToldPeriod) { p.Years = math.NaN() }), main}, "life[1].years: expected 1 to 200 years, found NaN"},
		{"years of the main place", []ToldPeriod{with(func(p *ToldPeriod) {})}, "life[0].years: expected none, since the main place takes the rest of the car's life, found 5"},
		{"climate", []ToldPeriod{with(func(p *ToldPeriod) { p.Climates = one("wet") }), main}, "life[1].place: expected dry, mild, damp, salt or sea, found wet"},
		{"chances", []ToldPeriod{with(func(p *ToldPeriod) { p.Climates = []Weighted{{"dry", .5}} }), main}, "life[1].place: expected chances adding up to 1, found chances adding up to 0.5"},
		{"kept", []ToldPeriod{with(func(p *ToldPeriod) { p.Kept = "garage" }), main},
			"life[1].kept: expected driven_all_year, driven_in_summer, mostly_garaged, mostly_outside or not_sure, found garage"},
		{"road years", []ToldPeriod{with(func(p *ToldPeriod) { p.RoadYears = "" }), main}, "life[1].road_years: expected under_10, 10_to_20, 20_to_35, over_35 or not_sure"},
	} {
		_, err := Levels(year(55), c.told)
		var wrong *strict.Error
		if !errors.As(err, &wrong) || err.Error() != c.want {
			t.Errorf("%s: %v\nwant %s", c.name, err, c.want)
		}
	}
	for name, bad := range map[string][]Alternative{
		"no period": {{1, nil}}, "climate": {{1, []Period{{"wet", 1, "garage"}}}}, "kept": {{1, []Period{{"dry", 1, "cellar"}}}},
		"years": {{1, []Period{{"dry", 0, "garage"}}}}, "chances": {{.5, []Period{{"dry", 1, "garage"}}}}, "none": nil,
	} {
		if levels, err := Exact(bad); err == nil {
			t.Errorf("%s: %v", name, levels)
		}
	}
	if _, err := Levels(nil, []ToldPeriod{main}); err == nil {
		t.Error("no age taken")
	}
}
