package wording

import (
	"underpaint/engine/estimate"
	"underpaint/engine/money"
	"underpaint/engine/session"
)

// StepHours says how many hours a step of the plan takes.
func StepHours(s *estimate.StepPlan) string {
	low, high := session.RoundOutward(s.Hours.Low, s.Hours.High)
	return Grouped(low) + " to " + Grouped(high) + " hours"
}

// StepWeeks are its hours at the likely hours a week that one car gets.
func (t *Text) StepWeeks(s *estimate.StepPlan) string {
	a := t.rates.Time.HoursAWeek[1]
	low, high := session.RoundOutward(s.Hours.Low/a, s.Hours.High/a)
	return Grouped(low) + " to " + Grouped(max(high, 1)) + " weeks at about " + plain(a) + " hours a week"
}

// ByThen says what the job comes to by the end of a step.
func (t *Text) ByThen(s *estimate.StepPlan) string {
	return "By the end of it: " + t.Between(s.ByThen) + "."
}

// StopAfter says what it costs to stop after the k-th step.
func (t *Text) StopAfter(p *session.Plan, k int) string {
	if k == len(p.Stages)-1 {
		return "The job is done."
	}
	return "To stop there: what is done by then, and " + t.ToTheUnit(p.ToStop) + " for putting it back or boxing it up."
}

// Actual says what the k-th step came to; nothing where it is not finished.
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
	return "It came to " + t.Amount(money.Minor(p.CameTo[k])) + "; " + where + "."
}

// SoFar is the running total against the range; nothing before a step is finished.
func (t *Text) SoFar(p *session.Plan) string {
	if len(p.CameTo) == 0 {
		return ""
	}
	line := "So far " + t.Amount(p.SoFar()) + "."
	if len(p.CameTo) == len(p.Stages) {
		return line + " The job is done."
	}
	return line + " What is left: " + t.Between(p.Left) + ", so in all " + t.Between(p.Whole()) + " (8 in 10)."
}

// PlanNote stands below the steps of the plan.
const PlanNote = "8 in 10 such cars for every figure. Each stage has ends of its own, so they do not add up to the range; by its end they hold the whole job so far. Only the first stage has a price now; each next one is agreed in writing before it begins."
