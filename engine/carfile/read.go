package carfile

import (
	"slices"
	"strconv"
	"strings"

	"underpaint/engine/car"
	"underpaint/engine/damage"
	"underpaint/engine/evidence"
	"underpaint/engine/exposure"
	"underpaint/engine/pricing"
	"underpaint/engine/rates"
	"underpaint/engine/strict"
)

// Format is the first member of every car file.
const Format = "underpaint car 1"

// Bounds of what a customer may enter.
const (
	OldestYear, NewestYear = 1920, 1999
	maxLives, maxLooks     = 12, 400
)

// Car is what is known of one car, as the customer and the shop entered it.
type Car struct {
	AskedIn     int // the year in which the answers were given; the engine has no clock
	Bodies      []string
	Made        Made
	Life        []Life
	EarlierWork string // "" = not asked
	WorkYear    int    // the year of the earlier work, 0 = not given
	Covered     string // painted or undercoated in the last ten years or so: one of CoveredAnswers; "" = not asked
	AllThere    string // one of pricing.AllThereAnswers; "" = not asked
	Hit         Hit
	Standard    string // an id of car.Standards, or NotSure
	Scope       string
	AnotherBody string // whether another body would do: one of AnotherBodyAnswers; "" = not asked
	Options     []string
	Looks       []evidence.Look
	Recorded
}

// Made is when the car was made: a year, a decade, or neither.
type Made struct{ Year, Decade int }

// Life is one part of the car's life. The first is where it spent most of it; the
// others came before and have Years.
type Life struct {
	Place, Shore, Kept, RoadYears string
	Years                         int

	keptBefore string // the word in an older file from which Kept was read
}

// NotSure is the answer of somebody who does not know.
const NotSure = "not_sure"

// Decode reads a car file. The error names the first fault by its path.
func Decode(data []byte) (*Car, error) {
	f, err := strict.Parse(data)
	if err != nil {
		return nil, err
	}
	c := Read(f)
	return c, f.Err()
}

func Read(f strict.Field) *Car {
	f.Get("format").Format(Format)
	f.Keys(fileKeys...)
	c := &Car{AskedIn: f.Get("asked_in").Whole(2020, 2200)}
	c.readBodies(f.Get("bodies"))
	c.readMade(f.Get("made"))
	lives := f.Get("life").Items()
	if n := len(lives); f.Err() == nil && (n == 0 || n > maxLives) {
		f.Get("life").ComplainFound(strconv.Itoa(n)+" entries", "1 to "+strconv.Itoa(maxLives)+" places where the car lived")
	}
	for i, l := range lives {
		c.Life = append(c.Life, readLife(l, i))
	}
	if f.Has("earlier_work") {
		c.EarlierWork = f.Get("earlier_work").OneOf(damage.Answers...)
	}
	c.readWorkYear(f)
	if f.Has("covered") {
		c.Covered = f.Get("covered").OneOf(CoveredAnswers...)
	}
	if f.Has("all_there") {
		c.AllThere = f.Get("all_there").OneOf(pricing.AllThereAnswers...)
	}
	c.Hit = readHit(f)
	c.Standard = f.Get("standard").OneOf(append(append([]string{}, car.Standards...), NotSure)...)
	c.Scope = rates.ScopeIDs[0]
	if f.Has("scope") {
		c.Scope = f.Get("scope").OneOf(rates.ScopeIDs...)
	}
	if f.Has("another_body") {
		c.AnotherBody = f.Get("another_body").OneOf(AnotherBodyAnswers...)
	}
	c.readOptions(f)
	c.readLooks(f)
	c.readRecorded(f)
	c.checkYears(f)
	return c
}

func (c *Car) readBodies(f strict.Field) {
	items := f.Items()
	if n := len(items); f.Err() == nil && (n == 0 || n > len(car.BodyIDs)) {
		f.ComplainFound(strconv.Itoa(n)+" bodies", "1 to 6 of: "+strings.Join(car.BodyIDs, ", "))
	}
	for _, b := range items {
		id := b.OneOf(car.BodyIDs...)
		if slices.Contains(c.Bodies, id) {
			b.ComplainFound(id+" twice", "each body once")
		}
		c.Bodies = append(c.Bodies, id)
	}
}

