package carfile

import (
	"underpaint/engine/car"
	"underpaint/engine/strict"
)

func (c *Car) writeRecorded(w *strict.Writer) {
	r := &c.Recorded
	w.MemberIf("answers_checked", r.AnswersChecked)
	w.ObjectsIf("stages", len(r.Stages), func(i int) {
		w.Member("stage", r.Stages[i].Stage)
		w.Member("on", r.Stages[i].On)
		w.MemberIf("rates", r.Stages[i].Rates)
		w.MemberIf("figures", r.Stages[i].Figures)
	})
	w.ObjectsIf("survey", len(r.Survey), func(i int) { r.Survey[i].write(w) })
	w.ObjectsIf("opened", len(r.Opened), func(i int) {
		w.Member("box", r.Opened[i].Box)
		w.MemberIf("at", r.Opened[i].At)
	})
	if len(r.WholeCar) > 0 {
		w.Texts("whole_car", r.WholeCar)
	}
	r.SurveyCar.write(w)
	WriteHours(w, "strip_hours", r.StripHours)
	w.ObjectsIf("ways", len(r.Ways), func(i int) {
		w.Member("on", r.Ways[i].On)
		w.Member("way", r.Ways[i].Way)
		w.Member("by", r.Ways[i].By)
	})
	r.writeCameTo(w)
}

func (r *Recorded) writeCameTo(w *strict.Writer) {
	if r.CameTo == [len(StepIDs)]string{} {
		return
	}
	w.Key("came_to")
	w.Object(func() {
		for k, sum := range r.CameTo {
			w.MemberIf(StepIDs[k], sum)
		}
	})
}

// WriteHours writes hours by trade, or nothing if none are entered.
func WriteHours(w *strict.Writer, name string, hours [car.Trades]float64) {
	if hours == [car.Trades]float64{} {
		return
	}
	w.Key(name)
	w.Object(func() {
		for t, h := range hours {
			if h > 0 {
				w.Key(car.TradeIDs[t])
				w.Number(h)
			}
		}
	})
}

func (r *Record) write(w *strict.Writer) {
	w.Member("on", r.On)
	w.Member("stage", r.Stage)
	w.MemberIf("condition", r.Condition)
	w.MemberIf("finding", r.Finding)
	if r.Dent != "" {
		w.Key("dent")
		w.Bool(r.Dent == "yes")
	}
	if len(r.Also) > 0 {
		w.Texts("also", r.Also)
	}
	if r.LeadFailed >= 0 {
		w.Key("lead_failed")
		w.Whole(int64(r.LeadFailed))
	}
	w.MemberIf("panel_fit", r.PanelFit)
	if r.CouldNotSee {
		w.Key("could_not_see")
		w.Bool(true)
	}
	if r.Sure {
		w.Key("sure")
		w.Bool(true)
	}
	w.MemberIf("note", r.Note)
	w.MemberIf("photo", r.Photo)
	w.MemberIf("at", r.At)
	w.ObjectsIf("was", len(r.Was), func(i int) {
		w.MemberIf("condition", r.Was[i].Condition)
		w.MemberIf("at", r.Was[i].At)
	})
}
