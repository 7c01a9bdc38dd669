package message

import (
	"underpaint/engine/carfile"
	"underpaint/engine/strict"
)

// carRequest is a request about one car, with what some of them say besides.
type carRequest struct {
	car              *carfile.Car
	on, effort, whom string
	condition        string
	least            int64
}

// askOfCar answers the requests about one car.
func (s *Session) askOfCar(id int64, a asking, f strict.Field) []byte {
	q := readCarRequest(f)
	if err := f.Err(); err != nil {
		return refused(id, "car", err)
	}
	reply, err := a.car(s, id, q)
	if err != nil {
		return refused(id, "car", err)
	}
	return reply
}

func readCarRequest(f strict.Field) carRequest {
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
	return q
}
