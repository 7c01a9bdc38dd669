package message

// BeforeAfterReply shows the range after each stage on one axis, and what changed it.
//
//reply:before_after
type BeforeAfterReply struct {
	State            string      `json:"state" ts:"State"`
	Axis             Axis        `json:"axis"`
	Rows             []StageRow  `json:"rows"`
	Headline         []string    `json:"headline"`
	Worse            []string    `json:"worse"`
	Better           []string    `json:"better"`
	UnseenLine       string      `json:"unseen_line"`
	OtherFiguresLine string      `json:"other_figures_line,omitempty"`
	Items            []MovedItem `json:"items"`
	NotALimit        string      `json:"not_a_limit"`
}

// StageRow is one stage, with its range if the stage is done.
type StageRow struct {
	ID       string `json:"id"`
	Name     string `json:"name"`
	DateText string `json:"date_text"`
	Done     bool   `json:"done"`
	*StageRange
}

// StageRange is the range after a stage.
type StageRange struct {
	LowText   string `json:"low_text"`
	HalfText  string `json:"half_text"`
	HighText  string `json:"high_text"`
	WidthText string `json:"width_text"`
	Dots      []Dot  `json:"dots"`
	Sentence  string `json:"sentence"`
	WiderLine string `json:"wider_line"`
}

// MovedItem is a part whose odds changed.
type MovedItem struct {
	On         string `json:"on"`
	Name       string `json:"name"`
	BeforeText string `json:"before_text"`
	AfterText  string `json:"after_text"`
	Text       string `json:"text"`
}

// ToDoReply lists every decision that the recorded conditions require.
//
//reply:to_do
type ToDoReply struct {
	Cards         []ToDoCard `json:"cards"`
	UndecidedLine string     `json:"undecided_line"`
	Shared        []string   `json:"shared"`
}

// ToDoCard is one decision, with the ways to choose from.
type ToDoCard struct {
	On          string    `json:"on"`
	Title       string    `json:"title"`
	Chosen      string    `json:"chosen" ts:"Way | \"\""`
	ChosenText  string    `json:"chosen_text"`
	Ways        []ToDoWay `json:"ways"`
	CannotLeave string    `json:"cannot_leave"`
	CoveredBy   string    `json:"covered_by"`
	Opened      []string  `json:"opened"`
	Caution     string    `json:"caution"`
}

// ToDoWay is one way that the shop can choose.
type ToDoWay struct {
	ID         string   `json:"id" ts:"Way"`
	Name       string   `json:"name"`
	HoursText  string   `json:"hours_text"`
	PriceText  string   `json:"price_text"`
	Sentence   string   `json:"sentence"`
	CoversText string   `json:"covers_text"`
	Opens      []string `json:"opens"`
	Allowed    bool     `json:"allowed"`
}

// CompareWaysReply compares the ways of one part with the current decision.
//
//reply:compare_ways
type CompareWaysReply struct {
	On      string    `json:"on"`
	Ways    []WayLine `json:"ways"`
	HowSure string    `json:"how_sure"`
}

// WayLine says how much more or less one way costs.
type WayLine struct {
	ID   string `json:"id" ts:"Way"`
	Line string `json:"line"`
}
