package message

import (
	"underpaint/engine/carfile"
	"underpaint/engine/strict"
)

// askOfCar answers the requests of the page "This car".
func (s *Session) askOfCar(id int64, ask string, f strict.Field) []byte {
	f.Keys("id", "ask", "car", "on", "effort", "axis_at_least", "for", "condition")
	c := carfile.Read(f.Get("car"))
	on, effort, whom, least := "", "settle", "shop", int64(0)
	if f.Has("on") {
		on = f.Get("on").Text(60)
	}
	condition := ""
	if f.Has("condition") {
		condition = f.Get("condition").OneOf("sound", "rusted_through")
	}
	if f.Has("effort") {
		effort = f.Get("effort").OneOf("rough", "settle")
	}
	if f.Has("for") {
		whom = f.Get("for").OneOf("customer", "shop")
	}
	if f.Has("axis_at_least") {
		least = int64(f.Get("axis_at_least").Number(0, 1e15))
	}
	if err := f.Err(); err != nil {
		return refused(id, "car", err)
	}
	var reply []byte
	var err error
	switch ask {
	case "sheet":
		reply, err = s.sheet(id, c)
	case "tally":
		reply, err = s.tally(id, c)
	case "odds":
		reply, err = s.odds(id, c, on)
	case "before_after":
		reply, err = s.beforeAfter(id, c, effort, least)
	case "to_do":
		reply, err = s.toDo(id, c)
	case "compare_ways":
		reply, err = s.compareWays(id, c, on)
	case "worth":
		reply, err = s.worthReply(id, c, whom)
	case "wide":
		reply, err = s.wideReply(id, c)
	case "twenty":
		reply, err = s.twenty(id, c)
	case "decide":
		reply, err = s.decide(id, c)
	case "plan":
		reply, err = s.plan(id, c)
	case "two_ways":
		reply, err = s.twoWays(id, c)
	case "suppose":
		reply, err = s.suppose(id, c, on, condition)
	}
	if err != nil {
		return refused(id, "car", err)
	}
	return reply
}
