package exposure

import (
	"bytes"
	"math"
	"testing"

	"github.com/leanovate/gopter"
	"github.com/leanovate/gopter/gen"
	"github.com/leanovate/gopter/prop"
)

// seed makes every run the same. gopter prints it if a property fails.
const seed = 20260603

var climateIDs = []string{"dry", "mild", "damp", "salt", "sea"}

// part is a kind of part: m, b, paint life, splash share, thickness.
type part [5]float64

func (p part) of(l History) [Readings]float64 { return l.Medians(p[0], p[1], p[2], p[3], p[4]) }

// genPart draws m, b and paint life from ranges wider than the bodies', and any splash
// share.
var genPart = gopter.CombineGens(gen.Float64Range(1, 5), gen.Float64Range(.4, 1), gen.Float64Range(1, 15),
	gen.Float64Range(0, 1), gen.Float64Range(.5, 4)).Map(func(v []any) part {
	return part{v[0].(float64), v[1].(float64), v[2].(float64), v[3].(float64), v[4].(float64)}
})

var genPeriod = gopter.CombineGens(gen.IntRange(0, 4), gen.IntRange(0, 4), gen.Float64Range(.1, 40), gen.IntRange(0, 2)).Map(func(v []any) Period {
	return Period{climateIDs[v[0].(int)], v[2].(float64), KeptIDs()[v[1].(int)], Use(v[3].(int))}
})

var genLife = gen.SliceOfN(4, genPeriod).SuchThat(func(p []Period) bool { return len(p) > 0 })

// genHistory draws a life of any age and era, restored at any time in it, including its
// end and its beginning.
var genHistory = gopter.CombineGens(genLife, gen.Float64Range(1930, 2000), gen.Float64Range(-.1, 1.1), gen.Float64Range(.5, 2)).Map(func(v []any) History {
	l := with(v[1].(float64), 0, v[0].([]Period))
	l.WorkYearsAgo = l.AgeYears * math.Max(0, math.Min(1, v[2].(float64)))
	l.RatesTimes = v[3].(float64)
	return l
})

// changed is a history with other periods.
func changed(l History, periods ...[]Period) History {
	out := with(l.Made, l.WorkYearsAgo, periods...)
	out.RatesTimes = l.RatesTimes
	return out
}

// notLess allows for rounding, in every reading.
func notLess(a, b [Readings]float64) bool {
	for r := range a {
		if !(a[r] >= b[r]-1e-12) {
			return false
		}
	}
	return true
}

// alikeWithin compares every reading.
func alikeWithin(a, b [Readings]float64, limit float64) bool {
	for r := range a {
		if !(math.Abs(a[r]-b[r]) < limit) {
			return false
		}
	}
	return true
}

