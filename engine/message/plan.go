package message

import (
	"math"

	"underpaint/engine/carfile"
	"underpaint/engine/estimate"
	"underpaint/engine/money"
	"underpaint/engine/strict"
)

// planCars is how many imagined cars stand behind the stages (assumption: an end is
// then good to a sixtieth of the width).
const planCars = 2048

var stepIDs = [estimate.Steps]string{"strip_and_survey", "structure", "outer_metal", "paint", "assembly"}

func (s *Session) stepName(k int) string {
	return [...]string{"Strip and survey", "Structure and hidden metal", "Outer metal",
		s.say("Body and block, paint", "Filling and flatting, paint"), "Assembly, and what is left"}[k]
}

// plan is the job in stages: what each takes, what it has come to by then, and what
// it costs to stop there.
func (s *Session) plan(id int64, c *carfile.Car) ([]byte, error) {
	j, now, err := s.openWhy(c)
	if err != nil {
		return nil, err
	}
	stages := estimate.Plan(now.model, j.priced(), Seed, planCars)
	stop := s.Rates.Strip.ToStop
	w := strict.NewWriter()
	w.Object(func() {
		head(w, id, "plan")
		w.Objects("stages", len(stages), func(k int) {
			one := stages[k]
			w.Member("id", stepIDs[k])
			w.Member("name", s.stepName(k))
			w.Member("money_text", s.between(one.Money))
			low, high := roundOutward(one.Hours.Low, one.Hours.High)
			w.Member("hours_text", grouped(low)+" to "+grouped(high)+" hours")
			w.Member("weeks_text", s.weeksOf(one.Hours))
			w.Member("by_then_text", "By the end of it: "+s.between(one.ByThen)+".")
			line := "To stop there: what is done by then, and " + s.wholeText(stop) + " for putting it back or boxing it up."
			if k == len(stages)-1 {
				line = "The job is done."
			}
			w.Member("stop_line", line)
		})
		w.Member("note", "8 in 10 such cars for every figure. Each stage has ends of its own, so they do not add up to the range; by its end they hold the whole job so far. Only the first stage has a price now; each next one is agreed in writing before it begins.")
	})
	return w.Bytes(), nil
}

func (s *Session) between(q estimate.Quantiles) string {
	e := roundEnds(math.Max(0, q.Low), q.Half, 0, math.Max(q.High, 1))
	c := s.Rates.Currency
	if e.low == e.high {
		return c.TextWhole(e.low)
	}
	return c.TextWhole(max(money.Minor(0), e.low)) + " to " + c.TextWhole(e.high)
}

// weeksOf are the hours of a stage at the likely hours a week that one car gets.
func (s *Session) weeksOf(hours estimate.Quantiles) string {
	a := s.Rates.Time.HoursAWeek[1]
	low, high := roundOutward(hours.Low/a, hours.High/a)
	return grouped(low) + " to " + grouped(max(high, 1)) + " weeks at about " + plain(a) + " hours a week"
}
