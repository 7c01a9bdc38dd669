package message

import (
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/damage"
	"underpaint/engine/estimate"
	"underpaint/engine/exposure"
	"underpaint/engine/work"
)

// chosen is the row after the last stage once ways are chosen.
const chosen = "chosen"

// stageAccuracy is that of the rows of the stages: coarser than the range, for
// there are several (assumption).
var stageAccuracy = estimate.Accuracy{ShareOfWidth: 0.012, Budget: 1 << 14}

// stageJob is a car with the range at each stage that it has reached.
type stageJob struct {
	of     *Session
	key    string
	car    *carfile.Car
	body   *car.Body
	levels []exposure.Level
	plain  *work.Table // nothing decided
	runs   []*stageRun
}

// stageRun is what was known by the end of one stage, worked out when needed.
type stageRun struct {
	id      string
	belief  // its model is nil until it is needed
	run     *estimate.Run
	chances []damage.Chances // nil = not all worked out
	pieces  *damage.Pieces   // those that are
}

// openStages lays out the stages of a car; nothing is worked out yet.
func (s *Session) openStages(c *carfile.Car) (*stageJob, error) {
	key := string(c.Text())
	if s.stages != nil && s.stages.key == key {
		return s.stages, nil
	}
	b, t, err := s.oneBody(c)
	if err != nil {
		return nil, err
	}
	if wrong := c.Faults(b, t); len(wrong) > 0 {
		return nil, wrong[0].Err
	}
	levels, err := c.Levels()
	if err != nil {
		return nil, err
	}
	j := &stageJob{of: s, key: key, car: c, body: b, levels: levels, plain: t}
	for _, id := range append([]string{carfile.Told}, carfile.StageIDs...) {
		if id == carfile.Told || c.Begun(id) {
			j.runs = append(j.runs, &stageRun{id: id})
		}
	}
	if len(c.Ways) > 0 {
		j.runs = append(j.runs, &stageRun{id: chosen})
	}
	j.reuse(s.stages)
	s.stages = j
	return j, nil
}

// openNow is a car as it stands, with the stage that it has reached worked out.
func (s *Session) openNow(c *carfile.Car) (*stageJob, *stageRun, error) {
	j, err := s.openStages(c)
	if err != nil {
		return nil, nil, err
	}
	_, now := j.lastTwo()
	return j, now, j.need(now)
}

// reuse takes over the stages of the car before that nothing has changed for, so
// that an entry of the survey does not work the walk-round out again.
func (j *stageJob) reuse(old *stageJob) {
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

// cutTo is the text of the car with nothing in it that came after a stage.
func cutTo(c *carfile.Car, stage string) string {
	if stage == chosen {
		return string(c.Text())
	}
	return string(c.Cut(stage).Text())
}

// reached is the stage whose evidence counts for a row.
func (j *stageJob) reached(id string) string {
	if id == chosen {
		return j.car.LastStage()
	}
	return id
}

// need works out the model of a stage.
func (j *stageJob) need(r *stageRun) error {
	if r.model != nil {
		return nil
	}
	k, err := j.of.belief(j.car, j.body, j.levels, j.reached(r.id))
	if err != nil {
		return err
	}
	t, err := j.plain.With(j.car.Decided(j.body, j.reached(r.id), r.id == chosen))
	if err != nil {
		return err
	}
	r.belief, r.run = k, estimate.NewRun(k.model, []*work.Table{t}, Seed)
	r.run.Remember(true)
	return nil
}

// chance are the exact chances of every item at a stage.
func (j *stageJob) chance(r *stageRun) ([]damage.Chances, error) {
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

// step goes on with the first stage that is not settled, and then with the odds that
// are compared; a piece at a time, since what is asked meanwhile waits for it.
func (j *stageJob) step() (State, error) {
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

// before is the stage before the last one that something was recorded at: what
// was believed before the present stage.
func (j *stageJob) lastTwo() (before, now *stageRun) {
	n := len(j.runs) - 1
	if j.runs[n].id == chosen {
		n--
	}
	return j.runs[max(0, n-1)], j.runs[n]
}
