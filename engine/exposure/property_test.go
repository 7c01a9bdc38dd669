package exposure

import (
	"bytes"
	"math"
	"testing"

	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"
)

// seed makes every run the same; gopter prints it when a property fails.
const seed = 20260603

var (
	climateIDs = []string{"dry", "mild", "damp", "salt", "sea"}
	keptIDs    = []string{"driven_all_year", "driven_in_summer", "dry_or_heated_garage", "garage", "open_shed_or_outside"}
	answers    = []string{"driven_all_year", "driven_in_summer", "mostly_garaged", "mostly_outside", NotSure}
	roads      = []string{"under_10", "10_to_20", "20_to_35", "over_35", NotSure}
)

// part is a kind of part: m, b, paint life, splash share, thickness.
type part [5]float64

func (p part) of(l Level) float64 { return l.Mu(p[0], p[1], p[2], p[3], p[4]) }

// genPart: m, b and paint life wider than the bodies', any splash share.
var genPart = gopter.CombineGens(gen.Float64Range(1, 5), gen.Float64Range(.4, 1), gen.Float64Range(1, 15),
	gen.Float64Range(0, 1), gen.Float64Range(.5, 4)).Map(func(v []any) part {
	return part{v[0].(float64), v[1].(float64), v[2].(float64), v[3].(float64), v[4].(float64)}
})

var genPeriod = gopter.CombineGens(gen.IntRange(0, 4), gen.IntRange(0, 4), gen.Float64Range(.1, 40)).Map(func(v []any) Period {
	return Period{climateIDs[v[0].(int)], v[2].(float64), keptIDs[v[1].(int)]}
})

var genLife = gen.SliceOfN(4, genPeriod).SuchThat(func(p []Period) bool { return len(p) > 0 })

// notLess allows for rounding.
func notLess(a, b float64) bool { return a >= b-1e-12 }

func with(periods ...[]Period) Level {
	l := Level{RatesTimes: 1}
	for _, p := range periods {
		l.Periods = append(l.Periods, p...)
	}
	return l
}

func TestProperties(t *testing.T) {
	parameters := gopter.DefaultTestParametersWithSeed(seed)
	parameters.MinSuccessfulTests = 1000
	all := gopter.NewProperties(parameters)
	all.Property("agrees with the loss followed period by period", prop.ForAll(
		func(life []Period, p part, times float64) bool {
			l := with(life)
			l.RatesTimes = times
			return math.Abs(p.of(l)-slowMu(l, p[0], p[1], p[2], p[3], p[4])) < 1e-9
		}, genLife, genPart, gen.Float64Range(.5, 2)))
	all.Property("an earlier period never lowers μ", prop.ForAll(
		func(life []Period, one Period, p part) bool {
			return notLess(p.of(with([]Period{one}, life)), p.of(with(life)))
		}, genLife, genPeriod, genPart))
	all.Property("a later period in no milder a climate never lowers μ", prop.ForAll(
		func(life []Period, one Period, worse int, p part) bool {
			last := life[len(life)-1]
			for k, id := range climateIDs {
				if id == last.Climate {
					one.Climate = climateIDs[min(4, k+worse)]
				}
			}
			if one.Kept == "driven_in_summer" { // its splash counts as air, which is milder
				one.Kept = "driven_all_year"
			}
			return notLess(p.of(with(life, []Period{one})), p.of(with(life)))
		}, genLife, genPeriod, gen.IntRange(0, 4), genPart))
	all.Property("a later period of any kind never lowers μ once metal has been bare for a year", prop.ForAll(
		func(life []Period, one Period, p part) bool {
			bare := append(append([]Period{}, life...), Period{"sea", 20, "driven_all_year"})
			return notLess(p.of(with(bare, []Period{one})), p.of(with(bare)))
		}, genLife, genPeriod, genPart))
	all.Property("longer never lowers μ", prop.ForAll(
		func(life []Period, which int, more float64, p part) bool {
			longer := append([]Period{}, life...)
			longer[which%len(life)].Years += more
			return notLess(p.of(with(longer)), p.of(with(life)))
		}, genLife, gen.IntRange(0, 3), gen.Float64Range(0, 30), genPart))
	all.Property("a harsher climate never lowers μ", prop.ForAll(
		func(life []Period, which int, p part) bool {
			worse := append([]Period{}, life...)
			i := which % len(life)
			for k, id := range climateIDs[:4] {
				if life[i].Climate == id {
					worse[i].Climate = climateIDs[k+1]
				}
			}
			return notLess(p.of(with(worse)), p.of(with(life)))
		}, genLife, gen.IntRange(0, 3), genPart))
	all.Property("rates times k move every μ by ln k", prop.ForAll(
		func(life []Period, k float64, p part) bool {
			l := with(life)
			before := p.of(l)
			l.RatesTimes = k
			return math.Abs(p.of(l)-before-math.Log(k)) < 1e-12
		}, genLife, gen.Float64Range(.5, 2), genPart))
	all.Property("a period cut in two is one period", prop.ForAll(
		func(life []Period, which int, share float64, p part) bool {
			i := which % len(life)
			a, b := life[i], life[i]
			a.Years, b.Years = a.Years*share, a.Years*(1-share)
			return math.Abs(p.of(with(life[:i], []Period{a, b}, life[i+1:]))-p.of(with(life))) < 1e-9
		}, genLife, gen.IntRange(0, 3), gen.Float64Range(.05, .95), genPart))
	run(t, all)
}

