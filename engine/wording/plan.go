package wording

import (
	"underpaint/engine/estimate"
	"underpaint/engine/money"
	"underpaint/engine/session"
)

// StepHours says how many hours a stage of the plan takes.
func StepHours(s *estimate.StepPlan) string {
	low, high := session.RoundOutward(s.Hours.Low, s.Hours.High)
	return Grouped(low) + " to " + Grouped(high) + " hours"
}

// StepWeeks says how many weeks that is at the likely hours a week on one car.
func (t *Text) StepWeeks(s *estimate.StepPlan) string {
	a := t.rates.Time.HoursAWeek[1]
	low, high := session.RoundOutward(s.Hours.Low/a, s.Hours.High/a)
	return Grouped(low) + " to " + Grouped(max(high, 1)) + " weeks at about " + plain(a) + " hours a week"
}

// ByThen says what the whole job costs by the end of a stage.
func (t *Text) ByThen(s *estimate.StepPlan) string {
	return "The job so far, by the end of this stage: " + t.Between(s.ByThen) + "."
}

// StopAfter says what it costs to stop after the k-th stage.
func (t *Text) StopAfter(p *session.Plan, k int) string {
	if k == len(p.Stages)-1 {
		return "The job is done."
	}
	return "If you stop here, you pay for the work done so far, plus " + t.ToTheUnit(p.ToStop) + " to put the car back on its wheels or box it up."
}

// Actual says what the k-th stage cost. It is empty where the stage is not finished.
func (t *Text) Actual(p *session.Plan, k int) string {
	if k >= len(p.CameTo) {
		return ""
	}
	where := "inside its range"
	switch m, q := float64(p.CameTo[k]), p.Stages[k].Money; {
	case m < q.Low:
		where = "below its range"
	case m > q.High:
		where = "above its range"
	}
	return "It cost " + t.Amount(money.Minor(p.CameTo[k])) + ", " + where + "."
}

// SoFar compares the running total with the range. It is empty before a stage is
// finished.
func (t *Text) SoFar(p *session.Plan) string {
	if len(p.CameTo) == 0 {
		return ""
	}
	line := "So far " + t.Amount(p.SoFar()) + "."
	if len(p.CameTo) == len(p.Stages) {
		return line + " The job is done."
	}
	return line + " In 8 cars out of 10, the rest costs " + t.Between(p.Left) + " and the whole job " + t.Between(p.Whole()) + "."
}

// PlanNote is the text below the stages of the plan.
const PlanNote = "All amounts are for 8 cars out of 10. Each stage has its own range, so the stages do not add up to the range of the whole job. Only the first stage has a price now. We agree each later stage in writing before it begins."
