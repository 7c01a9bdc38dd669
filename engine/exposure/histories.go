package exposure

import (
	"strconv"

	"underpaint/engine/strict"
)

// Asked holds what all alternative histories of a car have in common.
type Asked struct {
	Year     int // calendar year of asking; the engine has no clock
	WorkedIn int // calendar year of an earlier restoration, 0 = not known
}

// Alternative is one exact history with its chance.
type Alternative struct {
	Chance  float64
	Periods []Period
}

// Histories turns the told periods, earliest place first and the main place (Years 0)
// last, into the alternative histories of the car: every combination of age, places,
// ways of keeping and years on the road, each with its rates as told, lower and higher.
// In the car file the main place is life[0] and the earlier ones are life[1] and so on;
// errors use those paths.
func Histories(ages Ages, told []ToldPeriod, asked Asked) ([]History, error) {
	if err := asked.check(); err != nil {
		return nil, err
	}
	if len(told) == 0 {
		return nil, &strict.Error{Path: "life", Found: "nothing", Expected: "at least the main place"}
	}
	main := len(told) - 1
	for i, t := range told {
		if err := t.check(lifePath(i, main), i == main); err != nil {
			return nil, err
		}
	}
	ages, err := fitting(ages, told[:main])
	if err != nil {
		return nil, err
	}
	var all []History
	times := roadTimes(told)
	for _, age := range ages {
		// The multiplier is the same for all periods of a history.
		for _, multiplier := range times {
			lives := []History{asked.begin(age.Years)}
			lives[0].Weight = age.Chance * multiplier.chance
			spent := 0.0
			for _, t := range told[:main] {
				spent += t.Years
				lives = cross(lives, t.ways(t.Years, multiplier.value))
				if most := mostLives / len(times); len(lives) > most {
					lives = reduce(lives, probeAhead(lives, age.Years-spent), most, anyEnd)
				}
			}
			all = append(all, cross(lives, told[main].ways(age.Years-spent, multiplier.value))...)
		}
	}
	return finish(all), nil
}

// Exact builds the histories of lives known period by period, with their chances (which
// add up to 1), each with its rates as told, lower and higher. The age of an
// alternative is the sum of its years.
func Exact(alternatives []Alternative, asked Asked) ([]History, error) {
	if err := asked.check(); err != nil {
		return nil, err
	}
	var all []History
	total := 0.0
	for i, a := range alternatives {
		path := "where_it_lived[" + strconv.Itoa(i) + "]"
		if len(a.Periods) == 0 {
			return nil, &strict.Error{Path: path + ".periods", Found: "none", Expected: "at least one period"}
		}
		age := 0.0
		for k, p := range a.Periods {
			if err := p.check(path + ".periods[" + strconv.Itoa(k) + "]"); err != nil {
				return nil, err
			}
			age += p.Years
		}
		total += a.Chance
		l := asked.begin(age)
		l.Weight, l.Periods = a.Chance, a.Periods
		all = append(all, l)
	}
	if !(total > 1-1e-9 && total < 1+1e-9) {
		return nil, &strict.Error{Path: "where_it_lived", Found: "chances adding up to " + years(total), Expected: "chances adding up to 1"}
	}
	return finish(all), nil
}

// check rejects a year of asking in which none of these bodies can exist. It accepts any
// year of work: see begin.
func (a Asked) check() error {
	if a.Year < 1900 || a.Year > 2200 {
		return &strict.Error{Path: "asked_in", Found: strconv.Itoa(a.Year), Expected: "a year from 1900 to 2200"}
	}
	return nil
}

// begin returns a history of the given age without periods. A year of work before the
// make counts as the year of make, and one after the year of asking as that year.
func (a Asked) begin(age float64) History {
	ago := min(data().workAtMost, float64(data().workShareOfAge*age))
	if a.WorkedIn != 0 {
		ago = max(0, min(age, float64(a.Year-a.WorkedIn)))
	}
	return History{RatesTimes: 1, AgeYears: age, Made: float64(a.Year) - age, WorkYearsAgo: ago}
}

// lifePath is the car-file path of told period i of 0..main.
func lifePath(i, main int) string {
	if i == main {
		return "life[0]"
	}
	return "life[" + strconv.Itoa(i+1) + "]"
}

// fitting keeps the ages that leave some years for the main place.
func fitting(ages Ages, earlier []ToldPeriod) (out Ages, err error) {
	oldest := 0.0
	for _, a := range ages {
		oldest = max(oldest, a.Years)
	}
	spent := 0.0
	for i, t := range earlier {
		if spent += t.Years; spent >= oldest {
			return nil, &strict.Error{Path: lifePath(i, len(earlier)) + ".years", Found: years(t.Years),
				Expected: "fewer than " + years(oldest-spent+t.Years) + " years, because the car is " + years(oldest) + " years old and its main place needs some of them"}
		}
	}
	total := 0.0
	for _, a := range ages {
		if a.Years > spent && a.Chance > 0 {
			out = append(out, a)
			total += a.Chance
		}
	}
	if total == 0 {
		return nil, &strict.Error{Path: "made", Found: "no age", Expected: "at least one possible age of more than 0 years"}
	}
	for i := range out {
		out[i].Chance /= total
	}
	return out, nil
}

// years formats a number of years (or any number) without needless digits.
func years(n float64) string { return strconv.FormatFloat(n, 'g', 6, 64) }
