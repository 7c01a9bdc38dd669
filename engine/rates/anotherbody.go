package rates

import (
	_ "embed"
	"slices"
	"sync"

	"underpaint/engine/car"
	"underpaint/engine/money"
	"underpaint/engine/strict"
)

//go:embed data/another_body.json
var startingAnotherBody []byte

// AnotherBody says what it takes to do the job on another body instead of mending this
// one. Three figures are low, likely and high. Hours are at show standard; those of
// moving across and of its metal are for a two-door in one shell, to be scaled to other
// bodies like the steps of the strip.
type AnotherBody struct {
	Offered                []OfferedBody // in file order, at least one
	Search                 [3]float64    // hours of fitting
	MovingFit, MovingMetal [3]float64    // hours
	Papers                 [3]float64    // major units; times the price factor of parts unless PapersStated
	PapersStated           bool
	ItsMetal               [3]float64 // hours of metalwork that the other body needs itself
	PrepTimes              float64    // its strip and prep after the survey, per hour of that on this body
	DearerByPercent        float64    // by how much this body must cost more before the shop advises another
	Source                 string
}

// OfferedBody is the price of one other body. A body that is not listed is never offered.
type OfferedBody struct {
	Body      string
	Published [3]money.Decimal // low, likely, high in major units
	Price     [3]float64       // the binary numbers nearest to them
	ToBeHad   float64          // the chance that a sound one can be found, 0 to 1
	Weeks     [3]float64       // of waiting for it
	Source    string
}

// Find returns the entry of a body. It is safe on nil, which offers none.
func (a *AnotherBody) Find(body string) (OfferedBody, bool) {
	if a != nil {
		for _, one := range a.Offered {
			if one.Body == body {
				return one, true
			}
		}
	}
	return OfferedBody{}, false
}

// StartingAnotherBody returns the hours and shares of a shop that states none of its own.
// It offers no body, because every price is the shop's. Callers must not change it.
func StartingAnotherBody() *AnotherBody {
	a, _ := readStartingAnother()
	return a
}

var readStartingAnother = sync.OnceValues(func() (a *AnotherBody, weeks [3]float64) {
	f, err := strict.Parse(startingAnotherBody)
	if err == nil {
		f.Keys("format", "search", "moving_across", "papers", "its_metal", "its_prep", "waiting", "advised")
		f.Get("format").OneOf("underpaint another body 1")
		hours := func(group, name string) [3]float64 { return three(f.Get(group).Get(name), 0.01, mostOtherHours) }
		a = &AnotherBody{Search: hours("search", "fit"), MovingFit: hours("moving_across", "fit"), MovingMetal: hours("moving_across", "metal"),
			Papers: hours("papers", "price"), ItsMetal: hours("its_metal", "metal"), PrepTimes: f.Get("its_prep").Get("times").Number(0, 1),
			DearerByPercent: f.Get("advised").Get("dearer_by_percent").Number(0, 100)}
		weeks = hours("waiting", "weeks")
		if err = f.Err(); err == nil {
			return a, weeks
		}
	}
	panic("engine: internal error: the starting figures of another body: " + err.Error())
})

// Bounds of what a shop may state (assumption: beyond them the file has a slip).
const mostOtherHours, mostOtherWeeks = 10_000, 520

func readAnotherBody(f strict.Field) *AnotherBody {
	f.Keys(anotherBodyKeys...)
	start, weeks := readStartingAnother()
	a := *start
	a.Source = source(f)
	bodies := f.Get("bodies")
	items := bodies.Items()
	if len(items) == 0 {
		bodies.Complain("at least one body with a price; leave out another_body to offer none")
	}
	for _, item := range items {
		one := readOfferedBody(item, weeks)
		if slices.ContainsFunc(a.Offered, func(o OfferedBody) bool { return o.Body == one.Body }) {
			item.Get("body").Complain("each body only once")
		}
		a.Offered = append(a.Offered, one)
	}
	own := func(group string, keys []string, to ...*[3]float64) {
		if !f.Has(group) {
			return
		}
		f.Get(group).Keys(keys...)
		for k, name := range keys {
			*to[k] = three(f.Get(group).Get(name), 0.01, mostOtherHours)
		}
	}
	own("search_hours", searchKeys, &a.Search)
	own("moving_across_hours", movingKeys, &a.MovingFit, &a.MovingMetal)
	if a.PapersStated = f.Has("papers"); a.PapersStated {
		a.Papers = nearest(threePrices(f.Get("papers"), highestAmount))
	}
	if f.Has("its_metal_hours") {
		a.ItsMetal = three(f.Get("its_metal_hours"), 0.01, mostOtherHours)
	}
	if f.Has("its_prep_times") {
		a.PrepTimes = f.Get("its_prep_times").Number(0, 1)
	}
	if f.Has("advise_when_dearer_by_percent") {
		a.DearerByPercent = f.Get("advise_when_dearer_by_percent").Number(0, 100)
	}
	return &a
}

// readOfferedBody reads a price together with its chance. Neither means anything alone.
func readOfferedBody(f strict.Field, weeks [3]float64) OfferedBody {
	f.Keys(offeredBodyKeys...)
	one := OfferedBody{Body: f.Get("body").OneOf(car.BodyIDs...), Weeks: weeks, Source: source(f)}
	one.Published = threePrices(f.Get("price"), highestAmount)
	one.Price = nearest(one.Published)
	one.ToBeHad = f.Get("to_be_had").Number(0, 1)
	if f.Has("weeks") {
		one.Weeks = three(f.Get("weeks"), 0.1, mostOtherWeeks)
	}
	return one
}
