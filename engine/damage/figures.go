package damage

import (
	_ "embed"
	"math"
	"sync"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/strict"
)

//go:embed data/damage.json
var figuresFile []byte

// Finding is what an earlier repair left behind, seen apart from condition.
type Finding int

// The findings that the network carries.
const (
	NoFinding Finding = iota
	PatchOverRust
	FillerOverHole
	Replaced
	Findings // how many there are
)

// FindingIDs are the ids of findings in files, by Finding.
var FindingIDs = [Findings]string{"none", "patch_over_rust", "filler_over_hole", "replaced"}

// RepairStates is the number of states of a whole car's earlier repairs.
const RepairStates = 3

// RepairStateIDs names them.
var RepairStateIDs = [RepairStates]string{"untouched", "patched", "restored"}

// Answers are the ids of the answers about earlier work.
var Answers = []string{"not_known_of", "patched_here_and_there", "stripped_and_restored", "not_sure"}

// figures are the numbers of the model; see data/damage.json for their sources.
type figures struct {
	logStep       [car.Conditions - 1]float64 // ln of the loss ratio below which each step ends
	logStepHidden float64
	sigma         float64
	car, group    float64 // shares of variance
	side, own     [2]float64
	young, old    [RepairStates]float64
	holed         [RepairStates]float64
	elsewhere     float64
	floorPans     []string
	kinds         [RepairStates][Findings]float64
	then          [Findings][car.Conditions]float64
	knock         [RepairStates]float64
	dent          [RepairStates]float64
	dentLow       float64
	answer        map[string][RepairStates]float64
	failedLead    map[string]float64
}

// open and closed index side and own.
const (
	open = iota
	closed
)

// loadFigures reads the embedded figures once; they are never changed.
var loadFigures = sync.OnceValues(readFigures)

func readFigures() (*figures, error) {
	f, err := strict.Parse(figuresFile)
	if err != nil {
		return nil, err
	}
	f.Keys("format", "loss_below", "shares", "earlier_repairs", "answer_about_earlier_work", "failed_lead_joint")
	g := &figures{answer: map[string][RepairStates]float64{}, failedLead: map[string]float64{}}
	loss := f.Get("loss_below")
	for k, c := range loss.Get("steps").Numbers(car.Conditions-1, 0.01, 10) {
		g.logStep[k] = chance.Log(c)
	}
	g.logStepHidden = chance.Log(loss.Get("first_step_on_hidden").Number(0.01, 1))
	shares := f.Get("shares")
	g.sigma = shares.Get("sigma").Number(0.1, 3)
	g.car, g.group = shares.Get("car").Number(0, 1), shares.Get("group").Number(0, 1)
	box := shares.Get("closed_box")
	g.side = [2]float64{shares.Get("side").Number(0, 1), box.Get("side").Number(0, 1)}
	g.own = [2]float64{shares.Get("own").Number(0, 1), box.Get("own").Number(0, 1)}
	g.readRepairs(f.Get("earlier_repairs"))
	answers := f.Get("answer_about_earlier_work")
	for _, id := range Answers {
		g.answer[id] = three(answers.Get(id))
	}
	lead := f.Get("failed_lead_joint")
	for _, id := range []string{"dry", "mild", "damp", "salt", "sea"} {
		g.failedLead[id] = lead.Get(id).Number(0, 1)
	}
	return g, f.Err()
}

func (g *figures) readRepairs(f strict.Field) {
	g.young, g.old = three(f.Get("car_at_15_years")), three(f.Get("car_over_40_years"))
	g.holed = three(f.Get("repaired_where_holed"))
	g.elsewhere = f.Get("elsewhere_times").Number(0, 1)
	for _, p := range f.Get("floor_pans").Items() {
		g.floorPans = append(g.floorPans, p.Text(60))
	}
	kinds := f.Get("kinds").Items()
	for r := 0; r < RepairStates && r < len(kinds); r++ {
		for k := PatchOverRust; k < Findings; k++ {
			g.kinds[r][k] = kinds[r].Get(FindingIDs[k]).Number(0, 1)
		}
	}
	then := f.Get("condition_then")
	for k := PatchOverRust; k < Findings; k++ {
		copy(g.then[k][:], then.Get(FindingIDs[k]).Numbers(car.Conditions, 0, 1))
	}
	g.knock = three(f.Get("replaced_after_a_knock"))
	g.dent = three(f.Get("filler_over_dent"))
	g.dentLow = f.Get("filler_over_dent_low_down_times").Number(0, 1)
}

func three(f strict.Field) (out [RepairStates]float64) {
	copy(out[:], f.Numbers(RepairStates, 0, 1))
	return out
}

// repairPrior is the chance of each state for a car of the given age in years:
// a straight line between 15 years and 40.
func (g *figures) repairPrior(age float64) (p [RepairStates]float64) {
	t := math.Max(0, math.Min(1, (age-15)/25))
	for r := range p {
		p[r] = g.young[r] + float64(t*(g.old[r]-g.young[r]))
	}
	return p
}

// spreadBy is a copy with another spread of the depths.
func (g *figures) spreadBy(factor float64) *figures {
	own := *g
	own.sigma = float64(g.sigma * factor)
	return &own
}

// onItsOwn is a copy in which items share no luck: all variance is each item's
// own, so that only the history is common to them.
func (g *figures) onItsOwn() *figures {
	own := *g
	own.car, own.group, own.side = 0, 0, [2]float64{}
	own.own = [2]float64{1, 1}
	return &own
}
