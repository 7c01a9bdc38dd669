package message

import (
	"cmp"
	"math"
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/damage"
	"underpaint/engine/estimate"
	"underpaint/engine/evidence"
	"underpaint/engine/strict"
)

// mostLooks is how many looks are offered, the best first.
const mostLooks = 6

// valuedLook is one look that could still be made, with what it is worth.
type valuedLook struct {
	kind  evidence.Kind
	on    string
	item  int // −1: a side
	yes   func(condition int, f damage.Finding, dent bool) float64
	worth estimate.Worth
}

// narrower is by how much the range would be narrower on average, minor units.
func (v valuedLook) narrower() float64 { return v.worth.Now - v.worth.Expected }

// valueLooks values every look that can still be made, on the imagined cars of
// the present range: each is weighted by its chance of giving yes, and of no.
func (s *Session) valueLooks(j *worthJob, whom string) []valuedLook {
	b, c := j.stages.body, j.stages.car
	all := []valuedLook{}
	if c.Begun(carfile.Survey) {
		return all // the metal is bare: looks through paint are over
	}
	for _, kind := range evidence.Kinds() {
		if whom == "customer" && (!kind.CustomerCan || kind.BySide) {
			continue
		}
		yes := func(condition int, f damage.Finding, dent bool) float64 {
			return kind.CountedYes(whom, j.now.model.Covered(), condition, f, dent)
		}
		for _, l := range openLooks(b, kind) {
			if lookedLike(c, kind, l.on) || l.item >= 0 && lookedLike(c, kind, evidence.Either(b, l.item)) || kind.NotAtLead && l.item >= 0 && b.PartOf(l.item).LeadJoints > 0 {
				continue
			}
			v := valuedLook{kind: kind, on: l.on, item: l.item, yes: yes}
			items := []int{l.item}
			if l.item < 0 {
				items = evidence.OnSide(b, kind.ID, l.on)
			}
			v.worth = j.now.run.IfLook(0, items, func(packed byte) float64 { return yes(estimate.Unpack(packed)) })
			all = append(all, v)
		}
	}
	slices.SortStableFunc(all, func(x, y valuedLook) int { return cmp.Compare(y.narrower(), x.narrower()) })
	return firstOfEach(b, all)
}

// firstOfEach keeps the best looks, one of each kind at a pair of mirrored items.
func firstOfEach(b *car.Body, all []valuedLook) (out []valuedLook) {
	for _, v := range all {
		same := func(o valuedLook) bool {
			return o.kind.ID == v.kind.ID && (v.item < 0 || b.Items[o.item].Part == b.Items[v.item].Part)
		}
		if v.narrower() <= 0 || slices.ContainsFunc(out, same) {
			continue
		}
		if out = append(out, v); len(out) == mostLooks {
			break
		}
	}
	return out
}

// openLooks are the places at which a look can be made.
func openLooks(b *car.Body, kind evidence.Kind) (out []walkLine) {
	if kind.BySide {
		for _, side := range sidesOf(b, kind.ID) {
			out = append(out, walkLine{kind, side, -1})
		}
		return out
	}
	for _, i := range evidence.Items(b, kind.ID) {
		out = append(out, walkLine{kind, b.Items[i].ID, i})
	}
	return out
}

// lookedLike says whether a look that answers to the same was made there: a
// further one mostly brings the same news.
func lookedLike(c *carfile.Car, kind evidence.Kind, on string) bool {
	return slices.ContainsFunc(c.Looks, func(l evidence.Look) bool {
		other, ok := evidence.KindOf(l.Look)
		return ok && l.On == on && other.AnswersTo == kind.AnswersTo
	})
}

func (s *Session) writeLook(w *strict.Writer, j *worthJob, v valuedLook) {
	words, b := s.Rates.Words, j.stages.body
	place := "the whole " + v.on + " side"
	if v.item >= 0 {
		place = b.ItemName(v.item, words)
	}
	w.Member("look", v.kind.ID)
	w.Member("on", v.on)
	either := ""
	if v.item >= 0 && v.kind.AnswersTo == evidence.OfCondition {
		either = evidence.Either(b, v.item)
	}
	w.Member("either", either)
	w.Member("text", place+": "+lowerFirst(v.kind.Name.In(words))+"?")
	w.Member("how", v.kind.How.In(words))
	w.Member("needs", v.kind.Needs.In(words))
	w.Member("caution", v.kind.Caution.In(words))
	w.Member("place_line", s.placeLine(j, v))
	whole := "On average it would make the range about " + s.moneyWidth(math.Max(v.narrower(), 1)) + " narrower."
	if v.narrower() < 0.01*v.worth.Now {
		whole = "It would make the range hardly narrower; no single look does much more."
	}
	w.Member("whole_line", whole)
}

// placeLine says what either answer would tell about the place itself.
func (s *Session) placeLine(j *worthJob, v valuedLook) string {
	if v.item < 0 || v.kind.AnswersTo != evidence.OfCondition {
		return ""
	}
	p := func(c estimate.Seen) float64 {
		return v.yes(c.Condition(v.item), c.Finding(v.item), c.Dent(v.item))
	}
	holed := func(c estimate.Seen) bool { return c.Condition(v.item) >= holedFrom }
	yes := v.worth.Yes
	if yes <= 0 || yes >= 1 {
		return ""
	}
	both := j.now.run.IfKnown(0, func(c estimate.Seen) float64 {
		if !holed(c) {
			return 0
		}
		return p(c)
	}).Yes
	neither := j.now.run.IfKnown(0, func(c estimate.Seen) float64 {
		if !holed(c) {
			return 0
		}
		return 1 - p(c)
	}).Yes
	return "A yes would mean rusted through there in " + carsInTen(both/yes) + ", a no in " + carsInTen(neither/(1-yes)) + "."
}
