package message

import (
	"underpaint/engine/carfile"
	"underpaint/engine/session"
	"underpaint/engine/strict"
	"underpaint/engine/wording"
)

// openShop is the open session with the Text that puts its values into words.
type openShop struct {
	*session.Session
	text *wording.Text
}

func open(s *session.Session) (*openShop, error) {
	text, err := wording.For(s.Shop)
	return &openShop{s, text}, err
}

// carRequest is a request about one car, with the members that only some requests have.
type carRequest struct {
	car              *carfile.Car
	on, effort, whom string
	condition        string
	least            int64
}

func readCarRequest(f strict.Field) (carRequest, error) {
	f.Keys("id", "ask", "car", "on", "effort", "axis_at_least", "for", "condition")
	q := carRequest{car: carfile.Read(f.Get("car")), effort: "settle", whom: "shop"}
	if f.Has("on") {
		q.on = f.Get("on").Text(60)
	}
	if f.Has("condition") {
		q.condition = f.Get("condition").OneOf("sound", "rusted_through")
	}
	if f.Has("effort") {
		q.effort = f.Get("effort").OneOf("rough", "settle")
	}
	if f.Has("for") {
		q.whom = f.Get("for").OneOf("customer", "shop")
	}
	if f.Has("axis_at_least") {
		q.least = int64(f.Get("axis_at_least").Number(0, 1e15))
	}
	return q, f.Err()
}
