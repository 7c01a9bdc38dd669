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

func (s *Session) stepName(k int) string {
	return [...]string{"Strip and survey", "Structure and hidden metal", "Outer metal",
		s.say("Body and block, paint", "Filling and flatting, paint"), "Assembly, and what is left"}[k]
}

// plan is the job in stages: what each takes, what it has come to by then, and what
// it costs to stop there.
func (s *Session) plan(id int64, c *carfile.Car) ([]byte, error) {
	j, now, err := s.openNow(c)
	if err != nil {
		return nil, err
	}
	cameTo, err := s.cameTo(c)
	if err != nil {
		return nil, err
	}
	stages, left := estimate.Plan(now.model, j.priced(), Seed, planCars, cameTo)
	stop := s.Rates.Strip.ToStop
	w := strict.NewWriter()
	w.Object(func() {
		head(w, id, "plan")
		w.Objects("stages", len(stages), func(k int) {
			one := stages[k]
			w.Member("id", carfile.StepIDs[k])
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
			actual := ""
			if k < len(cameTo) {
				actual = "It came to " + s.Rates.Currency.TextWhole(money.Minor(cameTo[k])) + "; " + againstRange(float64(cameTo[k]), one.Money) + "."
			}
			w.Member("actual_line", actual)
		})
		w.Member("so_far_line", s.soFar(cameTo, left, stages[len(stages)-1].ByThen))
		w.Member("note", "8 in 10 such cars for every figure. Each stage has ends of its own, so they do not add up to the range; by its end they hold the whole job so far. Only the first stage has a price now; each next one is agreed in writing before it begins.")
	})
	return w.Bytes(), nil
}

// cameTo are the finished stages in minor units.
func (s *Session) cameTo(c *carfile.Car) (out []int64, err error) {
	for k, text := range c.CameTo {
		if text == "" {
			break
		}
		d, err := money.Parse(text)
		if err != nil {
			return nil, &strict.Error{Path: "came_to." + carfile.StepIDs[k], Found: text, Expected: "an amount of money"}
		}
		m, exact := s.Rates.Currency.Round(d)
		if !exact {
			return nil, &strict.Error{Path: "came_to." + carfile.StepIDs[k], Found: text, Expected: "an amount without parts of the smallest coin"}
		}
		out = append(out, int64(m))
	}
	return out, nil
}

// againstRange says where a stage came out in its own range.
func againstRange(sum float64, q estimate.Quantiles) string {
	switch {
	case sum < q.Low:
		return "below its range"
	case sum > q.High:
		return "above its range"
	}
	return "inside its range"
}

// soFar is the running total against the range.
func (s *Session) soFar(cameTo []int64, left, whole estimate.Quantiles) string {
	if len(cameTo) == 0 {
		return ""
	}
	sum := money.Minor(0)
	for _, m := range cameTo {
		sum += money.Minor(m)
	}
	line := "So far " + s.Rates.Currency.TextWhole(sum) + "."
	if len(cameTo) == int(estimate.Steps) {
		return line + " The job is done."
	}
	return line + " What is left: " + s.between(left) + ", so in all " + s.between(whole) + " (8 in 10)."
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
