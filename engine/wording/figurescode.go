package wording

import (
	"underpaint/engine/carfile"
	"underpaint/engine/session"
)

// OtherFigures says that the program's own figures have changed since a stage was
// recorded, and is empty for the zero stage.
func (t *Text) OtherFigures(then carfile.Stage) string {
	if then.Stage == "" {
		return ""
	}
	return "The figures of this program have changed since " + t.Date(then.On) + ": figures code " + then.Figures + " then, " +
		session.FiguresCode() + " now. Every range here is worked out with today's figures, so an older letter may give another one."
}
