package carfile

import (
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/damage"
	"underpaint/engine/evidence"
)

// LookAgain lists the records, by index in Survey, that are very unlike the rest of the
// car. For each it takes everything known except the record and its finding, and works
// out the probability of the recorded condition or one step from it (for a box seen
// from outside, of any condition that may look like it). A record is listed if that is
// below a limit. Listed records are priced as recorded; the person who made them is
// asked to check again, unless that has been done. m is the model of the car at the
// stage it has reached.
func (c *Car) LookAgain(b *car.Body, m *damage.Model) (list []int, err error) {
	records := c.recordsUpTo(b, c.LastStage())
	entry := make([]*damage.Likelihood, len(b.Items))
	asked := false
	for i, n := range records {
		if n < 0 || c.Survey[n].Sure || c.Survey[n].CouldNotSee || c.Survey[n].Condition == "" {
			continue
		}
		if entry[i], err = evidence.Reading(b.PartOf(i), c.Survey[n].Entry()); err != nil {
			return nil, err
		}
		asked = true
	}
	if !asked {
		return nil, nil
	}
	for i, without := range m.LeftOut(entry) {
		if entry[i] == nil {
			continue
		}
		r := &c.Survey[records[i]]
		closed := !b.PartOf(i).SeenWhenStripped && r.Stage != OpeningUp
		likely := 0.0
		for _, k := range evidence.Readable(closed, slices.Index(car.ConditionIDs[:], r.Condition)) {
			likely += without.Condition[k]
		}
		if likely < evidence.SlipNamedBelow() {
			list = append(list, records[i])
		}
	}
	slices.Sort(list)
	return list, nil
}
