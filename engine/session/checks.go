package session

import (
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/damage"
	"underpaint/engine/estimate"
	"underpaint/engine/evidence"
)

// mostChecks is how many checks are offered, the best first.
const mostChecks = 6

// CheckValue is one check that could still be made, with what it is worth.
type CheckValue struct {
	WalkLine
	Either    string  // the id of this item or its mirror image, empty where there is none
	Narrower  float64 // how much narrower the range would be on average, in minor units
	NowWidth  float64 // how wide the range is now, in minor units
	TellsOfIt bool    // the check tells the condition of the item itself, with:
	IfYes     float64 // the chance that the item is rusted through after a yes
	IfNo      float64 // and after a no
}

// valueChecks values every check that can still be made. It weights the simulated cars of
// the current range by their chance of a yes, and of a no.
func valueChecks(stages *stageRanges, now *stageRun, whom string) []CheckValue {
	b, c := stages.body, stages.car
	if c.Begun(carfile.Survey) {
		return nil // checks through paint end once the metal is bare
	}
	type valued struct {
		CheckValue
		worth estimate.Worth
		yes   func(condition int, f damage.Finding, dent bool) float64
	}
	var all []valued
	for _, kind := range evidence.Kinds() {
		if whom == "customer" && (!kind.CustomerCan || kind.BySide) {
			continue
		}
		yes := func(condition int, f damage.Finding, dent bool) float64 {
			return kind.CountedYes(whom, now.model.Covered(), condition, f, dent)
		}
		for _, l := range placesOf(b, kind) {
			if checkedLike(c, kind, l.On) || l.Item >= 0 && checkedLike(c, kind, evidence.Either(b, l.Item)) || kind.NotAtLead && l.Item >= 0 && b.PartOf(l.Item).LeadJoints > 0 {
				continue
			}
			v, items := valued{CheckValue: CheckValue{WalkLine: l}, yes: yes}, []int{l.Item}
			if l.Item < 0 {
				items = evidence.OnSide(b, kind.ID, l.On)
			}
			v.worth = now.run.IfLook(0, items, func(packed byte) float64 { return yes(estimate.Unpack(packed)) })
			v.Narrower, v.NowWidth = v.worth.Now-v.worth.Expected, v.worth.Now
			all = append(all, v)
		}
	}
	sortByFloat(all, func(v valued) float64 { return -v.Narrower })
	var out []CheckValue
	for _, v := range all {
		if v.Narrower <= 0 || slices.ContainsFunc(out, func(o CheckValue) bool { return sameCheck(b, o, v.CheckValue) }) {
			continue
		}
		if v.Item >= 0 && v.Kind.AnswersTo == evidence.OfCondition {
			v.Either = evidence.Either(b, v.Item)
			v.tell(now.run, v.worth.Yes, v.yes)
		}
		if out = append(out, v.CheckValue); len(out) == mostChecks {
			break
		}
	}
	return out
}

// sameCheck says whether two checks are of one kind, on items of the same part.
func sameCheck(b *car.Body, o, v CheckValue) bool {
	return o.Kind.ID == v.Kind.ID && (v.Item < 0 || b.Items[o.Item].Part == b.Items[v.Item].Part)
}

// checkedLike says whether the car has a check on the same item or side that answers the
// same question. A further one would tell little that is new.
func checkedLike(c *carfile.Car, kind evidence.Kind, on string) bool {
	return slices.ContainsFunc(c.Looks, func(l evidence.Look) bool {
		other, ok := evidence.KindOf(l.Look)
		return ok && l.On == on && other.AnswersTo == kind.AnswersTo
	})
}

// tell works out what either answer would tell about the item itself. yes is the chance
// of a yes, and chanceOf gives that chance in one condition.
func (v *CheckValue) tell(run *estimate.Run, yes float64, chanceOf func(condition int, f damage.Finding, dent bool) float64) {
	if yes <= 0 || yes >= 1 {
		return
	}
	holedAnd := func(answer func(p float64) float64) float64 {
		return run.IfKnown(0, func(c estimate.Seen) float64 {
			if c.Condition(v.Item) < holedFrom {
				return 0
			}
			return answer(chanceOf(c.Condition(v.Item), c.Finding(v.Item), c.Dent(v.Item)))
		}).Yes
	}
	v.TellsOfIt = true
	v.IfYes = holedAnd(func(p float64) float64 { return p }) / yes
	v.IfNo = holedAnd(func(p float64) float64 { return 1 - p }) / (1 - yes)
}
