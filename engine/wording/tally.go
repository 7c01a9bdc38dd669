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

// Walked says how many checks of the walk round the car are made.
func (t *Text) Walked(n int) string {
	return t.Stage(carfile.WalkRound) + ": " + counted(n, "look", "looks")
}

// Surveyed says how many items are recorded.
func Surveyed(n, of int) string { return "Survey " + NumberOf(n, of) }

// Opened says the same of closed items, when opened.
func Opened(n, of int) string { return "Opening up " + NumberOf(n, of) }

// NumberOf is "3 of 91".
func NumberOf(n, of int) string { return strconv.Itoa(n) + " of " + strconv.Itoa(of) }

// UndecidedCount says how many decisions are left.
func UndecidedCount(n int) string { return "What to do: " + strconv.Itoa(n) + " undecided" }

// NotOpened says how many closed boxes are not opened.
func NotOpened(n int) string { return "Not opened: " + counted(n, "box", "boxes") }

// NotRecorded says how many parts have no record.
func NotRecorded(n int) string { return "Not recorded: " + counted(n, "part", "parts") }

// RestSound offers to record the rest of a zone as sound.
func RestSound(n int) string { return "Rest of the seen parts here: sound (" + strconv.Itoa(n) + ")" }

// Unseen says what of the car has not been seen.
func Unseen(n *session.Tally) string {
	if !n.SurveyBegun {
		return "Nothing of the bare metal has been seen yet."
	}
	line := "Every part is recorded."
	if left := len(n.Body.Items) - n.Recorded; left > 0 {
		line = "Not recorded: " + NumberOf(left, len(n.Body.Items)) + " parts, which stay not known."
	}
	if n.Shut > 0 {
		line += " Not opened: " + strconv.Itoa(n.Shut) + " closed boxes."
	}
	return line
}

// LookAgain is asked at a record that is very unlike the rest of the car.
const LookAgain = "Very unlike the rest of this car. Look again?"
