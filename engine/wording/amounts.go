package wording

import (
	"math"
	"strconv"
	"strings"

	"underpaint/engine/estimate"
	"underpaint/engine/money"
	"underpaint/engine/session"
)

// Amount writes an amount without decimals where it is whole, and in full otherwise.
func (t *Text) Amount(m money.Minor) string { return t.currency.TextWhole(m) }

// ToTheUnit writes an amount to the nearest whole unit of money. An amount worked out
// from likely hours would look too exact with cents.
func (t *Text) ToTheUnit(m money.Minor) string {
	major := money.Minor(1)
	for range t.currency.Digits {
		major *= 10
	}
	return t.Amount(money.RoundNearest(m, major))
}

// Likely writes a width or another uncertain amount, in minor units, rounded to about
// a twentieth of itself.
func (t *Text) Likely(minor float64) string {
	step := money.OutwardStep(money.Minor(minor))
	return t.Amount(money.RoundNearest(money.Minor(minor), step))
}

// roughly writes the size of an uncertain amount, in minor units, without its sign and
// rounded to about a twentieth of itself.
func (t *Text) roughly(minor float64) string { return t.Amount(session.RoundLikely(minor)) }

// signedRoughly writes the same, with a minus sign where the amount is negative.
func (t *Text) signedRoughly(minor float64) string {
	if minor < 0 {
		return "\u2212" + t.roughly(minor)
	}
	return t.roughly(minor)
}

// span writes the ends of a range: "A to B".
func (t *Text) span(low, high money.Minor) string { return t.Amount(low) + " to " + t.Amount(high) }

// Ends writes a pair of exact ends, in minor units, rounded outward.
func (t *Text) Ends(low, high float64) string { return EndsIn(t.currency, low, high) }

// EndsIn does the same in a given currency.
func EndsIn(c money.Currency, low, high float64) string {
	e := session.RoundEnds(low, 0, 0, high)
	return c.TextWhole(e.Low) + " to " + c.TextWhole(e.High)
}

// Between writes the ends of an amount that is never negative, or one amount where
// both ends agree.
func (t *Text) Between(q estimate.Quantiles) string {
	e := session.RoundEnds(math.Max(0, q.Low), q.Half, 0, math.Max(q.High, 1))
	if e.Low == e.High {
		return t.Amount(e.Low)
	}
	return t.span(max(money.Minor(0), e.Low), e.High)
}

// signed writes an amount with its sign.
func (t *Text) signed(m money.Minor) string {
	switch {
	case m < 0:
		return "−" + t.Amount(-m)
	case m > 0:
		return "+" + t.Amount(m)
	}
	return t.Amount(0)
}

// Tick writes a whole amount of major units for an axis: 0, 500, 50k, 2m.
func Tick(major int64) string {
	switch {
	case major == 0:
		return "0"
	case major%1_000_000 == 0:
		return strconv.FormatInt(major/1_000_000, 10) + "m"
	case major%1000 == 0:
		return strconv.FormatInt(major/1000, 10) + "k"
	}
	return strconv.FormatInt(major, 10)
}

// Grouped writes a whole number with commas: 16,384.
func Grouped(n int64) string {
	s := strconv.FormatInt(n, 10)
	for i := len(s) - 3; i > 0; i -= 3 {
		s = s[:i] + "," + s[i:]
	}
	return s
}

// plain writes a figure as the rates have it.
func plain(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }

// tenths writes hours to a tenth below ten hours and to whole hours above.
func tenths(hours float64) string {
	if hours < 9.95 {
		return strconv.FormatFloat(math.Floor(float64(hours*10)+0.5)/10, 'f', -1, 64)
	}
	return Grouped(int64(hours + 0.5))
}

func three(v float64) string { return strconv.FormatFloat(v, 'f', 3, 64) }

func lowerFirst(s string) string {
	if s == "" {
		return s
	}
	return strings.ToLower(s[:1]) + s[1:]
}

func upperFirst(s string) string { return strings.ToUpper(s[:1]) + s[1:] }

// counted writes a number with its noun, singular or plural.
func counted(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + many
}

var months = [...]string{"January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"}

// Date writes a checked YYYY-MM-DD as June 3, 2026 (US) or 3 June 2026 (UK). An empty
// date stays empty.
func (t *Text) Date(iso string) string { return dateIn(t.words, iso) }

func dateIn(words, iso string) string {
	if iso == "" {
		return ""
	}
	month := int(iso[5]-'0')*10 + int(iso[6]-'0')
	day := iso[8:]
	if day[0] == '0' {
		day = day[1:]
	}
	if words == "uk" {
		return day + " " + months[month-1] + " " + iso[:4]
	}
	return months[month-1] + " " + day + ", " + iso[:4]
}
