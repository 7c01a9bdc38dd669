package message

// RatesCheckedReply tells a form what is wrong with rates, what looks like a slip, and what
// the saved file will hold.
//
//reply:rates_checked
type RatesCheckedReply struct {
	OK          bool        `json:"ok"`
	Faults      []TextFault `json:"faults"`
	Warnings    []CarNote   `json:"warnings"`
	StillSample []string    `json:"still_sample"`
	CheckCode   string      `json:"check_code"`
	RatesLine   string      `json:"rates_line"`
	Canonical   string      `json:"canonical"`
}

// RatesOutlineReply lists the choices of a rates form.
//
//reply:rates_outline
type RatesOutlineReply struct {
	Parts      []OutlinePart                     `json:"parts"`
	Bodies     []OutlineName                     `json:"bodies"`
	Steps      []OutlineName                     `json:"steps"`
	Ways       []OutlineName                     `json:"ways"`
	Conditions []OutlineName                     `json:"conditions"`
	WhatIsDone object[object[object[[]float64]]] `json:"what_is_done"`
	Doubt      object[object[float64]]           `json:"doubt"` // the starting figures, as a rates file states its own
	Currencies []string                          `json:"currencies"`
	SampleUS   string                            `json:"sample_us"`
	SampleUK   string                            `json:"sample_uk"`
}

// OutlineName is one choice in a list, in both word sets.
type OutlineName struct {
	ID     string `json:"id"`
	NameUS string `json:"name_us"`
	NameUK string `json:"name_uk"`
}

// OutlinePart is a part that a shop can price, with starting prices by way.
type OutlinePart struct {
	OutlineName
	Bodies []string          `json:"bodies"`
	Ways   []string          `json:"ways"`
	Start  object[[]float64] `json:"start"`
}

// EffectReply shows how a change of the rates affects a few cars.
//
//reply:effect
type EffectReply struct {
	State   string        `json:"state" ts:"State"`
	WhyNot  string        `json:"why_not"`
	Warning string        `json:"warning"`
	Axis    Axis          `json:"axis"`
	Cars    []EffectCar   `json:"cars"`
	Changed []EffectLine  `json:"changed"`
	Strip   []EffectStrip `json:"strip"`
}

// EffectCar is one car at the new rates and, if the two can be compared, at the rates on
// the site.
type EffectCar struct {
	Name     string       `json:"name"`
	Old      *EffectRange `json:"old"`
	New      EffectRange  `json:"new"`
	Sentence string       `json:"sentence"`
}

// EffectRange is the range of a car at one set of rates.
type EffectRange struct {
	LowText  string `json:"low_text"`
	HalfText string `json:"half_text"`
	HighText string `json:"high_text"`
	Dots     []Dot  `json:"dots"`
	DotsText string `json:"dots_text"`
}

// EffectLine says how one kind of line changes.
type EffectLine struct {
	Text string `json:"text"`
}

// EffectStrip is the price of the strip and survey of a car at both rates.
type EffectStrip struct {
	Name    string `json:"name"`
	OldText string `json:"old_text"`
	NewText string `json:"new_text"`
}

// PricesReadReply holds a pasted table, converted to entries of the rates file.
//
//reply:prices_read
type PricesReadReply struct {
	Prices []PartPrice `json:"prices"`
	TableFaults
}

// PartPrice is one entry of the rates file.
type PartPrice struct {
	Part   string      `json:"part"`
	Way    string      `json:"way"`
	Body   string      `json:"body,omitempty"`
	Price  *[3]rawJSON `json:"price" ts:"number[] | null"` // as published
	Had    *string     `json:"had"`
	Note   string      `json:"note,omitempty"`
	Source string      `json:"source"`
}

// TableFaults are the refused rows of a table and the questions that the user must answer.
type TableFaults struct {
	Refused   int             `json:"refused"`
	Refusals  []TableRefusal  `json:"refusals"`
	Questions []TableQuestion `json:"questions"`
	Ignored   []string        `json:"ignored"`
}

// TableRefusal is a cell that cannot be read.
type TableRefusal struct {
	Row      int    `json:"row"`
	Column   int    `json:"column"`
	Heading  string `json:"heading"`
	Found    string `json:"found"`
	Expected string `json:"expected"`
	Text     string `json:"text"`
}

// TableQuestion asks the user which decimal mark a cell uses.
type TableQuestion struct {
	Heading string `json:"heading"`
	Row     int    `json:"row"`
	Found   string `json:"found"`
	AsPoint string `json:"as_point"`
	AsComma string `json:"as_comma"`
	Text    string `json:"text"`
}

// PricesWrittenReply holds the shop's own part prices as a table for a spreadsheet.
//
//reply:prices_written
type PricesWrittenReply struct {
	Text string `json:"text"`
}
