package message

import (
	"underpaint/engine/carfile"
	"underpaint/engine/session"
	"underpaint/engine/wording"
)

// newAnotherBody is nil where the shop offers no other body.
func newAnotherBody(t *wording.Text, r *session.Range, c *carfile.Car) *AnotherBodyOffer {
	a := &r.Another
	if !a.Offered {
		return nil
	}
	return &AnotherBodyOffer{Lines: t.AnotherBody(r, c), Caution: t.AnotherBodyCaution(), LetterLine: t.AnotherBodyWish(r, c),
		Exact: AnotherBodyFigures{a.Taken, a.Had, a.Advised, a.SE.Advised, a.Other.Low, a.Other.Half, a.Other.High, a.SE.Low, a.SE.High, a.Crosses}}
}
