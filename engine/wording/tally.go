package wording

import (
	"strconv"

	"underpaint/engine/carfile"
	"underpaint/engine/session"
)

// Answers says how many questions are answered.
func Answers(n int) string {
	return "Answers " + strconv.Itoa(n) + " of " + strconv.Itoa(session.Questions)
}

// Walked says how many checks of the walk-around are done.
func (t *Text) Walked(n int) string {
	return t.Stage(carfile.WalkRound) + ": " + counted(n, "check", "checks")
}

// Surveyed says how many items are recorded.
func Surveyed(n, of int) string { return "Survey " + NumberOf(n, of) }

// Opened says how many closed items were recorded after they were opened.
func Opened(n, of int) string { return "Opening up " + NumberOf(n, of) }

// NumberOf writes "3 of 91".
func NumberOf(n, of int) string { return strconv.Itoa(n) + " of " + strconv.Itoa(of) }

// UndecidedCount says how many decisions are left.
func UndecidedCount(n int) string { return "What to do: " + strconv.Itoa(n) + " undecided" }

// NotOpened says how many closed boxes nobody has opened.
func NotOpened(n int) string { return "Not opened: " + counted(n, "box", "boxes") }

// NotRecorded says how many parts have no record.
func NotRecorded(n int) string { return "Not recorded: " + counted(n, "part", "parts") }

// RestSound offers to record the rest of a zone as sound.
func RestSound(n int) string {
	return "Rest of the visible parts here: sound (" + strconv.Itoa(n) + ")"
}

// Unseen says how much of the car nobody has seen yet.
func Unseen(n *session.Tally) string {
	if !n.SurveyBegun {
		return "Nobody has seen the bare metal yet."
	}
	line := "Every part is recorded."
	if left := len(n.Body.Items) - n.Recorded; left > 0 {
		line = "Not recorded: " + NumberOf(left, len(n.Body.Items)) + " parts, so we still do not know their condition."
	}
	if n.Shut > 0 {
		line += " Not opened: " + counted(n.Shut, "closed box", "closed boxes") + "."
	}
	return line
}

// LookAgain is the question at a record that is very unlike the rest of the car.
const LookAgain = "Very unlike the rest of this car. Check it again?"
