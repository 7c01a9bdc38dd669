package message

import (
	"strconv"

	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/estimate"
	"underpaint/engine/strict"
	"underpaint/engine/work"
)

// What a stage is worth is worked out on imagined outcomes: a car is drawn from
// all that is known, the stage is imagined on it, and the range that would
// follow is worked out. These are how many outcomes, and how many imagined cars
// each range has (assumption; they leave the mean width good to about a tenth).
const (
	outcomes   = 12
	carsOfEach = estimate.Block
	lookCars   = 4096
)

// worthJob is a car whose looks and stages are being valued.
type worthJob struct {
	key      string
	stages   *stageJob
	now      *stageRun
	looks    []valuedLook
	ahead    []string  // stages still to come
	width    []float64 // by stage ahead: sum of the widths so far
	done, of int
	table    *work.Table
	next     *outcome // the one being worked out, nil between two
}

// worthReply says what each stage to come is worth, and which looks would narrow
// the range most. Asked again it goes on with a piece of an imagined outcome.
func (s *Session) worthReply(id int64, c *carfile.Car, whom string) ([]byte, error) {
	j, err := s.openWorth(c, whom)
	if err != nil {
		return nil, err
	}
	if j.looks == nil {
		j.looks = s.valueLooks(j, whom)
	} else if j.done < j.of {
		if err := j.step(); err != nil {
			return nil, err
		}
	}
	w := strict.NewWriter()
	w.Object(func() {
		head(w, id, "worth")
		state := Refining
		if j.done == j.of {
			state = Settled
		}
		w.Member("state", string(state))
		w.Key("done")
		w.Whole(int64(j.done))
		w.Key("of")
		w.Whole(int64(j.of))
		w.Member("progress_line", "Trying what each stage is worth: "+strconv.Itoa(j.done)+" of "+strconv.Itoa(j.of))
		w.Member("now_line", "Now "+s.moneyWidth(shownWidth(j.now.run))+" wide.")
		n := len(j.ahead)
		if j.done < j.of {
			n = 0
		}
		w.Objects("stages", n, func(k int) { s.writeStageWorth(w, j, k) })
		w.Objects("looks", len(j.looks), func(k int) { s.writeLook(w, j, j.looks[k]) })
		w.Member("looks_note", "A look mostly tells about the car as a whole. Several looks together are worth less than their sum.")
	})
	return w.Bytes(), nil
}

func (s *Session) openWorth(c *carfile.Car, whom string) (*worthJob, error) {
	key := whom + string(c.Text())
	if s.worth != nil && s.worth.key == key {
		return s.worth, nil
	}
	stages, now, err := s.openNow(c)
	if err != nil {
		return nil, err
	}
	for now.run.Cars() < lookCars {
		now.run.Add()
	}
	j := &worthJob{key: key, stages: stages, now: now, of: outcomes}
	for _, id := range carfile.StageIDs {
		if !c.Begun(id) {
			j.ahead = append(j.ahead, id)
		}
	}
	if len(j.ahead) == 0 {
		j.of = 0
	}
	j.width = make([]float64, len(j.ahead))
	j.table, err = stages.plain.With(c.Decided(stages.body, c.LastStage(), false))
	s.worth = j
	return j, err
}

// shownWidth is the width between the ends as they are shown, rounded outward, so
// that a width never contradicts the ends beside it.
func shownWidth(run *estimate.Run) float64 {
	x := run.Price(0)
	e := roundEnds(x.Low, x.Half, x.SetAside, x.High)
	return float64(e.high - e.low)
}

func (s *Session) writeStageWorth(w *strict.Writer, j *worthJob, k int) {
	width := j.width[k] / float64(j.of)
	id := j.ahead[k]
	w.Member("id", id)
	w.Member("name", s.stageName(id))
	now := shownWidth(j.now.run)
	words := widthWords(width/now, "now")
	w.Member("width_text", s.moneyWidth(width))
	w.Member("line", s.stageInWords(id)+" the range is, on average for a car like this, "+words+": "+s.moneyWidth(width)+" instead of "+s.moneyWidth(now)+". For one car it may come out wider.")
}

// holedFrom is the mildest condition that counts as rusted through.
const holedFrom = car.Conditions - 2
