//go:build !js

package tests

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/damage"
	"underpaint/engine/estimate"
	"underpaint/engine/evidence"
	"underpaint/engine/exposure"
	"underpaint/engine/pricing"
	"underpaint/engine/rates"
	"underpaint/tests/figures"
	"underpaint/tests/plain"
)

// publishedCars is the number of cars on which each share is counted; no standard error
// is above .004.
const publishedCars = 20000

// Steps on the scale of conditions.
const (
	pinholes = 3
	through  = 4
)

// publishedCounts are what the model says about a setting: first by rust alone, and for
// shares of cars or parts also with causes of their own.
var publishedCounts = map[string]func(*testing.T, *publishedSetting) (float64, *float64){
	"outer_hole": func(t *testing.T, s *publishedSetting) (float64, *float64) {
		return s.share(t, pinholes, func(p *car.Part) bool { return p.Face == car.Outer })
	},
	"any_hole": func(t *testing.T, s *publishedSetting) (float64, *float64) {
		return s.share(t, pinholes, func(*car.Part) bool { return true })
	},
	"through_structural": throughStructural,
	"through": func(t *testing.T, s *publishedSetting) (float64, *float64) {
		return s.share(t, through, func(p *car.Part) bool { return slices.Contains(s.Parts, p.ID) })
	},
	"item_hole": func(t *testing.T, s *publishedSetting) (float64, *float64) {
		return s.share(t, pinholes, func(p *car.Part) bool { return slices.Contains(s.Parts, p.ID) })
	},
	"slope":            slopeInTime,
	"median_years":     medianYears,
	"salt_ratio":       saltRatio,
	"heated_garage":    heatedGarage,
	"car_sd":           carDeviation,
	"seen_right":       seenRight,
	"closed_near":      closedNear,
	"mean_over_median": meanOverMedian,
}

func throughStructural(t *testing.T, s *publishedSetting) (float64, *float64) {
	return s.share(t, through, func(p *car.Part) bool { return p.Structural })
}

// driven is the history of a car driven all year in one place.
func driven(t *testing.T, place string, age float64, asked int) []exposure.History {
	t.Helper()
	histories, err := exposure.Exact([]exposure.Alternative{{Chance: 1, Periods: []exposure.Period{{Climate: place, Years: age, Kept: "driven_all_year"}}}},
		exposure.Asked{Year: asked})
	must(t, err)
	return histories
}

// share is the share of two-door cars with a part of some sort in a condition or worse.
func (s *publishedSetting) share(t *testing.T, worst int8, of func(*car.Part) bool) (float64, *float64) {
	t.Helper()
	b, err := car.Load("two_door_unitary")
	must(t, err)
	fig, err := figures.ReadDamage("..")
	must(t, err)
	ages := map[float64]float64{s.Age: 1}
	if s.FleetMean > 0 {
		ages = fleet(s.FleetMean)
	}
	var items []int
	for i := range b.Items {
		if of(b.PartOf(i)) {
			items = append(items, i)
		}
	}
	if len(items) == 0 {
		t.Fatal("no such part")
	}
	rust, all := 0.0, 0.0
	for age, weight := range ages {
		cars, err := plain.New(plain.Told{Body: b, Histories: driven(t, s.Place, age, s.Asked), NoRepairs: true}, fig, rand.New(rand.NewPCG(7, uint64(10*age))))
		must(t, err)
		n, one := publishedCars/len(ages)+1, cars.NewCar()
		for range n {
			cars.Draw(one)
			if slices.ContainsFunc(items, func(i int) bool { return one.Rust[i] >= worst }) {
				rust += weight / float64(n)
			}
			if slices.ContainsFunc(items, func(i int) bool { return one.Worn[i] >= worst }) {
				all += weight / float64(n)
			}
		}
	}
	return rust, &all
}

// fleet returns the shares of cars of 3 to 16 years, falling by one ratio from year to
// year (assumption), with a given mean age.
func fleet(mean float64) map[float64]float64 {
	of := func(ratio float64) (out map[float64]float64, at float64) {
		out, sum := map[float64]float64{}, 0.0
		for age := 3.0; age <= 16; age++ {
			out[age] = math.Pow(ratio, age)
			sum, at = sum+out[age], at+age*out[age]
		}
		for age := range out {
			out[age] /= sum
		}
		return out, at / sum
	}
	low, high := .1, 1.0
	for range 60 {
		if _, at := of((low + high) / 2); at < mean {
			low = (low + high) / 2
		} else {
			high = (low + high) / 2
		}
	}
	out, _ := of(low)
	return out
}

