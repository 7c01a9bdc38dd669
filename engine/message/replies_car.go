package message

// WorthReply says what each stage to come is worth, and which checks would make the
// range narrowest.
//
//reply:worth
type WorthReply struct {
	State        string       `json:"state" ts:"State"`
	Done         int          `json:"done"`
	Of           int          `json:"of"`
	ProgressLine string       `json:"progress_line"`
	NowLine      string       `json:"now_line"`
	Stages       []StageWorth `json:"stages"`
	Looks        []LookWorth  `json:"looks"`
	LooksNote    string       `json:"looks_note"`
}

// StageWorth is a stage to come.
type StageWorth struct {
	ID        string `json:"id"`
	Name      string `json:"name"`
	WidthText string `json:"width_text"`
	Line      string `json:"line"`
}

// LookWorth is a check that could still be made.
type LookWorth struct {
	Look      string `json:"look"`
	On        string `json:"on"`
	Either    string `json:"either"`
	Text      string `json:"text"`
	How       string `json:"how"`
	Needs     string `json:"needs"`
	Caution   string `json:"caution"`
	PlaceLine string `json:"place_line"`
	WholeLine string `json:"whole_line"`
}

// WideReply says what makes the range wide, and what could make it worse.
//
//reply:wide
type WideReply struct {
	State        string       `json:"state" ts:"State"`
	Done         int          `json:"done"`
	Of           int          `json:"of"`
	ProgressText string       `json:"progress_text"`
	Shares       []InputShare `json:"shares"`
	RestText     string       `json:"rest_text"`
	Rest         float64      `json:"rest"`
	SharesNote   string       `json:"shares_note"`
	Known        bool         `json:"known"`
	Worse        []WorsePart  `json:"worse"`
	WorseNote    string       `json:"worse_note"`
}

// InputShare is one cause of the width.
type InputShare struct {
	Name      string  `json:"name"`
	Why       string  `json:"why"`
	ShareText string  `json:"share_text"`
	Share     float64 `json:"share"`
}

// WorsePart is a part that could make it worse.
type WorsePart struct {
	Part       string `json:"part"`
	Name       string `json:"name"`
	LikelyLine string `json:"likely_line"`
	CostLine   string `json:"cost_line"`
	FindLine   string `json:"find_line"`
}

// PlanReply is the job in stages.
//
//reply:plan
type PlanReply struct {
	Stages    []PlanStage `json:"stages"`
	SoFarLine string      `json:"so_far_line"`
	Note      string      `json:"note"`
}

// PlanStage is one stage of the job.
type PlanStage struct {
	ID         string `json:"id" ts:"PaidStage"`
	Name       string `json:"name"`
	MoneyText  string `json:"money_text"`
	HoursText  string `json:"hours_text"`
	WeeksText  string `json:"weeks_text"`
	ByThenText string `json:"by_then_text"`
	StopLine   string `json:"stop_line"`
	ActualLine string `json:"actual_line"`
}

// DecideReply says what each decision before any metal is seen would change.
//
//reply:decide
type DecideReply struct {
	Options []DecideOption `json:"options"`
	Note    string         `json:"note"`
}

// DecideOption is one such decision.
type DecideOption struct {
	ID             string `json:"id"`
	Name           string `json:"name"`
	DifferenceText string `json:"difference_text"`
	SavingText     string `json:"saving_text"`
	Note           string `json:"note"`
}

// TwentyReply is twenty such cars, one after another.
//
//reply:twenty
type TwentyReply struct {
	Drawing string        `json:"drawing"`
	Axis    Axis          `json:"axis"`
	Cars    []OneOfTwenty `json:"cars"`
	Line    string        `json:"line"`
	Note    string        `json:"note"`
}

// OneOfTwenty is one of them.
type OneOfTwenty struct {
	TotalText string   `json:"total_text"`
	FoundText string   `json:"found_text"`
	Holed     []string `json:"holed"`
	At        float64  `json:"at"`
	Stack     int      `json:"stack"`
}

// TwoWaysReply is the range of independent panels and as cars really rust.
//
//reply:two_ways
type TwoWaysReply struct {
	Axis     Axis     `json:"axis"`
	Rows     []WhyRow `json:"rows"`
	Line     string   `json:"line"`
	Compared string   `json:"compared"`
	Note     string   `json:"note"`
}

// WhyRow is one row of dots.
type WhyRow struct {
	Label    string `json:"label"`
	Dots     []Dot  `json:"dots"`
	DotsText string `json:"dots_text"`
	Sentence string `json:"sentence"`
}

// SupposeReply is what one part, taken as known, does to the odds of the others and to
// the range.
//
//reply:suppose
type SupposeReply struct {
	On         string           `json:"on"`
	Condition  string           `json:"condition"`
	Name       string           `json:"name"`
	Axis       Axis             `json:"axis"`
	Rows       []WhyRow         `json:"rows"`
	Neighbours []NeighbourMoved `json:"neighbours"`
	Line       string           `json:"line"`
	Compared   string           `json:"compared"`
}

// NeighbourMoved is another part whose odds move.
type NeighbourMoved struct {
	On         string `json:"on"`
	Name       string `json:"name"`
	BeforeText string `json:"before_text"`
	AfterText  string `json:"after_text"`
	SameWater  bool   `json:"same_water"`
}
