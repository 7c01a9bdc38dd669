package pricing

import (
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/rates"
)

// WorkKind says what kind of work a line is.
type WorkKind int

// The kinds of work.
const (
	StripStep WorkKind = iota // a step of the strip and survey
	WayOfRepair
	FoundWork // what a finding adds
	Access    // charged once to reach the rest
	AfterSurvey
	MaterialUsed
	WorkSentOut
)

// WorkLine is one thing that a price has in it, by the id of the data or of the rates.
type WorkLine struct {
	Kind WorkKind
	ID   string
	Name car.Words // empty for a way of repair
}

// StripWork lists what the shop does in the strip and survey, with what it uses up and
// sends out. A step that the customer does is not in it.
func (t *Table) StripWork() (out []WorkLine) {
	for k := range t.strip {
		if l := &t.strip[k]; !l.byCustomer {
			out = append(out, WorkLine{StripStep, l.id, l.name})
		}
	}
	return append(out, t.used(rates.StripStage)...)
}

// CarWork lists what is done once for the whole car after the survey: access that the
// ways in range may need, findings of the whole car, the work that every job has, and
// what that uses up and sends out. ways has the ways that each item may get, as
// [Table.WaysInRange] returns them.
func (t *Table) CarWork(ways [][]car.Way) (out []WorkLine) {
	for k := range t.accesses {
		if a := &t.accesses[k]; a.mayNeed(ways) {
			out = addLine(out, WorkLine{Access, a.line.id, a.line.name})
		}
	}
	if t.doneInStrip("body_lift") || slices.ContainsFunc(out, func(l WorkLine) bool { return l.ID == "body_off" }) {
		for k := range t.nuts {
			out = addLine(out, WorkLine{Access, t.nuts[k].line.id, t.nuts[k].line.name})
		}
	}
	if t.decided != nil {
		for _, f := range t.decided.car {
			out = append(out, WorkLine{FoundWork, f.id, f.name})
		}
	}
	for _, l := range t.after {
		out = append(out, WorkLine{AfterSurvey, l.id, l.name})
	}
	return append(out, t.used(rates.AfterStage)...)
}

// WaysInRange lists, for every item, the ways other than leave that bills may have, least
// work first: the chosen one, or those that the shop does on metal in its condition
// (index in car.ConditionIDs; −1 stands for any), and those to which work on other items
// may raise it.
func (t *Table) WaysInRange(condition []int) [][]car.Way {
	t.checkLength(len(condition))
	may := make([][car.Ways]bool, len(t.items))
	for i := range t.items {
		if way, ok := t.chosen(i); ok {
			may[i][way] = true
		} else if !t.leftOut(i) {
			t.mayGet(i, condition[i], &may[i])
		}
	}
	for changed := true; changed; {
		changed = false
		for k := range t.openings {
			changed = t.mayRaise(&t.openings[k], may) || changed
		}
	}
	out := make([][]car.Way, len(t.items))
	for i := range may {
		for w := car.Leave + 1; w < car.Ways; w++ {
			if may[i][w] {
				out[i] = append(out[i], w)
			}
		}
	}
	return out
}

// mayGet marks the ways with a chance on an item in one condition, or in any.
func (t *Table) mayGet(i, condition int, may *[car.Ways]bool) {
	line := &t.items[i]
	for c := range line.chance {
		if condition >= 0 && c != condition {
			continue
		}
		for w, v := range line.chance[c] {
			if v > 0 {
				may[line.instead[w]] = true
			}
		}
	}
}

// mayRaise marks the ways to which an opening may raise its items, and says whether any
// is new.
func (t *Table) mayRaise(r *openingRule, may [][car.Ways]bool) (changed bool) {
	asks := func(i int) bool { return slices.Contains(may[i][r.atLeast:], true) }
	if !slices.ContainsFunc(r.ifItems, asks) {
		return false
	}
	for _, x := range r.raise {
		least := car.Way(slices.Index(may[x.item][:], true)) // −1: left out, so nothing but this raises it
		if to := t.items[x.item].instead[x.to]; least < x.to && least < to && !may[x.item][to] {
			may[x.item][to], changed = true, true
		}
	}
	return changed
}

// mayNeed says whether any of these ways calls for the line.
func (a *access) mayNeed(ways [][]car.Way) bool {
	for _, i := range a.items {
		for _, w := range ways[i] {
			if w == a.way || !a.exact && w > a.way {
				return true
			}
		}
	}
	return false
}

// used lists the materials and the work sent out of a stage.
func (t *Table) used(stage string) (out []WorkLine) {
	for _, m := range t.Rates.Materials {
		if m.Stage == stage && m.Scopes[t.Scope] && (t.Quantity(m) > 0 || m.Area == rates.Replaced) {
			out = append(out, WorkLine{MaterialUsed, m.ID, m.Name})
		}
	}
	for k, s := range t.Rates.SentOut.Work {
		if s.Stage == stage && t.money.sent[k] != nil {
			out = append(out, WorkLine{WorkSentOut, s.ID, s.Name})
		}
	}
	return out
}

// addLine adds a line once.
func addLine(list []WorkLine, l WorkLine) []WorkLine {
	if slices.Contains(list, l) {
		return list
	}
	return append(list, l)
}
