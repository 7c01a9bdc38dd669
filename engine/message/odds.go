package message

import (
	"errors"
	"strconv"

	"underpaint/engine/carfile"
	"underpaint/engine/damage"
	"underpaint/engine/strict"
)

// odds says of one recorded item how it compares with what was believed before
// the stage at which it was recorded.
func (s *Session) odds(id int64, c *carfile.Car, on string) ([]byte, error) {
	j, err := s.openStages(c)
	if err != nil {
		return nil, err
	}
	i, ok := j.body.ItemNamed(on)
	if !ok {
		return nil, &strict.Error{Path: "on", Found: on, Expected: "an item of this body, such as " + j.body.Items[0].ID}
	}
	before, now := j.lastTwo()
	if err := errors.Join(j.need(before), j.need(now)); err != nil {
		return nil, err
	}
	was, is := before.model.ChancesOf(i), now.model.ChancesOf(i)
	line := ""
	if k := c.RecordedCondition(on); k >= 0 {
		line = comparedWith(below(was, k), above(was, k))
	}
	w := strict.NewWriter()
	w.Object(func() {
		head(w, id, "odds")
		w.Member("on", on)
		w.Member("line", line)
		w.Member("before_line", "Before: rusted through or gone in "+carsInTen(was.Holed())+".")
		w.Member("now_line", "Now: in "+carsInTen(is.Holed())+" that agree with everything recorded.")
	})
	return w.Bytes(), nil
}

// below and above are the chances of a better and of a worse condition than k.
func below(c damage.Chances, k int) (p float64) {
	for n := range k {
		p += c.Condition[n]
	}
	return p
}

func above(c damage.Chances, k int) (p float64) {
	for n := k + 1; n < len(c.Condition); n++ {
		p += c.Condition[n]
	}
	return p
}

// comparedWith says where something stands among such cars.
func comparedWith(better, worse float64) string {
	if better >= worse {
		return "Worse than " + inTen(better) + " such cars."
	}
	return "Better than " + inTen(worse) + " such cars."
}

// inTen is a share as "8 of 10", "19 of 20" near the ends.
func inTen(share float64) string {
	switch n := tenths(share); {
	case share > 0.95:
		return "19 of 20"
	case n == 0:
		return "fewer than 1 of 20"
	default:
		return strconv.Itoa(n) + " of 10"
	}
}
