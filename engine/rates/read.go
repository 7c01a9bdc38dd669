package rates

import (
	"slices"
	"strconv"
	"strings"

	"underpaint/engine/car"
	"underpaint/engine/money"
	"underpaint/engine/strict"
)

// lowLikelyHigh says what three figures must be.
const lowLikelyHigh = "low, likely and high, none below the one before it"

// Bounds shared by several members, in major units.
const (
	highestPrice  = 1_000_000     // a price per unit; the most that money.Rate holds
	highestAmount = 1_000_000_000 // an amount or a part, also in currencies with small units
	longestSource = 300
)

// text reads a text that must not be empty.
func text(f strict.Field, most int) string {
	s := f.Text(most)
	if s == "" {
		f.Complain("a text of 1 to " + strconv.Itoa(most) + " characters")
	}
	return s
}

// optional reads a text that may be absent or empty.
func optional(f strict.Field, name string, most int) string {
	if !f.Has(name) {
		return ""
	}
	return f.Get(name).Text(most)
}

func source(f strict.Field) string { return optional(f, "source", longestSource) }
func note(f strict.Field) string   { return optional(f, "note", longestSource) }

func words(f strict.Field) car.Words {
	f.Keys(wordsKeys...)
	return car.Words{US: text(f.Get("us"), 120), UK: text(f.Get("uk"), 120)}
}

// word reads an id: a lower-case letter, then letters, digits and underscores.
func word(f strict.Field) string {
	s := f.Text(60)
	ok := s != "" && s[0] >= 'a' && s[0] <= 'z'
	for i := 0; i < len(s); i++ {
		c := s[i]
		ok = ok && (c == '_' || c >= 'a' && c <= 'z' || c >= '0' && c <= '9')
	}
	if !ok {
		f.Complain("a word of small letters, digits and underscores, such as \"epoxy_primer\"")
	}
	return s
}

// decimal reads a decimal from low to high.
func decimal(f strict.Field, low, high, what string) money.Decimal {
	literal := f.Decimal()
	if literal == "" {
		return money.Decimal{}
	}
	d, err := money.Parse(literal)
	if err != nil || d.Less(must(low)) || must(high).Less(d) {
		f.Complain(what + " from " + low + " to " + high)
		return money.Decimal{}
	}
	return d
}

func must(literal string) money.Decimal {
	d, err := money.Parse(literal)
	if err != nil {
		panic("engine: internal error: bound " + literal)
	}
	return d
}

// price reads a price per unit.
func price(f strict.Field, c money.Currency) Price {
	d := decimal(f, "0", strconv.Itoa(highestPrice), "a price")
	rate, err := c.NewRate(d)
	if err != nil {
		f.Complain("a price from 0 to " + strconv.Itoa(highestPrice))
	}
	return Price{Rate: rate, Published: d}
}

// percent reads a percentage from 0 to 100.
func percent(f strict.Field) Percent {
	d := decimal(f, "0", "100", "a percentage")
	p, err := money.NewPercent(d)
	if err != nil {
		f.Complain("a percentage from 0 to 100")
	}
	return Percent{Percent: p, Published: d}
}

// amount reads an amount of money, in whole minor units.
func amount(f strict.Field, c money.Currency) money.Minor {
	d := decimal(f, "0", strconv.Itoa(highestAmount), "an amount")
	m, exact := c.Round(d)
	if !exact {
		f.Complain("an amount with at most " + strconv.Itoa(c.Digits) + " decimals")
	}
	return m
}

// three reads low, likely and high.
func three(f strict.Field, low, high float64) (t [3]float64) {
	figures := f.Numbers(3, low, high)
	if len(figures) != 3 {
		return t
	}
	copy(t[:], figures)
	if t[0] > t[1] || t[1] > t[2] {
		f.ComplainFound(plain(t[0])+", "+plain(t[1])+", "+plain(t[2]), lowLikelyHigh)
	}
	return t
}

// threePrices reads low, likely and high of a published price as decimals.
func threePrices(f strict.Field, high int) (published [3]money.Decimal) {
	if len(f.Numbers(3, 0.01, float64(high))) != 3 {
		return published
	}
	for i, item := range f.Items() {
		published[i] = decimal(item, "0.01", strconv.Itoa(high), "a price")
	}
	if f.Err() == nil && falling(published) {
		f.ComplainFound(published[0].String()+", "+published[1].String()+", "+published[2].String(), lowLikelyHigh)
	}
	return published
}

// falling says whether one of three is below the one before it.
func falling(t [3]money.Decimal) bool { return t[1].Less(t[0]) || t[2].Less(t[1]) }

// same says whether two lists of three are equal.
func same(a, b [3]money.Decimal) bool {
	return a[0].Equal(b[0]) && a[1].Equal(b[1]) && a[2].Equal(b[2])
}

// nearest returns the binary numbers nearest to three decimals, for the model, which
// takes their logarithms.
func nearest(t [3]money.Decimal) [3]float64 {
	return [3]float64{t[0].Float(), t[1].Float(), t[2].Float()}
}

func plain(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// chosen reads a list of distinct ids, with at least least of them, and marks which of
// known it has.
func chosen(f strict.Field, known []string, least int) []bool {
	marks := make([]bool, len(known))
	items := f.Items()
	if len(items) < least {
		f.Complain("a list with at least " + strconv.Itoa(least) + " of " + strings.Join(known, ", "))
	}
	for _, item := range items {
		i := slices.Index(known, item.OneOf(known...))
		if i < 0 {
			return marks
		}
		if marks[i] {
			item.Complain("each only once")
		}
		marks[i] = true
	}
	return marks
}
