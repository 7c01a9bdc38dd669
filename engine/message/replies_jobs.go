package message

// JobsCheckedReply lists what is wrong with a file of past jobs, or describes the jobs that
// are now open.
//
//reply:jobs_checked
type JobsCheckedReply struct {
	OK        bool         `json:"ok"`
	Faults    []TextFault  `json:"faults"`
	Jobs      int          `json:"jobs"`
	CheckCode string       `json:"check_code"`
	Sums      []JobAmounts `json:"sums"`
}

// JobAmounts are the amounts of a job, formatted.
type JobAmounts struct {
	CameToText string `json:"came_to_text"`
	SaidText   string `json:"said_text"`
}

// ScoresGoOnReply says how much of the scoring is done.
//
//reply:scores
type ScoresGoOnReply struct {
	State        string `json:"state" ts:"\"refining\""`
	Done         int    `json:"done"`
	Of           int    `json:"of"`
	ProgressText string `json:"progress_text"`
}

// ScoresReply says how the shop's ranges compare with the prices of its past jobs.
//
//reply:scores
type ScoresReply struct {
	State       string      `json:"state" ts:"\"settled\""`
	Invented    bool        `json:"invented"`
	Jobs        int         `json:"jobs"`
	Scored      int         `json:"scored"`
	Headline    []string    `json:"headline"`
	AfterSurvey string      `json:"after_survey"`
	Boxes       []JobsBox   `json:"boxes"`
	BoxesText   string      `json:"boxes_text"`
	Table       []JobRow    `json:"table"`
	NotScored   []NotScored `json:"not_scored"`
	Bias        []string    `json:"bias"`
	Causes      []Cause     `json:"causes"`
	CausesNote  string      `json:"causes_note"`
	Statistics  []NamedText `json:"statistics"`
	PIT         []int       `json:"pit"`
	PITText     string      `json:"pit_text"`
	Learning    Learning    `json:"learning"`
	Record      rawJSON     `json:"record" ts:"Record<string, unknown> | null"`
}

// JobsBox is one of twelve boxes (below the range, ten slots inside it, above it) and the
// number of jobs in it.
type JobsBox struct {
	Name string `json:"name"`
	Jobs int    `json:"jobs"`
}

// JobRow is one scored job. Where says on which side of its range it finished.
type JobRow struct {
	Name         string `json:"name"`
	FinishedText string `json:"finished_text"`
	FirstText    string `json:"first_text"`
	SurveyText   string `json:"survey_text"`
	CameToText   string `json:"came_to_text"`
	AgreedLine   string `json:"agreed_line"`
	Where        string `json:"where" ts:"\"\" | \"below\" | \"inside\" | \"above\""`
	Said         bool   `json:"said"`
}

// NotScored is a job without a score, and the reason.
type NotScored struct {
	Name string `json:"name"`
	Why  string `json:"why"`
}

// Cause is one reason why jobs cost more than expected.
type Cause struct {
	Name       string `json:"name"`
	JobsText   string `json:"jobs_text"`
	AmountText string `json:"amount_text"`
}

// Learning lists what the past jobs suggest for each figure.
type Learning struct {
	Lines    []LearntLine `json:"lines"`
	Compared string       `json:"compared"`
	Note     string       `json:"note"`
}

// LearntLine is the suggestion for one figure. The engine uses it only if the shop adopts
// it.
type LearntLine struct {
	ID         string  `json:"id"`
	Name       string  `json:"name"`
	Text       string  `json:"text"`
	JobsText   string  `json:"jobs_text"`
	Jobs       int     `json:"jobs"`
	Offered    bool    `json:"offered"`
	Factor     float64 `json:"factor"`
	FactorText string  `json:"factor_text"`
	InUseText  string  `json:"in_use_text"`
	ShareText  string  `json:"share_text"`
}

// JobsReadReply holds a pasted table, converted to entries of a file of past jobs.
//
//reply:jobs_read
type JobsReadReply struct {
	Jobs []rawJSON `json:"jobs" ts:"Record<string, unknown>[]"`
	TableFaults
}

// JobsWrittenReply holds the figures of the open jobs as a table for a spreadsheet.
//
//reply:jobs_written
type JobsWrittenReply struct {
	Text string `json:"text"`
}

// AdoptedReply holds the rates file with the figures that the shop has adopted.
//
//reply:adopted
type AdoptedReply struct {
	Rates     string `json:"rates"`
	CheckCode string `json:"check_code"`
}
