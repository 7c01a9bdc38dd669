package rates

import "strconv"

// DaysBetween counts the days from one date to a later one, both YYYY-MM-DD and checked.
func DaysBetween(from, to string) int { return dayNumber(to) - dayNumber(from) }

// AfterDays returns the date a number of days after a checked date.
func AfterDays(date string, days int) string {
	n := dayNumber(date) + days
	// A year that begins in March: find it from the mean length, then correct.
	y := n * 400 / 146097
	if n < firstDay(y) {
		y--
	} else if n >= firstDay(y+1) {
		y++
	}
	day := n - firstDay(y)
	m := (5*day + 2) / 153
	d := day - (153*m+2)/5 + 1
	if m += 3; m > 12 {
		y, m = y+1, m-12
	}
	return written(y, m, d)
}

// AfterMonths returns the same day of the month some months after a checked date, or the
// last day of a month that is shorter.
func AfterMonths(date string, months int) string {
	y, m, d := number(date[:4]), number(date[5:7])-1+months, number(date[8:])
	y, m = y+m/12, m%12+1
	next := written(y+m/12, m%12+1, 1)
	return written(y, m, min(d, DaysBetween(written(y, m, 1), next)))
}

// dayNumber counts days in the Gregorian calendar from 1 March of the year 0. A year that
// begins in March has its leap day last, and its months' lengths follow (153·m + 2) ÷ 5
// (H. F. Fliegel and T. C. Van Flandern, Comm. ACM 11, 1968).
func dayNumber(date string) int {
	y, m, d := number(date[:4]), number(date[5:7]), number(date[8:])
	if m <= 2 {
		y, m = y-1, m+12
	}
	return firstDay(y) + (153*(m-3)+2)/5 + d - 1
}

// firstDay is the day number of 1 March of a year.
func firstDay(y int) int { return 365*y + y/4 - y/100 + y/400 }

func written(y, m, d int) string {
	return strconv.Itoa(10_000 + y)[1:] + "-" + strconv.Itoa(100 + m)[1:] + "-" + strconv.Itoa(100 + d)[1:]
}

func number(digits string) int {
	n, err := strconv.Atoi(digits)
	if err != nil {
		panic("engine: internal error: date " + digits)
	}
	return n
}
