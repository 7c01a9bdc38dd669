package exposure

import (
	"sort"
	"strconv"
	"strings"

	"underpaint/engine/strict"
)

// Alternative is one exact history with its chance.
type Alternative struct {
	Chance  float64
	Periods []Period
}

// Levels turns what was told, earliest place first and the main place (Years 0)
// last, into the alternatives of the car's history: every combination of age,
// places, ways of keeping and years on the road, each as told and with its rates
// lower and higher. In the car file the main place is life[0], the earlier ones
// life[1] and so on; errors use those paths.
func Levels(ages Ages, told []ToldPeriod) ([]Level, error) {
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
	earlier, spent := []Level{{Weight: 1, RatesTimes: 1}}, 0.0
	for _, t := range told[:main] {
		// cross starts again from rates × 1: moved here to keep the mean, they would
		// move those of the years that follow as well.
		earlier = reduce(cross(earlier, t.lives(t.Years)), mostLives, probeAhead, anyEnd)
		spent += t.Years
	}
	var all []Level
	for _, age := range ages {
		for _, l := range cross(earlier, told[main].lives(age.Years-spent)) {
			l.Weight *= age.Chance
			all = append(all, l)
		}
	}
	return finish(all), nil
}

// Exact turns known histories with their chances (adding up to 1) into levels,
// each as told and with its rates doubted.
func Exact(alternatives []Alternative) ([]Level, error) {
	var all []Level
	total := 0.0
	for i, a := range alternatives {
		path := "where_it_lived[" + strconv.Itoa(i) + "]"
		if len(a.Periods) == 0 {
			return nil, &strict.Error{Path: path + ".periods", Found: "none", Expected: "at least one period"}
		}
		for k, p := range a.Periods {
			if err := p.check(path + ".periods[" + strconv.Itoa(k) + "]"); err != nil {
				return nil, err
			}
		}
		total += a.Chance
		all = append(all, Level{Weight: a.Chance, RatesTimes: 1, Periods: a.Periods})
	}
	if !(total > 1-1e-9 && total < 1+1e-9) {
		return nil, &strict.Error{Path: "where_it_lived", Found: "chances adding up to " + years(total), Expected: "chances adding up to 1"}
	}
	return finish(all), nil
}

func (p Period) check(path string) error {
	if _, ok := ClimateOf(p.Climate); !ok {
		return &strict.Error{Path: path + ".place", Found: p.Climate, Expected: "dry, mild, damp, salt or sea"}
	}
	if _, ok := data().kept[p.Kept]; !ok {
		return &strict.Error{Path: path + ".kept", Found: p.Kept, Expected: "driven_all_year, driven_in_summer, dry_or_heated_garage, garage or open_shed_or_outside"}
	}
	if !(p.Years > 0 && p.Years <= 200) {
		return &strict.Error{Path: path + ".years", Found: years(p.Years), Expected: "more than 0 and at most 200 years"}
	}
	return nil
}

// lifePath is where told period i of 0..main stands in a car file.
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
				Expected: "fewer than " + years(oldest-spent+t.Years) + " years, since the car is " + years(oldest) + " years old and its main place needs some of them"}
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

// cross puts each of the next stretches after each of the lives so far.
func cross(lives, next []Level) (out []Level) {
	for _, a := range lives {
		for _, b := range next {
			periods := append(append([]Period{}, a.Periods...), b.Periods...)
			out = append(out, Level{Weight: a.Weight * b.Weight, RatesTimes: 1, Periods: periods})
		}
	}
	return mergeEqual(out)
}

// finish merges, doubts, joins and orders complete lives.
func finish(lives []Level) []Level {
	lives = reduce(mergeEqual(lives), beforeDoubt, probe, sameEnd)
	var out []Level
	for _, l := range lives {
		for _, d := range data().doubt {
			doubted := l
			doubted.Weight *= d.chance
			doubted.RatesTimes *= d.value
			out = append(out, doubted)
		}
	}
	out = reduce(mergeEqual(out), MaxLevels, probe, sameEnd)
	order(out)
	return out
}

// mergeEqual writes every level in its shortest form and makes equal ones one.
// The order is that of first appearance.
func mergeEqual(levels []Level) (out []Level) {
	at := map[string]int{}
	for _, l := range levels {
		l.Periods = shortest(l.Periods)
		l.AgeYears, l.LastClimate = 0, ""
		for _, p := range l.Periods {
			l.AgeYears += p.Years
			l.LastClimate = p.Climate
		}
		key := l.key()
		if k, ok := at[key]; ok {
			out[k].Weight += l.Weight
		} else if l.Weight > 0 {
			at[key] = len(out)
			out = append(out, l)
		}
	}
	return out
}

// shortest drops empty periods and joins neighbours of the same kind, for which
// paint and metal are used up as by one period of their length.
func shortest(periods []Period) (out []Period) {
	for _, p := range periods {
		n := len(out) - 1
		switch {
		case p.Years <= 0:
		case n >= 0 && out[n].Climate == p.Climate && out[n].Kept == p.Kept:
			out[n].Years += p.Years
		default:
			out = append(out, p)
		}
	}
	return out
}

// key is the content of a level as text.
func (l Level) key() string {
	var b strings.Builder
	b.WriteString(strconv.FormatFloat(l.RatesTimes, 'g', -1, 64))
	for _, p := range l.Periods {
		b.WriteString("|" + p.Climate + " " + p.Kept + " " + strconv.FormatFloat(p.Years, 'g', -1, 64))
	}
	return b.String()
}

// order sorts by falling weight, then by content.
func order(levels []Level) {
	sort.Slice(levels, func(i, k int) bool {
		if levels[i].Weight != levels[k].Weight {
			return levels[i].Weight > levels[k].Weight
		}
		return levels[i].key() < levels[k].key()
	})
}
