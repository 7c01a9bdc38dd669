package message

import "underpaint/engine/money"

// RangeReply holds the ranges of the open car.
//
//reply:range
type RangeReply struct {
	State            string           `json:"state" ts:"State"`
	ImaginedCarsText string           `json:"imagined_cars_text"`
	Seed             int              `json:"seed"`
	CheckCode        string           `json:"check_code"`
	CarLine          string           `json:"car_line"`
	HeldLine         string           `json:"held_line"`
	PromiseLine      string           `json:"promise_line"`
	Axis             Axis             `json:"axis"`
	Rows             []RangeRow       `json:"rows"`
	NotInIt          []string         `json:"not_in_it"`
	Cautions         []CautionMessage `json:"cautions"`
	HowSure          string           `json:"how_sure"`
	OwnRecord        []string         `json:"own_record"`
	Warnings         []string         `json:"warnings"`
	KnownLimits      []string         `json:"known_limits"`
}

// RangeGoesOnReply is the short reply while a range is still being refined and need not be
// shown yet: a full reply takes about as long as another block of simulated cars.
//
//reply:range
type RangeGoesOnReply struct {
	State string `json:"state" ts:"\"refining\""`
}

// RangeRow is the range of one body at one standard.
type RangeRow struct {
	ID            string       `json:"id"`
	Label         string       `json:"label"`
	Headline      bool         `json:"headline"`
	SentenceHead  string       `json:"sentence_head"`
	Sentence      [3]string    `json:"sentence"`
	Spoken        string       `json:"spoken"`
	LowText       string       `json:"low_text"`
	HalfText      string       `json:"half_text"`
	SetAsideText  string       `json:"set_aside_text"`
	HighText      string       `json:"high_text"`
	UntestedLine  string       `json:"untested_line"`
	RiseLine      string       `json:"rise_line"`
	FittingLine   string       `json:"fitting_line"`
	OldDamageLine string       `json:"old_damage_line,omitempty"`
	LowMinor      money.Minor  `json:"low_minor"`
	HighMinor     money.Minor  `json:"high_minor"`
	SetAsideLine  string       `json:"set_aside_line"`
	ReserveLine   string       `json:"reserve_line"`
	MovedLine     *string      `json:"moved_line"`
	Dots          []Dot        `json:"dots"`
	DotsText      string       `json:"dots_text"`
	HoursLine     string       `json:"hours_line"`
	WeeksLine     string       `json:"weeks_line"`
	Zones         []ZoneRow    `json:"zones"`
	Kinds         []KindRow    `json:"kinds"`
	KindsNote     string       `json:"kinds_note"`
	Stage         StripStage   `json:"stage"`
	AllowanceLine string       `json:"allowance_line"`
	TaxLine       string       `json:"tax_line"`
	NotAnEstimate string       `json:"not_an_estimate"`
	Exact         ExactFigures `json:"exact"`

	AnotherBody *AnotherBodyOffer `json:"another_body,omitempty"`
}

// AnotherBodyOffer says what doing the job on another body would take. It is left out where
// the shop offers none. The line for the letter follows the date of the offer, and is empty
// before the survey.
type AnotherBodyOffer struct {
	Lines      []string           `json:"lines"`
	Caution    string             `json:"caution"`
	LetterLine string             `json:"letter_line"`
	Exact      AnotherBodyFigures `json:"exact"`
}

// AnotherBodyFigures are the figures before rounding, for programs: shares of the simulated
// cars, money in minor units.
type AnotherBodyFigures struct {
	Taken        bool    `json:"taken"`
	Had          float64 `json:"had"`
	Advised      float64 `json:"advised"`
	SEAdvised    float64 `json:"se_advised"`
	P10Minor     float64 `json:"p10_minor"`
	P50Minor     float64 `json:"p50_minor"`
	P90Minor     float64 `json:"p90_minor"`
	SEP10Minor   float64 `json:"se_p10_minor"`
	SEP90Minor   float64 `json:"se_p90_minor"`
	CrossesMinor float64 `json:"crosses_minor"`
}

// ExactFigures are the figures before rounding, for programs: money in minor units, hours
// in hours, quantiles by definition 7 of Hyndman and Fan (1996).
type ExactFigures struct {
	P10Minor   float64 `json:"p10_minor"`
	P50Minor   float64 `json:"p50_minor"`
	P80Minor   float64 `json:"p80_minor"`
	P90Minor   float64 `json:"p90_minor"`
	SEP10Minor float64 `json:"se_p10_minor"`
	SEP90Minor float64 `json:"se_p90_minor"`
	HoursP10   float64 `json:"hours_p10"`
	HoursP50   float64 `json:"hours_p50"`
	HoursP90   float64 `json:"hours_p90"`
}

// Axis is the money axis, from 0, that all rows share.
type Axis struct {
	MaxMinor int64  `json:"max_minor"`
	Ticks    []Tick `json:"ticks"`
}

// Tick is one mark of an axis. At is its position, from 0 to 1.
type Tick struct {
	At   float64 `json:"at"`
	Text string  `json:"text"`
}

// Dot stands for one car in twenty. At is its centre on the axis, from 0 to 1, and Stack is
// its place in its column, from 1, for dots of a thirtieth of the axis. Exact is where its
// price is, to a thousandth of the axis, for larger ones.
type Dot struct {
	At     float64 `json:"at"`
	Column int     `json:"column"`
	Stack  int     `json:"stack"`
	Inside bool    `json:"inside"`
	Exact  float64 `json:"exact"`
}

// ZoneRow says how often at least one part of a zone is rusted through.
type ZoneRow struct {
	ID     string    `json:"id"`
	Name   string    `json:"name"`
	InTen  int       `json:"in_ten"`
	Line   string    `json:"line"`
	Behind string    `json:"behind"`
	Items  []ItemRow `json:"items"`
}

// ItemRow says how often one item is rusted through.
type ItemRow struct {
	ID    string `json:"id"`
	Name  string `json:"name"`
	InTen int    `json:"in_ten"`
	Line  string `json:"line"`
}

// KindRow is the range of one kind of line.
type KindRow struct {
	ID       string `json:"id"`
	Name     string `json:"name"`
	LowText  string `json:"low_text"`
	HalfText string `json:"half_text"`
	HighText string `json:"high_text"`
}

// CoverReply says in how many cars an amount would be enough.
//
//reply:cover
type CoverReply struct {
	Text string `json:"text"`
}

// FitsReply says in how many cars an amount would be enough, for each scope and standard.
//
//reply:fits
type FitsReply struct {
	SumText string   `json:"sum_text"`
	Lines   []string `json:"lines"`
	Note    string   `json:"note"`
}
