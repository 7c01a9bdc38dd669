package wording

import (
	"strconv"

	"underpaint/engine/car"
	"underpaint/engine/session"
)

// TradeHours says how many hours of a trade the strip and survey takes.
func TradeHours(h session.TradeHours) string {
	return "8 in 10: " + Grouped(h.Low) + " to " + Grouped(h.High) + " hours"
}

// ToolLines says how many checks need a tool.
func ToolLines(name string, n int) string { return name + ": " + strconv.Itoa(n) + " lines" }

// WalkPlace names the place of a check on the walk round the car.
func (t *Text) WalkPlace(b *car.Body, l session.WalkLine) string {
	if l.Item < 0 {
		return "The whole " + l.On + " side"
	}
	return t.Item(b, l.Item)
}

// WalkCheck is the place with what is checked there.
func (t *Text) WalkCheck(b *car.Body, l session.WalkLine) string {
	return t.WalkPlace(b, l) + ": " + lowerFirst(t.In(l.Kind.Name))
}

// BesideLead warns of a lead-loaded joint where a check tells nothing beside one.
func BesideLead(b *car.Body, l session.WalkLine) string {
	if l.Item >= 0 && l.Kind.NotAtLead && b.PartOf(l.Item).LeadJoints > 0 {
		return "Lead-loaded joint here: keep a hand's breadth away from it, where lead and filler read alike."
	}
	return ""
}