func TestProperties(t *testing.T) {
	parameters := gopter.DefaultTestParametersWithSeed(seed)
	parameters.MinSuccessfulTests = 1000
	all := gopter.NewProperties(parameters)
	all.Property("agrees with the loss followed piece by piece", prop.ForAll(
		func(l History, p part) bool {
			return alikeWithin(p.of(l), slowMedians(l, p[0], p[1], p[2], p[3], p[4]), 1e-9)
		}, genHistory, genPart))
	// Made stays the same, because a car of another year has other sheet and paint.
	all.Property("an earlier period never lowers μ", prop.ForAll(
		func(l History, one Period, p part) bool {
			return notLess(p.of(changed(l, []Period{one}, l.Periods)), p.of(l))
		}, genHistory, genPeriod, genPart))
	all.Property("a later period in no milder a climate never lowers μ", prop.ForAll(
		func(l History, one Period, worse int, p part) bool {
			for k, id := range climateIDs {
				if id == l.LastClimate {
					one.Climate = climateIDs[min(4, k+worse)]
				}
			}
			if one.Kept == "driven_in_summer" { // its road splash counts as air, which is milder
				one.Kept = "driven_all_year"
			}
			longer := changed(l, l.Periods, []Period{one})
			longer.WorkYearsAgo += one.Years
			return notLess(p.of(longer), p.of(l))
		}, genHistory, genPeriod, gen.IntRange(0, 4), genPart))
	all.Property("a later period of any kind never lowers μ once metal has been bare for long", prop.ForAll(
		func(l History, one Period, p part) bool {
			sea := []Period{{"sea", 40, "driven_all_year", Whole}}
			bare, longer := changed(l, l.Periods, sea), changed(l, l.Periods, sea, []Period{one})
			bare.WorkYearsAgo += 40
			longer.WorkYearsAgo += 40 + one.Years
			return notLess(p.of(longer), p.of(bare))
		}, genHistory, genPeriod, genPart))
	all.Property("longer never lowers μ", prop.ForAll(
		func(l History, which int, more float64, p part) bool {
			periods := append([]Period{}, l.Periods...)
			i, after := which%len(periods), 0.0
			for _, later := range periods[i:] {
				after += later.Years
			}
			periods[i].Years += more
			longer := changed(l, periods)
			if l.WorkYearsAgo >= after { // the work was before this period
				longer.WorkYearsAgo += more
			}
			return notLess(p.of(longer), p.of(l))
		}, genHistory, gen.IntRange(0, 3), gen.Float64Range(0, 30), genPart))
	all.Property("a harsher climate never lowers μ", prop.ForAll(
		func(l History, which int, p part) bool {
			worse := append([]Period{}, l.Periods...)
			i := which % len(worse)
			for k, id := range climateIDs[:4] {
				if l.Periods[i].Climate == id {
					worse[i].Climate = climateIDs[k+1]
				}
			}
			return notLess(p.of(changed(l, worse)), p.of(l))
		}, genHistory, gen.IntRange(0, 3), genPart))
	all.Property("rates times k move every μ by ln k", prop.ForAll(
		func(l History, k float64, p part) bool {
			before := p.of(l)
			for r := range before {
				before[r] += math.Log(k)
			}
			l.RatesTimes *= k
			return alikeWithin(p.of(l), before, 1e-12)
		}, genHistory, gen.Float64Range(.5, 2), genPart))
	all.Property("from 1968 on a period cut in two is one period", prop.ForAll(
		func(l History, which int, share float64, p part) bool {
			l.Made = math.Max(l.Made, 1968)
			i := which % len(l.Periods)
			a, b := l.Periods[i], l.Periods[i]
			a.Years, b.Years = a.Years*share, a.Years*(1-share)
			return alikeWithin(p.of(changed(l, l.Periods[:i], []Period{a, b}, l.Periods[i+1:])), p.of(l), 1e-9)
		}, genHistory, gen.IntRange(0, 3), gen.Float64Range(.05, .95), genPart))
	all.Property("a restoration says nothing of the car as it is; the later, the less new metal has rusted", prop.ForAll(
		func(l History, share float64, p part) bool {
			later := l
			later.WorkYearsAgo *= share
			a, b := p.of(l), p.of(later)
			return a[AsItIs] == b[AsItIs] && a[Renewed] >= b[Renewed]-1e-12
		}, genHistory, gen.Float64Range(0, 1), genPart))
	all.Property("new metal has rusted less than what was painted over, and no more than an old car's", prop.ForAll(
		func(l History, p part) bool {
			l.Made = math.Min(l.Made, 1973) // later paint lasts longer than a restoration's
			mu := p.of(l)
			return mu[Renewed] <= mu[PaintedAgain]-math.Log(1.4)+1e-12 && mu[Renewed] <= mu[AsItIs]+1e-12
		}, genHistory, genPart))
	run(t, all)
}

func run(t *testing.T, all *gopter.Properties) {
	t.Helper()
	var out bytes.Buffer
	if !all.Run(gopter.NewFormatedReporter(false, 100, &out)) {
		t.Errorf("seed %d:\n%s", seed, out.String())
	}
}
