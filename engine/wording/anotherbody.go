package wording

import (
	"underpaint/engine/carfile"
	"underpaint/engine/session"
)

// AnotherBody says how often another body would be the better buy, what everything to do
// with it costs, and from which price of the metalwork on. It is empty where the shop
// offers none.
func (t *Text) AnotherBody(r *session.Range, c *carfile.Car) (out []string) {
	a := &r.Another
	if !a.Offered {
		return nil
	}
	body := "another sound body"
	if r.Body.OnAFrame {
		body += t.say(" with its frame", " with its chassis")
	}
	out = append(out,
		"In "+CarsInTen(a.Advised)+" like yours, we could find "+body+" for clearly less than "+t.say("repairing", "mending")+" this one.",
		"With everything to do with it, another body comes to "+t.span(a.Shown.Low, a.Shown.High)+" in 8 cars out of 10, and to less than "+t.Amount(a.Shown.Half)+
			" in half. That is its price, finding it, its papers, stripping it too, moving your parts across and the metalwork that it needs itself.",
		"We would advise it once the metalwork on this body and the parts for it come to more than about "+t.Likely(a.Crosses)+".")
	if a.Taken {
		out = append(out, "Another body is all right with you, so the range counts the other body on those cars.")
	}
	if !c.StripBegun() {
		out = append(out, "Ask us about this before you pay for stripping this one.")
	}
	return out
}

// AnotherBodyWish says, after the date on which another body was offered, what the
// customer wishes. It is empty where the shop offers none, and before the survey.
func (t *Text) AnotherBodyWish(r *session.Range, c *carfile.Car) string {
	switch {
	case !r.Another.Offered || !c.Begun(carfile.Survey):
		return ""
	case c.AnotherBody == carfile.ThisOneOnly:
		return "another body. The customer wishes this one."
	case c.TakesAnotherBody():
		return "another body. It is all right with the customer."
	}
	return "another body. The customer has not decided, so the range keeps this one."
}

// AnotherBodyCaution is what to know before anyone buys or swaps a body.
func (t *Text) AnotherBodyCaution() string { return t.In(t.lists.stampedBody) }
