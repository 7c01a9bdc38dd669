package rates

import (
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/money"
)

// Format is the first member of every rates file.
const Format = "underpaint rates 1"

// Rates is a shop's published rates. Only [Decode] makes it, and has then checked every
// figure against the bounds in the package comment.
type Rates struct {
	Shop        Shop
	Currency    money.Currency
	Words       string // "us" or "uk"
	Units       string // "us" or "metric", for display only
	Country     string // ISO 3166-1 alpha-2
	RatesOf     string // YYYY-MM-DD
	ValidUntil  string // YYYY-MM-DD, not before RatesOf
	Labour      Labour
	Materials   []Material // in file order
	Consumables Consumables
	Parts       Parts
	WhatIsDone  *WhatIsDone // nil = starting figures
	Strip       Strip
	SentOut     SentOut
	Supplies    Supplies
	Tax         Tax
	Time        Time
	Allowance   Allowance
	Doubt       *Doubt    // never nil: the starting figures unless the shop states its own
	OverTime    *OverTime // how prices rise while a job runs; nil = they stay as published
	OldDamage   OldDamage
	AnotherBody *AnotherBody // nil = never offered
	Terms       []string
	Own         *Own  // never nil: factors of 1 where nothing was learnt
	Past        *Past // how earlier ranges came out; nil = not published

	code string
}

// Shop is the shop that publishes the rates.
type Shop struct {
	Name, Town string
	Contact    Contact
	Invented   bool // true: no such shop exists
}

// Contact is one line about how to reach the shop. Href is empty or begins with
// https:, http:, mailto: or tel:.
type Contact struct{ Text, Href string }

// Price is a published price per unit (an hour, a litre, a piece). Its method Of prices
// a quantity in thousandths of the unit.
type Price struct {
	money.Rate
	Published money.Decimal // major units, as in the file
}

// Percent is a published percentage. Its method Of takes that share of an amount.
type Percent struct {
	money.Percent
	Published money.Decimal // 6.25 = 6.25 %
}

// Labour is the price of an hour, by trade.
type Labour struct {
	Trades     [car.Trades]Trade
	Includes   []string // of "supplies", "booth", "parts_chasing"
	LeastHours float64  // least charge for a job, in hours
	Source     string
}

// IncludesIn says whether the hourly rate includes one of the things that can be
// charged separately.
func (l Labour) IncludesIn(thing string) bool { return slices.Contains(l.Includes, thing) }

// Trade is one trade's hourly rate and pace. The shop's own hours are the starting
// hours × Pace.
type Trade struct {
	Rate         Price
	Pace         float64
	Note, Source string
}

// Consumables are wire, gas and discs, charged per hour of metalwork. If Charged is
// false, the hourly rate includes them and PerMetalHour is zero.
type Consumables struct {
	Charged      bool
	PerMetalHour [3]float64 // major units: low, likely, high, as the nearest binary numbers
	Source       string
}

// Supplies are things too small to list: either in the rate or a share of labour, never
// both.
type Supplies struct {
	ShareOfLabour bool
	Percent       Percent
	Capped        bool
	NoMoreThan    money.Minor // per job, if Capped
	Source        string
}

// Time says how many hours a week one car gets, and how long the queue is.
type Time struct {
	HoursAWeek      [3]float64
	WeeksUntilStart float64
	Waits           bool
	WaitsWeeks      [3]float64 // weeks waiting for others, if Waits
	Source          string
}

// Allowance is what the shop allows for what no survey can show, such as breakage, wrong
// parts and delays: before the survey and after it.
type Allowance struct {
	Before, After Percent
	InRange       bool // counted in the range; otherwise set apart and named beside it
	Source        string
}

// CheckCode names these rates on everything priced with them: the first ten
// hexadecimal digits of the SHA-256 of the file's canonical form, in two groups
// of five.
func (r *Rates) CheckCode() string { return r.code }
