package pricing

import (
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/strict"
)

// Finding is something that a survey may find besides the condition of the metal.
type Finding struct {
	ID   string
	Name car.Words
	// Key is the letter that records it on a keyboard; empty for a finding of the
	// whole car.
	Key string
	// Priced marks a finding outside the odds: no range includes it until somebody has
	// found it.
	Priced       bool
	PerCar       bool      // of the car, not of an item
	PerLeadJoint bool      // counted per lead-loaded joint
	OuterOnly    bool      // recorded on outer panels only
	Parts        []string  // ids of the parts on which it can be recorded; nil = any
	Hours        car.Hours // extra metalwork at show standard, each; zero = none
}

// Findings lists all findings, in the order in which pages offer them. The lists of
// parts are shared; do not change them.
func Findings() []Finding {
	fig, err := loadFigures()
	if err != nil {
		panic("engine: internal error: work data: " + err.Error())
	}
	return slices.Clone(fig.found)
}

// On says whether the finding can be recorded on items of a part.
func (f Finding) On(p *car.Part) bool {
	switch {
	case f.PerCar, f.OuterOnly && p.Face != car.Outer, f.PerLeadJoint && p.LeadJoints == 0:
		return false
	}
	return f.Parts == nil || slices.Contains(f.Parts, p.ID)
}

// readFindings reads all findings, and the hours of those that the odds include.
func (g *figures) readFindings(f strict.Field) {
	f.Keys("source", "kinds")
	f.Get("source").Text(300)
	for _, one := range f.Get("kinds").Items() {
		g.found = append(g.found, readFinding(one))
	}
	for i, id := range []string{"patch_over_rust", "filler_over_hole", "filler_over_dent"} {
		g.finding[i] = g.found[g.findingNamed(id)].Hours
	}
	g.failedLead = g.found[g.findingNamed("cracked_lead")].Hours
}

func readFinding(f strict.Field) Finding {
	f.Keys("id", "key", "name", "per", "outer_only", "priced", "hours", "parts")
	x := Finding{ID: f.Get("id").Text(40), Name: words(f.Get("name"))}
	if f.Has("key") {
		x.Key = f.Get("key").Text(1)
	}
	per := f.Get("per").OneOf("item", "lead joint", "car")
	x.PerCar, x.PerLeadJoint = per == "car", per == "lead joint"
	x.OuterOnly = f.Has("outer_only") && f.Get("outer_only").Bool()
	x.Priced = f.Has("priced") && f.Get("priced").Bool()
	if f.Has("hours") {
		x.Hours = triple(f.Get("hours"))
	}
	if f.Has("parts") {
		x.Parts = texts(f.Get("parts"))
	}
	return x
}

// findingNamed returns the index of a finding that must be in the data.
func (g *figures) findingNamed(id string) int {
	n := slices.IndexFunc(g.found, func(f Finding) bool { return f.ID == id })
	if n < 0 {
		panic("engine: internal error: no finding " + id + " in the work data")
	}
	return n
}

// perCar counts the findings of the whole car.
func (g *figures) perCar() (n int) {
	for _, f := range g.found {
		if f.PerCar {
			n++
		}
	}
	return n
}
