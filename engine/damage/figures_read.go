package damage

import (
	_ "embed"
	"sync"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/strict"
)

//go:embed data/damage.json
var figuresFile []byte

// loadFigures reads the embedded figures once. Read only.
var loadFigures = sync.OnceValues(readFigures)

func readFigures() (*figures, error) {
	f, err := strict.Parse(figuresFile)
	if err != nil {
		return nil, err
	}
	f.Keys("format", "loss_below", "shares", "leak", "own_cause", "earlier_repairs", "answer_about_earlier_work", "covered", "failed_lead_joint")
	g := &figures{answer: map[string][RepairStates]float64{}, failedLead: map[string]float64{}, coverAnswer: map[string][2]float64{}}
	loss := f.Get("loss_below")
	for k, c := range loss.Get("steps").Numbers(car.Conditions-1, 0.01, 10) {
		g.logStep[k] = chance.Log(c)
	}
	g.logStepHidden = chance.Log(loss.Get("first_step_on_hidden").Number(0.01, 1))
	g.readShares(f.Get("shares"))
	g.leak = leak{f.Get("leak").Get("chance").Number(0, 1), f.Get("leak").Get("shift").Number(0, 5)}
	g.cause.read(f.Get("own_cause"))
	g.readRepairs(f.Get("earlier_repairs"))
	answers := f.Get("answer_about_earlier_work")
	for _, id := range Answers {
		g.answer[id] = byState(answers.Get(id))
	}
	covered := f.Get("covered")
	g.covered = byState(covered.Get("chance"))
	for _, id := range CoverAnswers {
		var two [2]float64
		copy(two[:], covered.Get("answer").Get(id).Numbers(2, 0, 1))
		g.coverAnswer[id] = two
	}
	lead := f.Get("failed_lead_joint")
	for _, id := range []string{"dry", "mild", "damp", "salt", "sea"} {
		g.failedLead[id] = lead.Get(id).Number(0, 1)
	}
	return g, f.Err()
}

func (g *figures) readShares(f strict.Field) {
	share := func(f strict.Field, name string) float64 { return f.Get(name).Number(0, 1) }
	g.sigma = f.Get("sigma").Number(0.1, 3)
	g.share[open] = shares{share(f, "car"), share(f, "group"), share(f, "side"), share(f, "own")}
	box := f.Get("closed_box")
	g.share[closed] = shares{g.share[open].car, g.share[open].group, share(box, "side"), share(box, "own")}
	own := f.Get("local")
	g.share[local] = shares{share(own, "car"), share(own, "group"), share(own, "side"), share(own, "own")}
	g.localParts = texts(own.Get("parts"))
}

func (g *figures) readRepairs(f strict.Field) {
	g.young, g.old = byState(f.Get("car_at_15_years")), byState(f.Get("car_over_40_years"))
	copy(g.holed[:], f.Get("repaired_where_holed").Numbers(thorough, 0, 1))
	g.elsewhere = f.Get("elsewhere_times").Number(0, 1)
	g.floorPans = texts(f.Get("floor_pans"))
	kinds := f.Get("kinds").Items()
	for r := 0; r < thorough && r < len(kinds); r++ {
		for k := PatchOverRust; k < Findings; k++ {
			g.kinds[r][k] = kinds[r].Get(FindingIDs[k]).Number(0, 1)
		}
	}
	then := f.Get("condition_then")
	for k := PatchOverRust; k < Findings; k++ {
		copy(g.then[k][:], then.Get(FindingIDs[k]).Numbers(car.Conditions, 0, 1))
	}
	two := func(f strict.Field) [2]float64 {
		return [2]float64{f.Get("outer_and_floor_pans").Number(0, 1), f.Get("elsewhere").Number(0, 1)}
	}
	done := f.Get("thoroughly")
	g.notReached, g.foundReplaced = two(done.Get("not_reached")), two(done.Get("found_replaced"))
	g.knock, g.dent = byState(f.Get("replaced_after_a_knock")), byState(f.Get("filler_over_dent"))
	g.dentLow = f.Get("filler_over_dent_low_down_times").Number(0, 1)
}

func byState(f strict.Field) (out [RepairStates]float64) {
	copy(out[:], f.Numbers(RepairStates, 0, 1))
	return out
}

func texts(f strict.Field) (out []string) {
	for _, p := range f.Items() {
		out = append(out, p.Text(60))
	}
	return out
}
