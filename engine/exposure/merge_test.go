package exposure

import (
	"math"
	"testing"
)

// TestShortest checks that neighbours are joined exactly where they have the same effect.
func TestShortest(t *testing.T) {
	salt, dry := Period{"salt", 10, "driven_all_year", Whole}, Period{"dry", 10, "driven_all_year", Whole}
	for _, c := range []struct {
		name    string
		made    float64
		periods []Period
		want    int
	}{
		{"salt since 1970", 1970, []Period{salt, salt, salt}, 1},
		{"salt before 1941", 1915, []Period{salt, salt}, 1},
		{"salt while its use grows", 1941, []Period{salt, salt}, 2},
		// Middle years 1965, 1975 and 1985: in the first, salt has not reached its full use.
		{"salt from 1960", 1960, []Period{salt, salt, salt}, 2},
		// Middle years 1960 for dry air, then 1970 and 1980.
		{"dry, then salt", 1955, []Period{dry, salt, salt}, 2},
		{"without salt the year does not matter", 1941, []Period{dry, dry}, 1},
		{"summers have no salt", 1941, []Period{{"salt", 10, "driven_in_summer", Whole}, {"salt", 10, "driven_in_summer", Whole}}, 1},
		{"empty ones", 1970, []Period{{"dry", 0, "garage", Whole}, salt, {"dry", 0, "garage", Whole}, salt}, 1},
		{"on the road, then off it", 1970, []Period{{"salt", 10, "garage", OnRoad}, {"salt", 10, "garage", OffRoad}}, 2},
		{"on the road, or not asked", 1970, []Period{{"salt", 10, "driven_all_year", OnRoad}, salt}, 2},
		{"kept in two ways with the same effect", 1970, []Period{{"salt", 10, "driven_all_year", OnRoad}, {"salt", 10, "open_shed_or_outside", OnRoad}}, 1},
		{"kept in two ways", 1970, []Period{{"salt", 10, "driven_all_year", OnRoad}, {"salt", 10, "garage", OnRoad}}, 2},
	} {
		got := shortest(c.periods, c.made)
		if len(got) != c.want {
			t.Errorf("%s: %v, want %d", c.name, got, c.want)
		}
		// The short form has the same loss.
		long, short := with(c.made, 7, c.periods), with(c.made, 7, got)
		if a, b := long.Medians(2, .85, 5, .7, 1), short.Medians(2, .85, 5, .7, 1); !alikeWithin(a, b, 1e-12) {
			t.Errorf("%s: μ %v, in short form %v", c.name, a, b)
		}
	}
}

// TestLife checks that lives are equal if they have the same effect, whatever their
// chance and rates, and differ otherwise.
func TestLife(t *testing.T) {
	of := func(change func(*History)) string {
		l := with(1960, 20, []Period{{"salt", 10, "driven_all_year", OnRoad}, {"dry", 40, "driven_in_summer", Whole}})
		change(&l)
		return l.Life()
	}
	life := of(func(*History) {})
	for name, change := range map[string]func(*History){
		"chance": func(l *History) { l.Weight = .3 }, "rates": func(l *History) { l.RatesTimes = .75 },
		"way of keeping that acts alike": func(l *History) { l.Periods[0].Kept = "open_shed_or_outside" },
	} {
		if got := of(change); got != life {
			t.Errorf("different %s: %s, was %s", name, got, life)
		}
	}
	seen := map[string]string{life: "none"}
	for name, change := range map[string]func(*History){
		"year of make": func(l *History) { l.Made++ }, "age": func(l *History) { l.AgeYears++ }, "year of work": func(l *History) { l.WorkYearsAgo++ },
		"climate": func(l *History) { l.Periods[0].Climate = "damp" }, "years": func(l *History) { l.Periods[0].Years = 9 },
		"kept": func(l *History) { l.Periods[0].Kept = "garage" }, "use": func(l *History) { l.Periods[0].Use = Whole },
		"one period less": func(l *History) { l.Periods = l.Periods[:1] },
	} {
		got := of(change)
		if other, same := seen[got]; same {
			t.Errorf("changing %s and changing %s both give %s", name, other, got)
		}
		seen[got] = name
	}
}

// TestLifeNamesAir checks that road splash which corrodes like air makes two lives
// differ even if their shares in data/kept.json are equal.
func TestLifeNamesAir(t *testing.T) {
	kept := data().kept
	i, before := 3, kept[3].ways[Whole]
	defer func() { kept[i].ways[Whole] = before }()
	summer := Period{"salt", 20, "driven_in_summer", Whole}
	w, _ := wayOf(summer.Kept, Whole)
	kept[i].ways[Whole] = way{w.share, true}
	garage := summer
	garage.Kept = kept[i].id
	a, b := with(1970, 0, []Period{summer}), with(1970, 0, []Period{garage})
	if mu(a, 1, .85, 5, 1, 1) == mu(b, 1, .85, 5, 1, 1) || a.Life() == b.Life() {
		t.Errorf("%s and %s", a.Life(), b.Life())
	}
}

// TestMerging checks that equal histories are merged, and that the years after joined
// lives have their own rates.
func TestMerging(t *testing.T) {
	same := Period{"salt", 10, "garage", Whole}
	histories, err := Exact([]Alternative{{.25, []Period{same, same}}, {.5, []Period{{"salt", 20, "garage", Whole}}}, {.25, []Period{{"salt", 21, "garage", Whole}}}}, asked)
	if err != nil || len(histories) != 6 {
		t.Fatalf("%v %v", histories, err)
	}
	if l := histories[0]; l.AgeYears != 20 || math.Abs(l.Weight-.75*.7) > 1e-12 {
		t.Errorf("%+v", l)
	}
	joined := with(1990, 0, []Period{same})
	joined.Weight, joined.RatesTimes = .5, 1.1
	for _, l := range cross([]History{joined}, []stretch{{.5, []Period{{"dry", 3, "garage", Whole}}}, {.5, []Period{{"dry", 4, "garage", Whole}}}}) {
		if l.RatesTimes != 1 || l.Weight != .25 || len(l.Periods) != 2 {
			t.Errorf("%+v", l)
		}
	}
}
