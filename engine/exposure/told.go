package exposure

import (
	"strconv"

	"underpaint/engine/strict"
)

// NotSure is the answer of somebody who does not know.
const NotSure = "not_sure"

// Weighted is one alternative with its chance.
type Weighted struct {
	ID     string
	Chance float64
}

// WeightedAge is one alternative age in years with its chance.
type WeightedAge struct {
	Years  float64
	Chance float64
}

// Ages lists the possible ages of the car; the chances sum to 1.
type Ages []WeightedAge

// ToldPeriod is what a customer says of one part of the car's life.
type ToldPeriod struct {
	Climates  []Weighted // climate ids; several when the place is not sure
	Years     float64    // 0 = the rest of its life
	Kept      string     // driven_all_year, driven_in_summer, mostly_garaged, mostly_outside, not_sure
	RoadYears string     // under_10, 10_to_20, 20_to_35, over_35, not_sure
}

// MadeIn returns the age of a car made in a known year. One made in the year of
// asking counts as half a year old (assumption).
func MadeIn(year, askedIn int) (Ages, error) {
	return agesOf(chances{{0, 1}}, year, askedIn, "made.year", "a year")
}

// MadeInDecade returns the ages of a car known by its decade, given as its first
// year: three years stand for the ten (assumption). Years after askedIn are ruled
// out.
func MadeInDecade(decade, askedIn int) (Ages, error) {
	return agesOf(data().decade, decade, askedIn, "made.decade", "a decade")
}

// MadeNotSure returns the ages of a car whose decade is not known either.
func MadeNotSure(askedIn int) (Ages, error) {
	return agesOf(data().notSure, 0, askedIn, "asked_in", "a car")
}

// agesOf takes the years that lie in the past of askedIn.
func agesOf(years chances, from, askedIn int, path, what string) (ages Ages, err error) {
	total := 0.0
	for _, y := range years {
		if age := float64(askedIn-from) - y.value; age >= 0 {
			ages = append(ages, WeightedAge{max(data().youngest, age), y.chance})
			total += y.chance
		}
	}
	if total == 0 {
		return nil, &strict.Error{Path: path, Found: strconv.Itoa(from), Expected: what + " that had begun by " + strconv.Itoa(askedIn)}
	}
	for i := range ages {
		ages[i].Chance /= total
	}
	return ages, nil
}

// check refuses a told period that no rule of this package knows. path is its
// place in the car file; last says that it takes the rest of the car's life.
func (t ToldPeriod) check(path string, last bool) error {
	if last && t.Years != 0 {
		return &strict.Error{Path: path + ".years", Found: years(t.Years), Expected: "none, since the main place takes the rest of the car's life"}
	}
	if !last && !(t.Years > 0 && t.Years <= 200) {
		return &strict.Error{Path: path + ".years", Found: years(t.Years), Expected: "1 to 200 years"}
	}
	total := 0.0
	for _, c := range t.Climates {
		if _, ok := ClimateOf(c.ID); !ok || !(c.Chance >= 0) {
			return &strict.Error{Path: path + ".place", Found: c.ID, Expected: "dry, mild, damp, salt or sea"}
		}
		total += c.Chance
	}
	if !(total > 1-1e-9 && total < 1+1e-9) {
		return &strict.Error{Path: path + ".place", Found: "chances adding up to " + years(total), Expected: "chances adding up to 1"}
	}
	known := t.Kept == NotSure
	for _, k := range data().keptAnswers {
		known = known || t.Kept == k.id
	}
	if !known {
		return &strict.Error{Path: path + ".kept", Found: t.Kept, Expected: "driven_all_year, driven_in_summer, mostly_garaged, mostly_outside or not_sure"}
	}
	if _, ok := data().roadYears[t.RoadYears]; !ok && t.RoadYears != NotSure {
		return &strict.Error{Path: path + ".road_years", Found: t.RoadYears, Expected: "under_10, 10_to_20, 20_to_35, over_35 or not_sure"}
	}
	return nil
}

// lives are the ways in which one told period of a length may have gone.
func (t ToldPeriod) lives(length float64) (out []Level) {
	for _, c := range t.Climates {
		climate, _ := ClimateOf(c.ID)
		for _, k := range data().keptAnswers {
			chance := c.Chance
			if t.Kept == NotSure {
				chance *= k.ifNotSure
			} else if t.Kept != k.id {
				continue
			}
			for _, r := range t.onTheRoad(climate, k, length) {
				out = append(out, Level{Weight: chance * r.chance, RatesTimes: 1, Periods: []Period{
					{c.ID, r.value, k.onTheRoad}, {c.ID, length - r.value, k.putAway}}})
			}
		}
	}
	return mergeEqual(out)
}

// onTheRoad are the years on the road with their chances, within the length of
// the period.
func (t ToldPeriod) onTheRoad(c Climate, k keptAnswer, length float64) chances {
	times, unit, share := data().roadYearsTimes, c.RoadYears, k.roadYearsTimes
	if told, ok := data().roadYears[t.RoadYears]; ok {
		times, unit, share = told, 1, 1
	}
	out := append(chances{}, times...)
	for i := range out {
		out[i].value = share * min(out[i].value*unit, length)
	}
	return out
}

// years writes a number of years (or a plain number) without needless digits.
func years(n float64) string { return strconv.FormatFloat(n, 'g', 6, 64) }
