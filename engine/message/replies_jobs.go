package message

// JobsCheckedReply tells what is wrong with a file of past jobs, or opens it.
//
//reply:jobs_checked
type JobsCheckedReply struct {
	OK        bool         `json:"ok"`
	Faults    []TextFault  `json:"faults"`
	Jobs      int          `json:"jobs"`
	CheckCode string       `json:"check_code"`
	Sums      []JobAmounts `json:"sums"`
}

// JobAmounts are the amounts of a job in words.
type JobAmounts struct {
	CameToText string `json:"came_to_text"`
	SaidText   string `json:"said_text"`
}

// ScoresGoOnReply says how far scoring has got.
//
//reply:scores
type ScoresGoOnReply struct {
	State        string `json:"state" ts:"\"refining\""`
	Done         int    `json:"done"`
	Of           int    `json:"of"`
	ProgressText string `json:"progress_text"`
}

// ScoresReply is what the past jobs say.
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

// JobsBox is one of twelve boxes with its jobs.
type JobsBox struct {
	Name string `json:"name"`
	Jobs int    `json:"jobs"`
}

// JobRow is one job.
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

// NotScored is a job without a score.
type NotScored struct {
	Name string `json:"name"`
	Why  string `json:"why"`
}

// Cause is why jobs came to more.
type Cause struct {
	Name       string `json:"name"`
	JobsText   string `json:"jobs_text"`
	AmountText string `json:"amount_text"`
}

// Learning is what the jobs teach, figure by figure.
type Learning struct {
	Lines    []LearntLine `json:"lines"`
	Compared string       `json:"compared"`
	Note     string       `json:"note"`
}

// LearntLine is one figure. Nothing is used unless the shop says so.
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

// JobsReadReply is a pasted table as entries of a file of past jobs.
//
//reply:jobs_read
type JobsReadReply struct {
	Jobs []rawJSON `json:"jobs" ts:"Record<string, unknown>[]"`
	TableFaults
}

// JobsWrittenReply is the figures of the open jobs as a table for a spreadsheet.
//
//reply:jobs_written
type JobsWrittenReply struct {
	Text string `json:"text"`
}

// AdoptedReply is the rates with the figures that the shop has chosen.
//
//reply:adopted
type AdoptedReply struct {
	Rates     string `json:"rates"`
	CheckCode string `json:"check_code"`
}
