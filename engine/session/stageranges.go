package session

import (
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/damage"
	"underpaint/engine/estimate"
	"underpaint/engine/exposure"
	"underpaint/engine/pricing"
)

// Chosen is the id of the row after the last stage, which counts the chosen ways.
const Chosen = "chosen"

// stageAccuracy is the accuracy of the rows of the stages. It is coarser than that of the
// range, because there are several rows (assumption).
var stageAccuracy = estimate.Accuracy{ShareOfWidth: 0.012, Budget: 1 << 14}

// stageRanges holds a car and its range at each stage that it has reached.
type stageRanges struct {
	shop      *Shop
	models    *models
	key       string
	car       *carfile.Car
	body      *car.Body
	histories []exposure.History
	plain     *pricing.Table // nothing decided
	runs      []*stageRun
}

// stageRun holds what was known by the end of one stage. Its model, run and chances are
// worked out when needed.
type stageRun struct {
	id string
	conditionedModel
	run     *estimate.Run
	chances []damage.Chances // nil until all are worked out
	pieces  *damage.Pieces   // those worked out so far
}

// newStageRanges lays out the stages of a car. It takes over the stages that have not
// changed from before, which may be nil, and works nothing else out.
func newStageRanges(s *Shop, m *models, c *carfile.Car, before *stageRanges) (*stageRanges, error) {
	b, t, err := s.faultless(c)
	if err != nil {
		return nil, err
	}
	histories, err := c.Histories()
	if err != nil {
		return nil, err
	}
	j := &stageRanges{shop: s, models: m, key: string(c.Text()), car: c, body: b, histories: histories, plain: t}
	for _, id := range append([]string{carfile.Told}, carfile.StageIDs...) {
		if id == carfile.Told || c.Begun(id) {
			j.runs = append(j.runs, &stageRun{id: id})
		}
	}
	if len(c.Ways) > 0 {
		j.runs = append(j.runs, &stageRun{id: Chosen})
	}
	j.reuse(before)
	m.ofStages = nil
	for _, r := range j.runs {
		if r.model != nil {
			m.ofStages = append(m.ofStages, r.conditionedModel)
		}
	}
	return j, nil
}

// reuse takes over unchanged stages, so that an entry of the survey does not mean working
// out the walk-around again.
func (j *stageRanges) reuse(old *stageRanges) {
	if old == nil {
		return
	}
	for _, r := range j.runs {
		k := slices.IndexFunc(old.runs, func(o *stageRun) bool { return o.id == r.id })
		if k >= 0 && cutTo(j.car, r.id) == cutTo(old.car, r.id) {
			*r = *old.runs[k]
		}
	}
}

// cutTo returns the text of the car without anything that came after a stage.
func cutTo(c *carfile.Car, stage string) string {
	if stage == Chosen {
		return string(c.Text())
	}
	return string(c.Cut(stage).Text())
}

// reached returns the stage up to which evidence counts for a row.
func (j *stageRanges) reached(id string) string {
	if id == Chosen {
		return j.car.LastStage()
	}
	return id
}

// need conditions the model of a stage unless that is done.
func (j *stageRanges) need(r *stageRun) error {
	if r.model != nil {
		return nil
	}
	k, err := j.models.condition(j.car, j.body, j.histories, j.reached(r.id), j.shop.Rates)
	if err != nil {
		return err
	}
	t, err := j.plain.With(j.car.Decided(j.body, j.reached(r.id), r.id == Chosen))
	if err != nil {
		return err
	}
	j.models.ofStages = append(j.models.ofStages, k)
	t = doubted(j.shop.Rates, t, j.car, j.body, j.reached(r.id), r.id == Chosen)
	r.conditionedModel, r.run = k, estimate.NewRun(k.model, []*pricing.Table{t}, Seed)
	r.run.Remember(true)
	return nil
}

// chance returns the exact chances of every item at a stage.
func (j *stageRanges) chance(r *stageRun) ([]damage.Chances, error) {
	if err := j.need(r); err != nil {
		return nil, err
	}
	for r.chances == nil {
		r.nextPocket()
	}
	return r.chances, nil
}

// nextPocket works out the chances of the items in one more pocket.
func (r *stageRun) nextPocket() {
	if r.pieces == nil {
		r.pieces = r.model.ChancesInPieces()
	}
	if !r.pieces.Next() {
		r.chances, r.pieces = r.pieces.Chances, nil
	}
}

// step does a slice of work on the first stage that is not settled, and after that on the
// odds to compare. Slices are small because other requests wait for them.
func (j *stageRanges) step() (State, error) {
	for _, r := range j.runs {
		if r.run != nil && (r.run.Settled(stageAccuracy) || r.run.Cars() >= stageAccuracy.Budget) {
			continue
		}
		if r.model == nil {
			return Refining, j.need(r)
		}
		r.run.Add()
		return Refining, nil
	}
	before, now := j.lastTwo()
	for _, r := range []*stageRun{before, now} {
		if r.chances == nil && before != now {
			r.nextPocket()
			return Refining, nil
		}
	}
	return Settled, nil
}

// lastTwo returns the last stage of the car and the one before it. They are the same
// where there is only one.
func (j *stageRanges) lastTwo() (before, now *stageRun) {
	n := len(j.runs) - 1
	if j.runs[n].id == Chosen {
		n--
	}
	return j.runs[max(0, n-1)], j.runs[n]
}

// priced returns the price table of the last stage, without chosen ways.
func (j *stageRanges) priced() *pricing.Table {
	t, err := j.plain.With(j.car.Decided(j.body, j.car.LastStage(), false))
	if err != nil {
		panic("engine: internal error: what was decided could be priced a moment ago")
	}
	return doubted(j.shop.Rates, t, j.car, j.body, j.car.LastStage(), false)
}
