package wording

import (
	"underpaint/engine/estimate"
	"underpaint/engine/session"
)

// Option names a decision, and says what goes with it, if anything does.
func (t *Text) Option(o *session.Option) (name, note string) {
	switch o.ID {
	case "unseen":
		return "What is never seen to driver standard, what is seen as wished", "Hidden metal is mended as soundly; it is not dressed, and inside and underneath is painted plainly."
	case "scope.outside_only":
		return "Outside only", "Rust behind the outer skins stays, unless a panel forces it open."
	case "scope.metalwork_only":
		return "Metalwork only, ending in primer", t.say("Body and block, paint and assembly are another job then.", "Filling, flatting, paint and assembly are another job then.")
	case "own_disassembly":
		return "You take the car apart yourself", "Bag and label everything. Glass, springs and fuel are dangerous; what breaks or goes missing is found later, and the shop cannot see how it came apart."
	}
	return Standard(o.Standard) + " throughout", ""
}

// Difference says a difference in words: what it saves or costs in the middle, and in
// 8 of 10 cars.
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
	return "in the middle " + moreOrLess(d.Half) + "; 8 in 10: " + moreOrLess(d.Low) + " to " + moreOrLess(d.High)
}

// Saving says how often a decision is a saving at all.
func Saving(d estimate.Difference) string {
	saving := 1 - d.Dearer - d.Same
	switch {
	case d.Same > 0.95:
		return "it makes no difference in more than 19 cars of 20"
	case saving < 0.05:
		return "a saving in fewer than 1 car of 20"
	case saving > 0.95:
		return "a saving in more than 19 cars of 20"
	}
	return "a saving in about " + CarsInTen(saving)
}

// DecideNote stands below the decisions; leftOut as [session.Session.Decide] says it.
func DecideNote(leftOut bool) string {
	note := "Each is held against the job as it is wished now, car by car on the same imagined cars. Several together do not simply add."
	if leftOut {
		note += " The strip and survey has begun, so choices that would change it are not offered."
	}
	return note
}
