package message

// DangersReply has the cautions of the work on one car for whoever does it: of the strip
// and survey, and of the work after it. Each list has each caution once, at the first
// line that causes it, and ends with Closing.
//
//reply:dangers
type DangersReply struct {
	Strip   []DangerLine `json:"strip"`
	ToDo    []DangerLine `json:"to_do"`
	Closing string       `json:"closing"`
}

// DangerLine is a line of work with its cautions. On is the id of its part, empty for
// work on the car as a whole.
type DangerLine struct {
	On       string           `json:"on"`
	Line     string           `json:"line"`
	Cautions []CautionMessage `json:"cautions"`
}
