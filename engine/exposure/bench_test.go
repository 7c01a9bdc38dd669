package exposure

import (
	"fmt"
	"testing"
)

// BenchmarkLevelsNotSure: nothing is known but the year or the decade, with up to
// two earlier places.
func BenchmarkLevelsNotSure(b *testing.B) {
	all, _ := ClimatesAt(NotSure, "")
	decade, _ := MadeInDecade(1960, 2026)
	for name, ages := range map[string]Ages{"year": {{59, 1}}, "decade": decade} {
		for earlier := range 3 {
			told := []ToldPeriod{{all, 0, NotSure, NotSure}}
			for range earlier {
				told = append([]ToldPeriod{{all, 7, NotSure, NotSure}}, told...)
			}
			b.Run(fmt.Sprintf("%s+%d", name, earlier), func(b *testing.B) {
				for b.Loop() {
					if _, err := Levels(ages, told, Asked{Year: 2026}); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
	}
}

func BenchmarkMedians(b *testing.B) {
	l := Level{RatesTimes: 1, AgeYears: 56, Made: 1970, WorkYearsAgo: 25, Periods: []Period{{"salt", 9, "driven_all_year", Whole}, {"dry", 47, "garage", Whole}}}
	for b.Loop() {
		l.Medians(2, .85, 5, .5, 1)
	}
}
