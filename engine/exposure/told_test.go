package exposure

import (
	"bytes"
	"errors"
	"math"
	"testing"

	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"

	"underpaint/engine/strict"
)

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
			"life[1].years: expected fewer than 55 years, because the car is 55 years old and its main place needs some of them, found 70"},
		{"nothing left for the main place", []ToldPeriod{with(func(p *ToldPeriod) { p.Years = 20 }), with(func(p *ToldPeriod) { p.Years = 35 }), main},
			"life[2].years: expected fewer than 35 years, because the car is 55 years old and its main place needs some of them, found 35"},
		{"no years", []ToldPeriod{with(func(p *ToldPeriod) { p.Years = 0 }), main}, "life[1].years: expected 1 to 200 years, found 0"},
		{"not a number", []ToldPeriod{with(func(p *ToldPeriod) { p.Years = math.NaN() }), main}, "life[1].years: expected 1 to 200 years, found NaN"},
		{"years of the main place", []ToldPeriod{with(func(p *ToldPeriod) {})}, "life[0].years: expected none, because the main place takes the rest of the car's life, found 5"},
		{"climate", []ToldPeriod{with(func(p *ToldPeriod) { p.Climates = one("wet") }), main}, "life[1].place: expected dry, mild, damp, salt or sea, found wet"},
		{"chances", []ToldPeriod{with(func(p *ToldPeriod) { p.Climates = []Weighted{{"dry", .5}} }), main}, "life[1].place: expected chances adding up to 1, found chances adding up to 0.5"},
		{"kept", []ToldPeriod{with(func(p *ToldPeriod) { p.Kept = "mostly_outside" }), main},
			"life[1].kept: expected driven_all_year, driven_in_summer, dry_or_heated_garage, garage, open_shed_or_outside or not_sure, found mostly_outside"},
		{"road years", []ToldPeriod{with(func(p *ToldPeriod) { p.RoadYears = "8" }), main}, "life[1].road_years: expected under_10, 10_to_20, 20_to_35, over_35 or not_sure, found 8"},
	} {
		_, err := Histories(year(55), c.told, asked)
		var wrong *strict.Error
		if !errors.As(err, &wrong) || err.Error() != c.want {
			t.Errorf("%s: %v\nwant %s", c.name, err, c.want)
		}
	}
	for _, c := range []struct {
		path string
		bad  []Alternative
	}{
		{"where_it_lived[0].periods", []Alternative{{1, nil}}},
		{"where_it_lived[0].periods[0].place", []Alternative{{1, []Period{{"wet", 1, "garage", Whole}}}}},
		{"where_it_lived[0].periods[0].kept", []Alternative{{1, []Period{{"dry", 1, "cellar", Whole}}}}},
		{"where_it_lived[0].periods[0].use", []Alternative{{1, []Period{{"dry", 1, "garage", 3}}}}},
		{"where_it_lived[0].periods[0].use", []Alternative{{1, []Period{{"dry", 1, "garage", -1}}}}},
		{"where_it_lived[0].periods[1].years", []Alternative{{1, []Period{{"dry", 1, "garage", Whole}, {"dry", 0, "garage", Whole}}}}},
		{"where_it_lived", []Alternative{{.5, []Period{{"dry", 1, "garage", Whole}}}}},
		{"where_it_lived", nil},
	} {
		histories, err := Exact(c.bad, asked)
		var wrong *strict.Error
		if !errors.As(err, &wrong) || wrong.Path != c.path {
			t.Errorf("%v: %v %v, want an error at %s", c.bad, histories, err, c.path)
		}
	}
	if _, err := Histories(nil, []ToldPeriod{main}, asked); err == nil {
		t.Error("accepted an empty list of ages")
	}
	for _, in := range []int{0, 1899, 2201} {
		_, told := Histories(year(55), []ToldPeriod{main}, Asked{Year: in})
		_, exact := Exact([]Alternative{{1, []Period{{"dry", 1, "garage", Whole}}}}, Asked{Year: in})
		for _, err := range []error{told, exact} {
			var wrong *strict.Error
			if !errors.As(err, &wrong) || wrong.Path != "asked_in" {
				t.Errorf("asked in %d: %v", in, err)
			}
		}
	}
}

var roadAnswers = []string{"under_10", "10_to_20", "20_to_35", "over_35", NotSure, ""}

var genTold = gopter.CombineGens(gen.IntRange(0, 5), gen.IntRange(0, 5), gen.IntRange(0, 5), gen.IntRange(1, 9)).Map(func(v []any) ToldPeriod {
	climates, _ := ClimatesAt(append([]string{NotSure}, climateIDs...)[v[0].(int)], "")
	return ToldPeriod{climates, float64(v[3].(int)), append(KeptIDs(), NotSure)[v[1].(int)], roadAnswers[v[2].(int)]}
})

// TestToldProperties checks the guarantees of Histories for any possible answers.
func TestToldProperties(t *testing.T) {
	parameters := gopter.DefaultTestParametersWithSeed(seed)
	parameters.MinSuccessfulTests = 60
	all := gopter.NewProperties(parameters)
	all.Property("weights, ages, order and number", prop.ForAll(
		func(earlier []ToldPeriod, main ToldPeriod, age int) bool {
			main.Years = 0
			histories, err := Histories(Ages{{float64(age), 1}}, append(append([]ToldPeriod{}, earlier...), main), asked)
			if err != nil {
				return false
			}
			checkHistories(t, "told", histories)
			for _, l := range histories {
				if l.AgeYears != float64(age) {
					return false
				}
			}
			return true
		}, gen.SliceOfN(2, genTold), genTold, gen.IntRange(19, 90)))
	all.Property("the same again", prop.ForAll(
		func(main ToldPeriod, age int) bool {
			main.Years = 0
			a, err := Histories(Ages{{float64(age), 1}}, []ToldPeriod{main}, asked)
			b, _ := Histories(Ages{{float64(age), 1}}, []ToldPeriod{main}, asked)
			return err == nil && bytes.Equal([]byte(text(a)), []byte(text(b)))
		}, genTold, gen.IntRange(1, 90)))
	run(t, all)
}