var genTold = gopter.CombineGens(gen.IntRange(0, 5), gen.IntRange(0, 4), gen.IntRange(0, 4), gen.IntRange(1, 9)).Map(func(v []any) ToldPeriod {
	climates, _ := ClimatesAt(append([]string{NotSure}, climateIDs...)[v[0].(int)], "")
	return ToldPeriod{climates, float64(v[3].(int)), answers[v[1].(int)], roads[v[2].(int)]}
})

// TestToldProperties: what Levels promises of anything that can be told.
func TestToldProperties(t *testing.T) {
	parameters := gopter.DefaultTestParametersWithSeed(seed)
	parameters.MinSuccessfulTests = 60
	all := gopter.NewProperties(parameters)
	all.Property("weights, ages, order and number", prop.ForAll(
		func(earlier []ToldPeriod, main ToldPeriod, age int) bool {
			main.Years = 0
			levels, err := Levels(Ages{{float64(age), 1}}, append(append([]ToldPeriod{}, earlier...), main))
			if err != nil {
				return false
			}
			checkLevels(t, "told", levels)
			for _, l := range levels {
				if math.Abs(l.AgeYears-float64(age)) > 1e-9 {
					return false
				}
			}
			return true
		}, gen.SliceOfN(2, genTold), genTold, gen.IntRange(19, 90)))
	all.Property("the same again", prop.ForAll(
		func(main ToldPeriod, age int) bool {
			main.Years = 0
			a, err := Levels(Ages{{float64(age), 1}}, []ToldPeriod{main})
			b, _ := Levels(Ages{{float64(age), 1}}, []ToldPeriod{main})
			return err == nil && bytes.Equal([]byte(text(a)), []byte(text(b)))
		}, genTold, gen.IntRange(1, 90)))
	run(t, all)
}

// TestHarsherPlace: for a car of 55 of which only the place is known, the mean of
// μ grows from climate to climate on every kind of part, in the splash and out of
// it, though cars in the harsher ones were laid up earlier.
func TestHarsherPlace(t *testing.T) {
	for _, kind := range probes {
		for _, splash := range []float64{0, .5, 1} {
			last := math.Inf(-1)
			for _, id := range climateIDs {
				levels, err := Levels(year(55), []ToldPeriod{{one(id), 0, "driven_all_year", NotSure}})
				if err != nil {
					t.Fatal(err)
				}
				mean := 0.0
				for _, l := range levels {
					mean += l.Weight * l.Mu(2, kind[0], kind[1], splash, 1)
				}
				if mean <= last {
					t.Errorf("b %g, paint %g years, splash %g: %s gives %.3f, the climate before %.3f", kind[0], kind[1], splash, id, mean, last)
				}
				last = mean
			}
		}
	}
}

func run(t *testing.T, all *gopter.Properties) {
	t.Helper()
	var out bytes.Buffer
	if !all.Run(gopter.NewFormatedReporter(false, 100, &out)) {
		t.Errorf("seed %d:\n%s", seed, out.String())
	}
}
