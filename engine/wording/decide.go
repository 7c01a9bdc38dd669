package wording

import (
	"underpaint/engine/estimate"
	"underpaint/engine/session"
)

// Option names a decision and says what comes with it. The note may be empty.
func (t *Text) Option(o *session.Option) (name, note string) {
	switch o.ID {
	case "unseen":
		return "Driver standard where it never shows, your standard where it does", "We repair hidden metal just as soundly, but we do not dress it, and the inside and underside get plain paint."
	case "scope.outside_only":
		return "Outside only", "Rust under the outer panels stays, unless work on a panel opens it up."
	case "scope.metalwork_only":
		return "Metalwork only, ending in primer", t.say("Body and block, paint and assembly are then a separate job.", "Filling, flatting, paint and assembly are then a separate job.")
	case "own_disassembly":
		return "You take the car apart yourself", "Bag and label everything. Glass, springs and fuel are dangerous. We find out only later what broke or went missing, and we cannot see how the car came apart."
	}
	return Standard(o.Standard) + " throughout", ""
}

// Difference says how much a decision saves or costs, in the middle and in 8 cars out
// of 10.
func (t *Text) Difference(d estimate.Difference) string {
	moreOrLess := func(v float64) string {
		if v < 0 {
			return t.roughly(v) + " less"
		}
		return t.roughly(v) + " more"
	}
	if d.Low == 0 && d.High == 0 {
		return "no difference"
	}
	return moreOrLess(d.Half) + " in the middle; in 8 cars out of 10, " + moreOrLess(d.Low) + " to " + moreOrLess(d.High)
}

// Saving says how often a decision saves money at all.
func Saving(d estimate.Difference) string {
	saving := 1 - d.Dearer - d.Same
	switch {
	case d.Same > 0.95:
		return "it makes no difference in more than 19 cars out of 20"
	case saving < 0.05:
		return "it saves money in fewer than 1 car out of 20"
	case saving > 0.95:
		return "it saves money in more than 19 cars out of 20"
	}
	return "it saves money in about " + CarsInTen(saving)
}

// DecideNote is the text below the decisions. leftOut is the value that
// [session.Session.Decide] returns.
func DecideNote(leftOut bool) string {
	note := "We compare each choice with the job as you want it now, on the same simulated cars. If you combine several, the amounts do not simply add up."
	if leftOut {
		note += " The strip and survey has begun, so we leave out choices that would change it."
	}
	return note
}
