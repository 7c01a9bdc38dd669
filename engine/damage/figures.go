package damage

import (
	"math"

	"underpaint/engine/car"
)

// Finding is the trace of an earlier repair, separate from the condition.
type Finding int

// The findings that the network carries.
const (
	NoFinding Finding = iota
	PatchOverRust
	FillerOverHole
	Replaced
	Findings // the number of findings
)

// FindingIDs are the ids of findings in files, by Finding.
var FindingIDs = [Findings]string{"none", "patch_over_rust", "filler_over_hole", "replaced"}

// RepairStates is the number of states of a whole car's earlier repairs.
const RepairStates = 4

// The states of a whole car's earlier repairs.
const (
	untouched = iota
	patched
	looks
	thorough
)

// RepairStateIDs names them: nothing done, patched over the years, restored for
// looks, restored thoroughly.
var RepairStateIDs = [RepairStates]string{"untouched", "patched", "looks", "thorough"}

// Answers are the ids of the answers about earlier work.
var Answers = []string{"not_known_of", "patched_here_and_there", "stripped_and_restored", "not_sure"}

// CoverAnswers are the ids of the answers to whether the car was painted or
// undercoated in the last ten years or so.
var CoverAnswers = []string{"yes", "no", "not_sure"}

// figures are the numbers of the model; see data/damage.json for their sources.
type figures struct {
	logStep       [car.Conditions - 1]float64 // ln of the loss ratio below which each step ends
	logStepHidden float64
	sigma         float64
	share         [classes]shares
	localParts    []string
	leak          leak
	cause         causeFigures
	young, old    [RepairStates]float64
	holed         [thorough]float64
	elsewhere     float64
	floorPans     []string
	kinds         [thorough][Findings]float64
	then          [Findings]byCondition
	notReached    [2]float64 // outer items and floor pans, elsewhere
	foundReplaced [2]float64
	knock, dent   [RepairStates]float64
	dentLow       float64
	answer        map[string][RepairStates]float64
	covered       [RepairStates]float64
	coverAnswer   map[string][2]float64 // as it shows, freshly covered
	failedLead    map[string]float64
}

// class says how an item shares its variance with the rest of the car.
type class int8

// The classes of items.
const (
	open   class = iota // seen once the car is stripped
	closed              // a closed box, with a larger residual share
	local               // rusts from local causes and says little about the car
	classes
)

// shares are shares of the variance of the log depth; they add to 1.
type shares struct{ car, group, side, residual float64 }

// leak describes a pocket that may have a leak: with this chance its factor has mean
// shift instead of 0.
type leak struct{ chance, shift float64 }

// byCondition holds a chance, a weight or a likelihood for each condition.
type byCondition [car.Conditions]float64

// classOf returns the class of the items of a part.
func (g *figures) classOf(p *car.Part) class {
	for _, id := range g.localParts {
		if id == p.ID {
			return local
		}
	}
	if !p.SeenWhenStripped {
		return closed
	}
	return open
}

// patchedFirst reports whether a part is usually repaired first: an outer part or a floor
// pan.
func (g *figures) patchedFirst(p *car.Part) bool {
	for _, id := range g.floorPans {
		if id == p.ID {
			return true
		}
	}
	return p.Face == car.Outer
}

// repairPrior is the chance of each state for a car of the given age in years, linear
// between 15 and 40 years.
func (g *figures) repairPrior(age float64) (p [RepairStates]float64) {
	t := math.Max(0, math.Min(1, (age-15)/25))
	for r := range p {
		p[r] = g.young[r] + float64(t*(g.old[r]-g.young[r]))
	}
	return p
}

// spreadBy returns a copy with the spread of the depths multiplied by factor.
func (g *figures) spreadBy(factor float64) *figures {
	own := *g
	own.sigma = float64(g.sigma * factor)
	return &own
}

// independent returns a copy in which items share no variance, so that they have only the
// history in common.
func (g *figures) independent() *figures {
	own := *g
	for c := range own.share {
		own.share[c] = shares{residual: 1}
	}
	return &own
}
