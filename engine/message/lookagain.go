package message

import (
	"strconv"

	"underpaint/engine/carfile"
	"underpaint/engine/strict"
)

// lookAgain names the records that are very unlike the rest of the car. It needs the
// odds of the last stage, so it is asked apart from the counts of every press.
func (s *Session) lookAgain(id int64, c *carfile.Car) ([]byte, error) {
	j, err := s.openStages(c)
	if err != nil {
		return nil, err
	}
	list, err := j.lookAgain()
	if err != nil {
		return nil, err
	}
	w := strict.NewWriter()
	w.Object(func() {
		head(w, id, "look_again")
		s.writeLookAgain(w, j, list)
		line := ""
		switch n := len(list); {
		case n == 1:
			line = "1 part is very unlike the rest of this car. Look again?"
		case n > 1:
			line = strconv.Itoa(n) + " parts are very unlike the rest of this car. Look again?"
		}
		w.Member("line", line)
	})
	return w.Bytes(), nil
}

// lookAgain are the records to look at again, by index; none before the survey.
func (j *stageJob) lookAgain() ([]int, error) {
	if len(j.car.Survey) == 0 {
		return nil, nil
	}
	_, now := j.lastTwo()
	if err := j.need(now); err != nil {
		return nil, err
	}
	return j.car.LookAgain(j.body, now.model)
}

func (s *Session) writeLookAgain(w *strict.Writer, j *stageJob, list []int) {
	w.Objects("look_again", len(list), func(k int) {
		on := j.car.Survey[list[k]].On
		w.Member("on", on)
		i, _ := j.body.ItemNamed(on)
		w.Member("name", j.body.ItemName(i, s.Rates.Words))
		w.Member("text", "Very unlike the rest of this car. Look again?")
	})
}
