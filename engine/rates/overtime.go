package rates

import (
	"slices"

	"underpaint/engine/strict"
)

// The ways in which a shop can promise its prices.
const (
	HeldThroughout = "held_for_the_whole_job"
	HeldUntil      = "held_until"
	HeldMonths     = "held_months"
	NotHeld        = "not_held"
)

// The days from which months are counted.
const (
	FromAuthorized = "strip_authorized"
	FromBegun      = "strip_begins"
)

// The kinds of line that a promise can hold. Parts and work sent out are bought at the
// prices of their day.
const (
	OnLabour    = "labour"
	OnMaterials = "materials"
)

// OverTime says how the shop's prices rise while a job runs, and how long it holds them.
type OverTime struct {
	Promise                  Promise
	Labour, Parts, Materials [3]float64 // per cent a year: low, likely, high
	Source                   string
}

// Promise says how long published prices hold, and which.
type Promise struct {
	How    string
	Months int      // of [HeldMonths]
	From   string   // of HeldMonths: [FromAuthorized] or [FromBegun]
	Until  string   // of [HeldUntil]: YYYY-MM-DD, the last day
	On     []string // [OnLabour], [OnMaterials], in this order; none with [NotHeld]
	Source string
}

// Holds says whether the promise is about a kind of line.
func (p *Promise) Holds(kind string) bool { return slices.Contains(p.On, kind) }

// Bounds of a promise and of a rise. Assumption: prices that rise by more than half in a
// year are a slip, or in a currency that nobody plans in.
const (
	mostMonths = 60
	leastRise  = 0.01
	mostRise   = 50
)

// readOverTime reads how prices rise; ratesOf is the day of the rates.
func readOverTime(f, ratesOf strict.Field) *OverTime {
	f.Keys(overTimeKeys...)
	return &OverTime{
		Promise:   readPromise(f.Get("promise"), ratesOf),
		Labour:    rise(f.Get("labour_percent_a_year")),
		Parts:     rise(f.Get("parts_percent_a_year")),
		Materials: rise(f.Get("materials_percent_a_year")),
		Source:    source(f),
	}
}

// rise reads three percentages a year.
func rise(f strict.Field) [3]float64 {
	if len(f.Numbers(3, -100, mostRise)) != 3 {
		return [3]float64{}
	}
	for _, item := range f.Items() {
		if item.Number(-100, mostRise) < leastRise {
			item.Complain("more than 0 % a year, at least " + plain(leastRise) + "; write 0.1 for prices that hardly rise")
		}
	}
	return three(f, leastRise, mostRise)
}

func readPromise(f, ratesOf strict.Field) (p Promise) {
	f.Keys(promiseKeys...)
	p.Source = source(f)
	p.How = f.Get("how").OneOf(HeldThroughout, HeldUntil, HeldMonths, NotHeld)
	only(f, "until", p.How == HeldUntil, "\""+HeldUntil+"\"")
	only(f, "months", p.How == HeldMonths, "\""+HeldMonths+"\"")
	only(f, "from", p.How == HeldMonths, "\""+HeldMonths+"\"")
	switch p.How {
	case HeldUntil:
		p.Until = f.Get("until").Date()
		if of, known := dateIn(ratesOf); known && p.Until < of { // ISO 8601 dates sort as text
			f.Get("until").Complain("a date not before rates_of, " + of)
		}
	case HeldMonths:
		p.Months, p.From = f.Get("months").Whole(1, mostMonths), FromAuthorized
		if f.Has("from") {
			p.From = f.Get("from").OneOf(FromAuthorized, FromBegun)
		}
	case NotHeld:
		if f.Has("on") && len(f.Get("on").Items()) > 0 {
			f.Get("on").Complain("nothing, because with \"" + NotHeld + "\" no price is held")
		}
		return p
	}
	kinds := []string{OnLabour, OnMaterials}
	for n, held := range chosen(f.Get("on"), kinds, 1) {
		if held {
			p.On = append(p.On, kinds[n])
		}
	}
	return p
}

// only complains about a member that goes with another promise.
func only(f strict.Field, name string, goes bool, with string) {
	if !goes && f.Has(name) {
		f.Get(name).Complain("no such entry except with " + with)
	}
}

// dateIn returns a date without a complaint where it is none: the section that reads it
// complains.
func dateIn(f strict.Field) (string, bool) {
	if f.Kind() != "string" {
		return "", false
	}
	s := f.Text(1000)
	return s, strict.IsDate(s)
}

// LongestHeld is the most weeks of a job for which nobody finds it odd that prices are
// held throughout: two years (assumption).
const LongestHeld = 104
