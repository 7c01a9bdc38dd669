package wording

import (
	"math"
	"strconv"

	"underpaint/engine/car"
	"underpaint/engine/session"
)

// WorthProgress says how far the valuation of the stages has got.
func WorthProgress(v *session.CheckValues) string {
	return "Working out what each stage is worth: " + strconv.Itoa(v.Done) + " of " + strconv.Itoa(v.Of)
}

// NowWide says how wide the range is now, in minor units.
func (t *Text) NowWide(width float64) string { return "Now " + t.Likely(width) + " wide." }

// StageWorth says how wide the range would be after a stage to come, both widths in
// minor units.
func (t *Text) StageWorth(s session.StageWidth, now float64) string {
	return t.afterStage(s.ID) + ", the range for a car like this is on average " + widthWords(s.Width/now, "now") + ": " + t.Likely(s.Width) + " instead of " + t.Likely(now) + ". On a single car it may come out wider."
}

// ChecksNote is the text below the checks.
const ChecksNote = "Most of what a check tells you is about the car as a whole, so several checks together are worth less than their amounts added up."

// Check asks a check as a question.
func (t *Text) Check(b *car.Body, v *session.CheckValue) string {
	place := "the whole " + v.On + " side"
	if v.Item >= 0 {
		place = t.Item(b, v.Item)
	}
	return place + ": " + lowerFirst(t.In(v.Kind.Name)) + "?"
}

// CheckTells says what either answer would tell about the part itself. It is empty where
// the check tells nothing about it.
func CheckTells(v *session.CheckValue) string {
	if !v.TellsOfIt {
		return ""
	}
	return "If yes, it is rusted through there in " + CarsInTen(v.IfYes) + ". If no, in " + CarsInTen(v.IfNo) + "."
}

// CheckNarrows says by how much a check would make the range narrower.
func (t *Text) CheckNarrows(v *session.CheckValue) string {
	if v.Narrower < 0.01*v.NowWidth {
		return "It would hardly make the range narrower. No single check does much more."
	}
	return "On average it would make the range about " + t.Likely(math.Max(v.Narrower, 1)) + " narrower."
}
