package wording

import (
	"underpaint/engine/session"
)

// Fitting says what new panels that do not fit, and used parts, cost of a range. It is
// empty where the range draws none.
func (t *Text) Fitting(r *session.Range) string {
	if r.Fitting.High < 1 {
		return ""
	}
	about := ""
	if r.Fitting.Half >= 1 {
		about = "about " + t.Likely(r.Fitting.Half) + ", and "
	}
	return "New panels do not always fit, and old ones need work of their own: " + about + "more than " + t.Likely(r.Fitting.High) + " in 1 car out of 10. It is in the range."
}
