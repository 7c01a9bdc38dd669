package exposure

import (
	"strconv"

	"underpaint/engine/strict"
)

// NotSure is the answer of a customer who does not know.
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

// ToldPeriod is a customer's answer about one part of the car's life.
type ToldPeriod struct {
	Climates  []Weighted // climate ids; several if the place is not sure
	Years     float64    // 0 = the rest of the car's life
	Kept      string     // one of KeptIDs, or not_sure
	RoadYears string     // under_10, 10_to_20, 20_to_35, over_35, not_sure, or "" = not asked
}

// MadeIn returns the age of a car made in a known year. A car made in the year of
// asking counts as half a year old (assumption). A later year is an error.
func MadeIn(year, askedIn int) (Ages, error) {
	return agesOf(chances{{0, 1}}, year, askedIn, "made.year", "a year")
}

// MadeInDecade returns the ages of a car of which only the decade is known, given as its
// first year. Three years represent the ten (assumption). Years after askedIn are ruled
// out.
func MadeInDecade(decade, askedIn int) (Ages, error) {
	return agesOf(data().decade, decade, askedIn, "made.decade", "a decade")
}

// MadeNotSure returns the ages of a car of which not even the decade is known.
func MadeNotSure(askedIn int) (Ages, error) {
	return agesOf(data().notSure, 0, askedIn, "asked_in", "a car")
}

// agesOf keeps the years that are not after askedIn and rescales their chances.
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

// check rejects a told period with values that are not in the data. path is its path in
// the car file; last means that it takes the rest of the car's life.
func (t ToldPeriod) check(path string, last bool) error {
	if last && t.Years != 0 {
		return &strict.Error{Path: path + ".years", Found: years(t.Years), Expected: "none, because the main place takes the rest of the car's life"}
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
	if _, known := wayOf(t.Kept, Whole); !known && t.Kept != NotSure {
		return &strict.Error{Path: path + ".kept", Found: t.Kept, Expected: keptOrNotSure}
	}
	if _, known := data().roadYears[t.RoadYears]; !known && t.RoadYears != NotSure && t.RoadYears != "" {
		return &strict.Error{Path: path + ".road_years", Found: t.RoadYears, Expected: "under_10, 10_to_20, 20_to_35, over_35 or not_sure"}
	}
	return nil
}

const keptOrNotSure = "driven_all_year, driven_in_summer, dry_or_heated_garage, garage, open_shed_or_outside or not_sure"

// stretch is one possible course of a told period, with its chance.
type stretch struct {
	chance  float64
	periods []Period
}

// roadTimes are the multipliers of the climates' road years if the customer was not sure
// of any of them, and otherwise a single 1.
func roadTimes(told []ToldPeriod) chances {
	for _, t := range told {
		if t.RoadYears == NotSure {
			return data().roadYearsTimes
		}
	}
	return chances{{1, 1}}
}

// ways are the possible courses of a told period of the given length. If the customer is
// not sure of the road years, they are those of the climate times the multiplier.
func (t ToldPeriod) ways(length, times float64) (out []stretch) {
	for _, c := range t.Climates {
		climate, _ := ClimateOf(c.ID)
		for _, k := range data().kept {
			chance := c.Chance
			if t.Kept == NotSure {
				chance *= k.ifNotSure
			} else if t.Kept != k.id {
				continue
			}
			if t.RoadYears == "" {
				out = append(out, stretch{chance, []Period{{c.ID, length, k.id, Whole}}})
				continue
			}
			for _, r := range t.onTheRoad(climate, times) {
				road := min(r.value, length)
				out = append(out, stretch{chance * r.chance, []Period{{c.ID, road, k.id, OnRoad}, {c.ID, length - road, k.id, OffRoad}}})
			}
		}
	}
	return out
}

// onTheRoad are the years on the road with their chances. They may exceed the period;
// ways limits them.
func (t ToldPeriod) onTheRoad(c Climate, times float64) chances {
	if told, ok := data().roadYears[t.RoadYears]; ok {
		return told
	}
	return chances{{c.RoadYears * times, 1}}
}