func (c *Car) readMade(f strict.Field) {
	f.Keys(madeKeys...)
	if n := len(f.Names()); f.Err() == nil && n != 1 {
		f.ComplainFound(strconv.Itoa(n)+" entries", "exactly one of year, decade and not_sure")
	}
	switch {
	case f.Has("year"):
		c.Made.Year = f.Get("year").Whole(OldestYear, NewestYear)
	case f.Has("decade"):
		d := f.Get("decade")
		c.Made.Decade = d.Whole(OldestYear, NewestYear-9)
		if c.Made.Decade%10 != 0 {
			d.Complain("the first year of a decade, such as 1960")
		}
	case f.Has("not_sure"):
		if !f.Get("not_sure").Bool() {
			f.Get("not_sure").Complain("true")
		}
	}
}

func readLife(f strict.Field, i int) Life {
	f.Keys(lifeKeys...)
	l := Life{RoadYears: NotSure}
	place := f.Get("place")
	l.Place = place.Text(60)
	if l.Place != NotSure {
		if _, climate := exposure.ClimateOf(l.Place); !climate {
			if _, known := exposure.PlaceOf(l.Place); !known {
				place.Complain("a place from the list, or dry, mild, damp, salt, sea or not_sure")
			}
		}
	}
	if f.Has("shore") {
		l.Shore = f.Get("shore").OneOf("shore", "near", "inland", NotSure)
	}
	l.readKept(f.Get("kept"))
	if f.Has("road_years") {
		l.RoadYears = f.Get("road_years").OneOf("under_10", "10_to_20", "20_to_35", "over_35", NotSure)
	}
	if i > 0 {
		l.Years = f.Get("years").Whole(1, 120)
	} else if f.Has("years") {
		f.Get("years").Complain("no years here, because the first place covers the rest of the car's life")
	}
	return l
}

// KeepOldMetal is an option of every body: the customer wants to keep as much of the
// old metal as possible. No panel is then fitted whole because its pieces would cost
// more.
const KeepOldMetal = "keep_old_metal"

func (c *Car) readOptions(f strict.Field) {
	if !f.Has("options") {
		return
	}
	for _, o := range f.Get("options").Items() {
		id := o.Text(60)
		known := id == KeepOldMetal
		for _, body := range c.Bodies {
			known = known || slices.Contains(optionIDs(body), id)
		}
		if !known {
			o.Complain("an option of this body")
		}
		c.Options = append(c.Options, id)
	}
}

func (c *Car) readLooks(f strict.Field) {
	if !f.Has("looks") {
		return
	}
	items := f.Get("looks").Items()
	if len(items) > maxLooks {
		f.Get("looks").ComplainFound(strconv.Itoa(len(items))+" checks", "at most "+strconv.Itoa(maxLooks))
	}
	for _, l := range items {
		l.Keys(lookKeys...)
		c.Looks = append(c.Looks, evidence.Look{Look: l.Get("look").Text(60), On: l.Get("on").Text(60),
			Result: l.Get("result").OneOf("yes", "no", "could_not"), By: l.Get("by").OneOf("customer", "shop")})
	}
}

// checkYears refuses a car made in the future and a life longer than the car's age.
func (c *Car) checkYears(f strict.Field) {
	youngest := c.Made.Year
	if c.Made.Decade != 0 {
		youngest = c.Made.Decade + 8
	}
	if youngest == 0 {
		youngest = 1975
	}
	age := c.AskedIn - youngest
	years := 0
	for i := 1; i < len(c.Life); i++ {
		years += c.Life[i].Years
		if years >= age && f.Err() == nil {
			f.Get("life").Items()[i].Get("years").ComplainFound(strconv.Itoa(years)+" years in earlier places",
				"fewer years than the car's age of "+strconv.Itoa(age))
		}
	}
}

func optionIDs(body string) (ids []string) {
	b, err := car.Load(body)
	if err != nil {
		return nil
	}
	for _, o := range b.Options {
		ids = append(ids, o.ID)
	}
	return ids
}