// slopeInTime is the growth of the share rusted through in a structural part, in
// probits per unit of the log of age, on cars made in the setting's year.
func slopeInTime(t *testing.T, s *publishedSetting) (float64, *float64) {
	at := func(age float64) (rust, all float64) {
		one := *s
		one.Age, one.Asked = age, s.Asked+int(math.Round(age))
		rust, worn := throughStructural(t, &one)
		return chance.NormalQuantile(rust), chance.NormalQuantile(*worn)
	}
	early, earlyAll := at(6.5)
	late, lateAll := at(10.5)
	per := math.Log(10.5 / 6.5)
	all := (lateAll - earlyAll) / per
	return (late - early) / per, &all
}

// medianYears is the age at which half of such hems have holes.
func medianYears(t *testing.T, s *publishedSetting) (float64, *float64) {
	low, high := .3, 40.0
	for range 40 {
		age := (low + high) / 2
		made := float64(s.Asked)
		history := exposure.History{RatesTimes: 1, AgeYears: age, Made: made, WorkYearsAgo: 0, LastClimate: s.Place,
			Periods: []exposure.Period{{Climate: s.Place, Years: age, Kept: "driven_all_year"}}}
		if history.Medians(s.M, s.B, s.Life, s.Splash, s.MM)[exposure.AsItIs] < 0 {
			low = age
		} else {
			high = age
		}
	}
	return low, nil
}

// saltRatio is the first year's loss under heavy road salt divided by that without.
func saltRatio(t *testing.T, s *publishedSetting) (float64, *float64) {
	loss := func(id string) float64 {
		c, known := exposure.ClimateOf(id)
		if !known {
			t.Fatalf("no climate %s", id)
		}
		return math.Pow(c.AirUM, 1-s.Splash) * math.Pow(c.SplashUM, s.Splash)
	}
	return loss("salt") / loss("mild"), nil
}

// heatedGarage is the depth lost in a sill of a car in use that is kept warm and dry,
// divided by that of one kept outside.
func heatedGarage(t *testing.T, s *publishedSetting) (float64, *float64) {
	mu := func(kept string) float64 {
		history := exposure.History{RatesTimes: 1, AgeYears: s.Age, Made: float64(s.Asked) - s.Age, LastClimate: s.Place,
			Periods: []exposure.Period{{Climate: s.Place, Years: s.Age, Kept: kept, Use: exposure.OnRoad}}}
		return history.Medians(2.5, .85, 5, .9, 1)[exposure.AsItIs]
	}
	return math.Exp(mu("dry_or_heated_garage") - mu("open_shed_or_outside")), nil
}

// carDeviation is the standard deviation of the whole car's luck on the log of the
// depth.
func carDeviation(t *testing.T, _ *publishedSetting) (float64, *float64) {
	fig, err := figures.ReadDamage("..")
	must(t, err)
	return fig.Shares.Sigma * math.Sqrt(fig.Shares.Car), nil
}

// seenRight is how often a condition is recorded correctly, if all are equally likely.
func seenRight(*testing.T, *publishedSetting) (float64, *float64) {
	right := 0.0
	for k := range car.Conditions {
		right += evidence.RecordChance(false, k, k) / car.Conditions
	}
	return right, nil
}

// closedNear is how often a closed box is recorded correctly or one step out.
func closedNear(*testing.T, *publishedSetting) (float64, *float64) {
	near := 0.0
	for is := range car.Conditions {
		for as := max(0, is-1); as <= min(is+1, car.Conditions-1); as++ {
			near += evidence.RecordChance(true, is, as) / car.Conditions
		}
	}
	return near, nil
}

// meanOverMedian is the mean price of a two-door at the sample shop divided by its
// median.
func meanOverMedian(t *testing.T, s *publishedSetting) (float64, *float64) {
	b, err := car.Load("two_door_unitary")
	must(t, err)
	common, err := car.LoadCommon()
	must(t, err)
	r, err := rates.Decode(rates.Sample())
	must(t, err)
	table, err := pricing.NewTable(b, common, r, "show", "whole_body")
	must(t, err)
	histories, err := exposure.Exact([]exposure.Alternative{{Chance: 1, Periods: []exposure.Period{{Climate: s.Place, Years: 15, Kept: "driven_all_year", Use: exposure.OnRoad},
		{Climate: s.Place, Years: s.Age - 15, Kept: "driven_all_year", Use: exposure.OffRoad}}}}, exposure.Asked{Year: s.Asked})
	must(t, err)
	m, err := damage.New(damage.Known{Body: b, Histories: histories}, damage.StandardGrids)
	must(t, err)
	run := estimate.NewRun(m, []*pricing.Table{table}, 3)
	for range 4 {
		run.Add()
	}
	mean := 0.0
	for _, v := range run.Totals(0) {
		mean += float64(v) / float64(len(run.Totals(0)))
	}
	return mean / run.Range(0).Half, nil
}
