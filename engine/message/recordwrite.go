package message

import (
	"underpaint/engine/car"
	"underpaint/engine/strict"
)

func (c *Car) writeRecorded(w *strict.Writer) {
	r := &c.Recorded
	memberIf(w, "answers_checked", r.AnswersChecked)
	listOf(w, "stages", len(r.Stages), func(i int) {
		member(w, "stage", r.Stages[i].Stage)
		member(w, "on", r.Stages[i].On)
		memberIf(w, "rates", r.Stages[i].Rates)
	})
	listOf(w, "survey", len(r.Survey), func(i int) { r.Survey[i].write(w) })
	listOf(w, "opened", len(r.Opened), func(i int) {
		member(w, "box", r.Opened[i].Box)
		memberIf(w, "at", r.Opened[i].At)
	})
	if len(r.WholeCar) > 0 {
		list(w, "whole_car", r.WholeCar)
	}
	r.writeHours(w)
	listOf(w, "ways", len(r.Ways), func(i int) {
		member(w, "on", r.Ways[i].On)
		member(w, "way", r.Ways[i].Way)
		member(w, "by", r.Ways[i].By)
	})
}

func (r *Recorded) writeHours(w *strict.Writer) {
	if r.StripHours == [car.Trades]float64{} {
		return
	}
	w.Key("strip_hours")
	w.Object(func() {
		for t, h := range r.StripHours {
			if h > 0 {
				w.Key(car.TradeIDs[t])
				w.Number(h)
			}
		}
	})
}

func (r *Record) write(w *strict.Writer) {
	member(w, "on", r.On)
	member(w, "stage", r.Stage)
	memberIf(w, "condition", r.Condition)
	memberIf(w, "finding", r.Finding)
	if r.Dent != "" {
		w.Key("dent")
		w.Bool(r.Dent == "yes")
	}
	if len(r.Also) > 0 {
		list(w, "also", r.Also)
	}
	if r.LeadFailed >= 0 {
		w.Key("lead_failed")
		w.Whole(int64(r.LeadFailed))
	}
	if r.CouldNotSee {
		w.Key("could_not_see")
		w.Bool(true)
	}
	memberIf(w, "note", r.Note)
	memberIf(w, "photo", r.Photo)
	memberIf(w, "at", r.At)
	listOf(w, "was", len(r.Was), func(i int) {
		memberIf(w, "condition", r.Was[i].Condition)
		memberIf(w, "at", r.Was[i].At)
	})
}

// memberIf writes a member that may be left out when blank.
func memberIf(w *strict.Writer, name, value string) {
	if value != "" {
		member(w, name, value)
	}
}

// listOf writes a list of n objects, nothing when there are none.
func listOf(w *strict.Writer, name string, n int, one func(i int)) {
	if n == 0 {
		return
	}
	w.Key(name)
	w.Array(func() {
		for i := range n {
			w.Object(func() { one(i) })
		}
	})
}

// eachOf writes a list of n objects, also when there are none.
func eachOf(w *strict.Writer, name string, n int, one func(i int)) {
	w.Key(name)
	w.Array(func() {
		for i := range n {
			w.Object(func() { one(i) })
		}
	})
}
