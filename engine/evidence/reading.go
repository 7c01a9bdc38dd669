package evidence

import (
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/damage"
	"underpaint/engine/strict"
)

// SurveyEntry is what the survey of the bare metal recorded about one item. An empty
// field was left blank. An entry with only blanks is no evidence; it never means that
// the item is sound.
type SurveyEntry struct {
	Condition string // one of car.ConditionIDs
	Finding   string // one of damage.FindingIDs; blank on an item that was seen = none
	Dent      string // filler over a dent, Yes or No; blank on an item that was seen = No
	Opened    bool   // a closed box was opened and seen inside; no effect on other parts
}

// Reading is the likelihood of what the survey recorded about an item of part p, nil if
// it recorded nothing. Every entry is a chance above 0 and up to 1. The path of an error
// is the field of the entry: condition, finding or dent.
func Reading(p *car.Part, e SurveyEntry) (*damage.Likelihood, error) {
	condition, finding, err := e.check(p)
	if err != nil {
		return nil, err
	}
	closed := !p.SeenWhenStripped && !e.Opened
	if condition >= 0 && !closed { // the item was seen, so a blank means that there was nothing
		finding = max(finding, int(damage.NoFinding))
		if e.Dent == "" {
			e.Dent = No
		}
	}
	dented := p.Face == car.Outer && e.Dent != ""
	if condition < 0 && finding < 0 && !dented {
		return nil, nil
	}
	out := damage.NoEvidence()
	for k := range out {
		for f := range out[k] {
			for d := range out[k][f] {
				v := &out[k][f][d]
				if condition >= 0 {
					*v *= RecordChance(closed, k, condition)
				}
				if finding >= 0 {
					*v *= findingRead(p, damage.Finding(f), damage.Finding(finding))
				}
				if dented {
					*v *= dentRead(d == 1, e.Dent == Yes)
				}
			}
		}
	}
	return out, nil
}

// check converts the ids to indices, -1 for blanks.
func (e SurveyEntry) check(p *car.Part) (condition, finding int, err error) {
	condition = slices.Index(car.ConditionIDs[:], e.Condition)
	if condition < 0 && e.Condition != "" {
		return 0, 0, &strict.Error{Path: "condition", Found: quote(e.Condition), Expected: "a condition from sound to gone"}
	}
	finding = slices.Index(damage.FindingIDs[:], e.Finding)
	if finding < 0 && e.Finding != "" {
		return 0, 0, &strict.Error{Path: "finding", Found: quote(e.Finding), Expected: "none, patch_over_rust, filler_over_hole or replaced"}
	}
	if e.Dent != "" && e.Dent != Yes && e.Dent != No {
		return 0, 0, &strict.Error{Path: "dent", Found: quote(e.Dent), Expected: "yes or no"}
	}
	if e.Dent == Yes && p.Face != car.Outer {
		return 0, 0, &strict.Error{Path: "dent", Found: quote(e.Dent), Expected: "no, because only an outer part is filled over a dent, and " + p.ID + " is not one"}
	}
	return condition, finding, nil
}

// findingRead is the chance of recording a finding given the true one. Only an outer
// item can have filler over a hole. On others filler is read as a patch, and the chance
// of a wrong record is split between the two other findings they can have.
func findingRead(p *car.Part, is, recorded damage.Finding) float64 {
	others := float64(damage.Findings - 1)
	if p.Face != car.Outer {
		others--
		is, recorded = asPatch(is), asPatch(recorded)
	}
	if is == recorded {
		return readings().finding
	}
	return (1 - readings().finding) / others
}

func asPatch(f damage.Finding) damage.Finding {
	if f == damage.FillerOverHole {
		return damage.PatchOverRust
	}
	return f
}

// dentRead is the chance of recording filler over a dent, or none, given the truth.
func dentRead(is, recorded bool) float64 {
	if is == recorded {
		return readings().finding
	}
	return 1 - readings().finding
}
