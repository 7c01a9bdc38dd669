package wording

import (
	"math"
	"strconv"

	"underpaint/engine/car"
	"underpaint/engine/session"
)

// WorthProgress says how far the valuation of stages has got.
func WorthProgress(v *session.CheckValues) string {
	return "Trying what each stage is worth: " + strconv.Itoa(v.Done) + " of " + strconv.Itoa(v.Of)
}

// NowWide says how wide the range is now, in minor units.
func (t *Text) NowWide(width float64) string { return "Now " + t.Likely(width) + " wide." }

// StageWorth says what a stage to come would leave of the width now.
func (t *Text) StageWorth(s session.StageWidth, now float64) string {
	return t.afterStage(s.ID) + " the range is, on average for a car like this, " + widthWords(s.Width/now, "now") + ": " + t.Likely(s.Width) + " instead of " + t.Likely(now) + ". For one car it may come out wider."
}

// ChecksNote stands below the checks.
const ChecksNote = "A look mostly tells about the car as a whole. Several looks together are worth less than their sum."

// Check asks a check as a question.
func (t *Text) Check(b *car.Body, v *session.CheckValue) string {
	place := "the whole " + v.On + " side"
	if v.Item >= 0 {
		place = t.Item(b, v.Item)
	}
	return place + ": " + lowerFirst(t.In(v.Kind.Name)) + "?"
}

// CheckTells says what either answer would tell about the place itself; nothing where
// it tells nothing of it.
func CheckTells(v *session.CheckValue) string {
	if !v.TellsOfIt {
		return ""
	}
	return "A yes would mean rusted through there in " + CarsInTen(v.IfYes) + ", a no in " + CarsInTen(v.IfNo) + "."
}

// CheckNarrows says by how much a check would make the range narrower.
func (t *Text) CheckNarrows(v *session.CheckValue) string {
	if v.Narrower < 0.01*v.NowWidth {
		return "It would make the range hardly narrower; no single look does much more."
	}
	return "On average it would make the range about " + t.Likely(math.Max(v.Narrower, 1)) + " narrower."
}
