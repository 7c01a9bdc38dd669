package message

// SheetReply holds everything that the survey sheet of a body needs and that stays the
// same while the shop records.
//
//reply:sheet
type SheetReply struct {
	Body             string            `json:"body" ts:"Body"`
	BodyName         string            `json:"body_name"`
	Drawing          string            `json:"drawing"`
	Conditions       []SheetCondition  `json:"conditions"`
	Findings         []SheetFinding    `json:"findings"`
	WholeCarFindings []IDName          `json:"whole_car_findings"`
	Hits             *SheetHits        `json:"hits,omitempty"`
	Zones            []SheetZone       `json:"zones"`
	Items            object[SheetItem] `json:"items"`
	Boxes            []SheetBox        `json:"boxes"`
	WalkRound        []WalkSection     `json:"walk_round"`
	Tools            []WalkTool        `json:"tools"`
	Stages           []IDName          `json:"stages"`
	StripTrades      []StripTrade      `json:"strip_trades"`
	Cautions         []CautionMessage  `json:"cautions"`
}

// SheetCondition is a condition with its key on the keyboard.
type SheetCondition struct {
	ID        string `json:"id" ts:"Condition"`
	Key       string `json:"key"`
	Name      string `json:"name"`
	LooksLike string `json:"looks_like"`
}

// SheetFinding is a finding that can be recorded on one part.
type SheetFinding struct {
	ID         string `json:"id"`
	Key        string `json:"key"`
	Name       string `json:"name"`
	Count      bool   `json:"count"`
	PricedOnly bool   `json:"priced_only"`
}

// SheetHits is the card on which the survey records how each zone that was hit was
// repaired, and whether the body is square.
type SheetHits struct {
	Zones   []IDName `json:"zones"`
	Manners []IDName `json:"manners"`
	Square  []IDName `json:"square"`
}

// SheetZone is a zone with its parts.
type SheetZone struct {
	ID   string     `json:"id"`
	Name string     `json:"name"`
	Rows []SheetRow `json:"rows"`
}

// SheetRow is a part with its lines.
type SheetRow struct {
	Part  string      `json:"part"`
	Name  string      `json:"name"`
	Lines []SheetLine `json:"lines"`
}

// SheetLine is a line with a left and a right item, or with one item that has no side.
type SheetLine struct {
	Label string `json:"label"`
	Left  string `json:"left"`
	Right string `json:"right"`
	Whole string `json:"whole"`
}

// SheetItem is one item of the body.
type SheetItem struct {
	Name       string   `json:"name"`
	Zone       string   `json:"zone"`
	Closed     bool     `json:"closed"`
	Box        string   `json:"box"`
	Structural bool     `json:"structural"`
	LeadJoints int      `json:"lead_joints"`
	Bought     bool     `json:"bought"`
	Findings   []string `json:"findings"`
	Behind     []string `json:"behind"`
}

// SheetBox is a closed box with its items.
type SheetBox struct {
	ID    string   `json:"id"`
	Name  string   `json:"name"`
	Items []string `json:"items"`
}

// WalkSection lists the checks to make from one position around the car.
type WalkSection struct {
	ID    string     `json:"id"`
	Name  string     `json:"name"`
	Lines []WalkLine `json:"lines"`
}

// WalkLine is one check.
type WalkLine struct {
	Look       string `json:"look"`
	On         string `json:"on"`
	Text       string `json:"text"`
	Place      string `json:"place"`
	Name       string `json:"name"`
	How        string `json:"how"`
	Needs      string `json:"needs"`
	Caution    string `json:"caution"`
	Tool       string `json:"tool"`
	NotHere    string `json:"not_here"`
	BesideLead string `json:"beside_lead"`
}

// WalkTool is a tool that some checks need.
type WalkTool struct {
	ID        string `json:"id"`
	Name      string `json:"name"`
	LinesText string `json:"lines_text"`
}

// StripTrade is a trade whose hours in the strip the shop can enter.
type StripTrade struct {
	ID         string `json:"id" ts:"Trade"`
	Name       string `json:"name"`
	LikelyText string `json:"likely_text"`
}

// TallyReply counts the records and names every entry that is refused.
//
//reply:tally
type TallyReply struct {
	Canonical       string       `json:"canonical"`
	Faults          []TallyFault `json:"faults"`
	AnswersLine     string       `json:"answers_line"`
	WalkRound       TallyStep    `json:"walk_round"`
	Survey          TallyStep    `json:"survey"`
	OpeningUp       TallyStep    `json:"opening_up"`
	ToDo            TallyLine    `json:"to_do"`
	NotOpenedLine   string       `json:"not_opened_line"`
	NotRecordedLine string       `json:"not_recorded_line"`
	MeasuredLine    string       `json:"measured_line,omitempty"`
	Zones           []TallyZone  `json:"zones"`
}

// TallyFault is an entry that is refused, and why.
type TallyFault struct {
	TextFault
	On string `json:"on"`
}

// TallyStep is one count: how many are done, of how many.
type TallyStep struct {
	Done int    `json:"done"`
	Of   int    `json:"of"`
	Line string `json:"line"`
}

// TallyLine is a count in words.
type TallyLine struct {
	Line string `json:"line"`
}

// TallyZone is the count of a zone, and the remaining items that the shop could record as
// sound in one step.
type TallyZone struct {
	ID string `json:"id"`
	TallyStep
	SeenLeft int      `json:"seen_left"`
	RestLine string   `json:"rest_line"`
	Rest     []string `json:"rest"`
}

// LookAgainReply names the records that differ greatly from the rest of the car.
//
//reply:look_again
type LookAgainReply struct {
	LookAgain []LookAgain `json:"look_again"`
}

// LookAgain is one such record, with the question to ask about it.
type LookAgain struct {
	On   string `json:"on"`
	Name string `json:"name"`
	Text string `json:"text"`
}

// OddsReply compares the record of one part with its odds before.
//
//reply:odds
type OddsReply struct {
	On         string `json:"on"`
	Line       string `json:"line"`
	BeforeLine string `json:"before_line"`
	NowLine    string `json:"now_line"`
}
