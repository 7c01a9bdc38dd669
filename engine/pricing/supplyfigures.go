package pricing

import (
	_ "embed"
	"slices"
	"sync"

	"underpaint/engine/car"
	"underpaint/engine/strict"
)

//go:embed data/parts.json
var supplyFile []byte

// The states of a car before the strip, in the order in which they are drawn.
const (
	allThere = iota
	somePartsOff
	inPieces
	states
)

// AllThereAnswers are the customer's answers to whether the car is all there: the states,
// and not sure.
var AllThereAnswers = []string{"all_there", "some_parts_off", "in_pieces", "not_sure"}

// sources is the number of kinds of place where the new-made panels of a body come from.
const sources = 3

var sourceIDs = [sources]string{"good", "mixed", "poor"}

// mixedSource is the row for a shop that says its panels are mixed.
const mixedSource = 1

// supplyFigures are the figures about how parts come, from data/parts.json.
type supplyFigures struct {
	notSure    [states]float64
	absent     [2][states]float64 // chance that a part is missing: welded in, bolted on
	boltedOn   []string
	weldedIn   float64 // metalwork × this where a welded part is missing
	toCopy     float64 // metalwork × this where it is made by hand with nothing to copy
	search     map[string]car.Hours
	assembly   car.Hours // hours of assembly × this if the car is in pieces
	from       [sources]float64
	fits       [sources]float64
	needsWork  [sources]float64
	workTimes  tradeTimes
	wrongFit   car.Hours
	wrongWeeks car.Hours
	used       usedFigures
}

type usedFigures struct {
	share, noGood, patching           float64
	alwaysPrep, patchMetal, patchPrep car.Hours
	noGoodWeeks                       car.Hours
}

// tradeTimes multiply the hours of a way by trade.
type tradeTimes struct{ metal, fit float64 }

func (x tradeTimes) of(trade car.Trade) float64 {
	switch trade {
	case car.Metal:
		return x.metal
	case car.Fit:
		return x.fit
	}
	return 1
}

var loadSupply = sync.OnceValues(readSupply)

func readSupply() (*supplyFigures, error) {
	f, err := strict.Parse(supplyFile)
	if err != nil {
		return nil, err
	}
	f.Keys("format", "missing", "missing_work", "search", "in_pieces", "new_made", "used")
	f.Get("format").OneOf("underpaint parts 1")
	g := &supplyFigures{search: map[string]car.Hours{}}
	m := f.Get("missing")
	for k, id := range AllThereAnswers[:states] {
		g.notSure[k] = m.Get("not_sure").Get(id).Number(0, 1)
		g.absent[0][k] = m.Get("chance").Get("welded_in").Get(id).Number(0, 1)
		g.absent[1][k] = m.Get("chance").Get("bolted_on").Get(id).Number(0, 1)
	}
	g.boltedOn = texts(m.Get("bolted_on_parts"))
	g.weldedIn = f.Get("missing_work").Get("metal_times_welded_in").Number(0.1, 1)
	g.toCopy = f.Get("missing_work").Get("by_hand_times_with_nothing_to_copy").Number(1, 5)
	hours := f.Get("search").Get("hours")
	for _, had := range hours.Names() {
		g.search[had] = triple(hours.Get(had))
	}
	g.assembly = triple(f.Get("in_pieces").Get("assembly_times"))
	g.readNewMade(f.Get("new_made"))
	g.readUsed(f.Get("used"))
	return g, f.Err()
}

func (g *supplyFigures) readNewMade(f strict.Field) {
	for k, id := range sourceIDs {
		g.from[k] = f.Get("from").Get(id).Number(0, 1)
		g.fits[k] = f.Get("fits").Get(id).Number(0, 1)
		g.needsWork[k] = f.Get("needs_work").Get(id).Number(0, 1)
	}
	times := f.Get("needs_work_times")
	g.workTimes = tradeTimes{times.Get("metal").Number(1, 5), times.Get("fit").Number(1, 5)}
	g.wrongFit, g.wrongWeeks = triple(f.Get("wrong_fit")), triple(f.Get("wrong_weeks"))
}

func (g *supplyFigures) readUsed(f strict.Field) {
	g.used = usedFigures{share: f.Get("share").Number(0, 1), noGood: f.Get("no_good").Number(0, 1), patching: f.Get("needs_patching").Number(0, 1),
		alwaysPrep: triple(f.Get("always_prep")), patchMetal: triple(f.Get("patching_metal")), patchPrep: triple(f.Get("patching_prep")), noGoodWeeks: triple(f.Get("no_good_weeks"))}
}

// pickState inverts the distribution function of the states at u.
func pickState(chances []float64, u float64) int {
	for k, p := range chances[:len(chances)-1] {
		if u < p {
			return k
		}
		u -= p
	}
	return len(chances) - 1
}

func (g *supplyFigures) isBoltedOn(p *car.Part) bool { return slices.Contains(g.boltedOn, p.ID) }
