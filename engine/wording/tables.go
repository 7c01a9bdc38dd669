package wording

import "underpaint/engine/columns"

// TableQuestion asks which decimal mark a pasted table uses.
func TableQuestion(q *columns.Question) string {
	if q.OtherFound != "" {
		return "The column " + q.Heading + " holds both " + q.Found + " and " + q.OtherFound + ", which use different decimal marks. Which one do you use?"
	}
	return "In the column " + q.Heading + ", is " + q.Found + " " + q.AsPoint + " or " + q.AsComma + "?"
}
