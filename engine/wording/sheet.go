package wording

import (
	"underpaint/engine/car"
	"underpaint/engine/session"
)

// TradeHours says how many hours of a trade the strip and survey takes.
func TradeHours(h session.TradeHours) string {
	return eightOutOfTen + Grouped(h.Low) + " to " + Grouped(h.High) + " hours"
}

// ToolLines says how many checks need a tool.
func ToolLines(name string, n int) string { return name + ": " + counted(n, "check", "checks") }

// WalkPlace names what a check of the walk-around is made on: an item or a whole side.
func (t *Text) WalkPlace(b *car.Body, l session.WalkLine) string {
	if l.Zone != "" {
		return t.HitZone(l.Zone)
	}
	if l.Item < 0 {
		return "The whole " + l.On + " side"
	}
	return t.Item(b, l.Item)
}

// WalkCheck names the same, with what is checked there.
func (t *Text) WalkCheck(b *car.Body, l session.WalkLine) string {
	return t.WalkPlace(b, l) + ": " + lowerFirst(t.In(l.Kind.Name))
}

// BesideLead warns of a lead-loaded joint that a check would take for filler.
func BesideLead(b *car.Body, l session.WalkLine) string {
	if l.Item >= 0 && l.Kind.NotAtLead && b.PartOf(l.Item).LeadJoints > 0 {
		return "Lead-loaded joint here. Keep a hand's breadth away from it, because lead and filler read the same."
	}
	return ""
}
