package message

// WorthReply says how much each remaining stage would narrow the range, and which checks
// would narrow it most.
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

// StageWorth is a remaining stage and the average width of the range after it.
type StageWorth struct {
	ID        string `json:"id"`
	Name      string `json:"name"`
	WidthText string `json:"width_text"`
	Line      string `json:"line"`
}

// LookWorth is a check that someone could still make.
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

// InputShare is one cause of the width and its share.
type InputShare struct {
	Name      string  `json:"name"`
	Why       string  `json:"why"`
	ShareText string  `json:"share_text"`
	Share     float64 `json:"share"`
}

// WorsePart is a part that could make the range worse.
type WorsePart struct {
	Part       string `json:"part"`
	Name       string `json:"name"`
	LikelyLine string `json:"likely_line"`
	CostLine   string `json:"cost_line"`
	FindLine   string `json:"find_line"`
}

// PlanReply is the job divided into stages.
//
//reply:plan
type PlanReply struct {
	Stages         []PlanStage `json:"stages"`
	SoFarLine      string      `json:"so_far_line"`
	PromiseEndLine string      `json:"promise_end_line"`
	Note           string      `json:"note"`
}

// PlanStage is one stage of the job, with what it costs to stop there.
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

// DecideReply says how much each decision that you can make before seeing any metal would
// change the price.
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

// TwentyReply holds twenty simulated cars like this one.
//
//reply:twenty
type TwentyReply struct {
	Drawing string        `json:"drawing"`
	Axis    Axis          `json:"axis"`
	Cars    []OneOfTwenty `json:"cars"`
	Line    string        `json:"line"`
	Note    string        `json:"note"`
}

// OneOfTwenty is one of the twenty cars, with its dot on the axis.
type OneOfTwenty struct {
	TotalText string   `json:"total_text"`
	FoundText string   `json:"found_text"`
	Holed     []string `json:"holed"`
	At        float64  `json:"at"`
	Stack     int      `json:"stack"`
}

// TwoWaysReply compares the range if every part rusted independently with the range as
// cars really rust.
//
//reply:two_ways
type TwoWaysReply struct {
	Axis     Axis     `json:"axis"`
	Rows     []WhyRow `json:"rows"`
	Line     string   `json:"line"`
	Compared string   `json:"compared"`
	Note     string   `json:"note"`
}

// WhyRow is one row of dots with its label and sentence.
type WhyRow struct {
	Label    string `json:"label"`
	Dots     []Dot  `json:"dots"`
	DotsText string `json:"dots_text"`
	Sentence string `json:"sentence"`
}

// SupposeReply says how the odds of the other parts and the range would change if the
// condition of one part were known.
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

// NeighbourMoved is another part whose odds change.
type NeighbourMoved struct {
	On         string `json:"on"`
	Name       string `json:"name"`
	BeforeText string `json:"before_text"`
	AfterText  string `json:"after_text"`
	SameWater  bool   `json:"same_water"`
}
