package message

import (
	"math"
	"slices"
	"strconv"

	"underpaint/engine/carfile"
	"underpaint/engine/estimate"
	"underpaint/engine/strict"
)

// beforeAfter is the reply with the range of each stage on one axis, and in
// words what moved it.
func (s *Session) beforeAfter(id int64, c *carfile.Car, effort string, least int64) ([]byte, error) {
	j, err := s.openStages(c)
	if err != nil {
		return nil, err
	}
	state, err := j.step()
	if err != nil {
		return nil, err
	}
	if effort == "rough" && state == Refining {
		state = Rough
	}
	rows, a := s.stageRows(j, least)
	w := strict.NewWriter()
	w.Object(func() {
		head(w, id, "before_after")
		w.Member("state", string(state))
		w.Key("axis")
		w.Object(func() { a.write(w) })
		w.Key("rows")
		w.Array(func() {
			for k := range rows {
				w.Object(func() { s.writeStageRow(w, rows, k, a) })
			}
		})
		var head []string
		var worse, better []string
		var items []movedItem
		if state == Settled {
			head = s.stageHeadline(rows)
			worse, better = s.movedPockets(j)
			if items, err = s.movedItems(j); err != nil {
				return
			}
		}
		w.Texts("headline", head)
		w.Texts("worse", worse)
		w.Texts("better", better)
		w.Member("unseen_line", s.unseen(j))
		w.Objects("items", len(items), func(n int) { items[n].write(w) })
		w.Member("not_a_limit", "The ends are no limits: 1 such car in 10 comes out below each range and 1 above.")
	})
	return w.Bytes(), err
}

// stageRow is the range after one stage.
type stageRow struct {
	id, name, date string
	x              estimate.PriceRange
	e              ends
	done           bool
}

func (s *Session) stageRows(j *stageJob, least int64) (rows []stageRow, a axis) {
	dearest := 0.0
	for _, id := range append([]string{carfile.Told}, carfile.StageIDs...) {
		rows = append(rows, s.stageRow(j, id))
	}
	if len(j.car.Ways) > 0 {
		rows = append(rows, s.stageRow(j, chosen))
	}
	for _, r := range rows {
		dearest = math.Max(dearest, r.x.Dots[19])
	}
	return rows, newAxis(s.Rates.Currency, math.Max(dearest, 1), least)
}

func (s *Session) stageRow(j *stageJob, id string) stageRow {
	r := stageRow{id: id, name: s.stageName(id)}
	for _, one := range j.car.Stages {
		if one.Stage == id {
			r.date = date(one.On)
		}
	}
	k := slices.IndexFunc(j.runs, func(o *stageRun) bool { return o.id == id })
	if k < 0 || j.runs[k].run == nil || j.runs[k].run.Cars() == 0 {
		return r
	}
	r.x, r.done = j.runs[k].run.Price(0), true
	r.e = roundEnds(r.x.Low, r.x.Half, r.x.SetAside, r.x.High)
	return r
}

func (r *stageRow) width() float64 { return r.x.High - r.x.Low }

func (s *Session) writeStageRow(w *strict.Writer, rows []stageRow, k int, a axis) {
	r, c := &rows[k], s.Rates.Currency
	w.Member("id", r.id)
	w.Member("name", r.name)
	w.Member("date_text", r.date)
	w.Key("done")
	w.Bool(r.done)
	if !r.done {
		return
	}
	w.Member("low_text", c.TextWhole(r.e.low))
	w.Member("half_text", c.TextWhole(r.e.half))
	w.Member("high_text", c.TextWhole(r.e.high))
	w.Member("width_text", c.TextWhole(r.e.high-r.e.low)+" wide")
	w.Key("dots")
	writeDots(w, packDots(r.x.Dots, a))
	w.Member("sentence", "8 in 10 such cars: "+c.TextWhole(r.e.low)+" to "+c.TextWhole(r.e.high)+".")
	wider := ""
	if k > 0 && rows[k-1].done && r.width() > 1.03*rows[k-1].width() {
		wider = "Wider than the row above: " + whyWider(&rows[k-1], r)
	}
	w.Member("wider_line", wider)
}

// whyWider says what made a range grow although more is known.
func whyWider(before, now *stageRow) string {
	switch {
	case now.x.Half > 1.02*before.x.Half:
		return "worse was found than was to be expected, and dearer work varies more."
	case now.x.Half < 0.98*before.x.Half:
		return "what was seen is better than what was told, and the two do not agree yet."
	}
	return "what was seen does not agree with what was told, so more is possible than before."
}

// stageHeadline says where the last range stands against the first.
func (s *Session) stageHeadline(rows []stageRow) (out []string) {
	first, last := &rows[0], &rows[0]
	for k := range rows {
		if rows[k].done {
			last = &rows[k]
		}
	}
	c := s.Rates.Currency
	span := c.TextWhole(last.e.low) + " to " + c.TextWhole(last.e.high)
	if last == first {
		return []string{"From what was told the range is " + span + " (8 in 10)."}
	}
	out = append(out, s.stageInWords(last.id)+" the range is "+span+" (8 in 10).",
		"It is "+widthWords(last.width()/first.width(), "at first")+".")
	switch {
	case last.x.Low >= first.x.Low && last.x.High <= first.x.High:
		out = append(out, "This range lies inside the first.")
	case last.x.Half > first.x.High || last.x.Half < first.x.Low:
		out = append(out, "Its middle lies outside the first range: this is one of the 2 in 10 cars that do, as was said there would be.")
	default:
		out = append(out, "It reaches past one end of the first range, which was never a limit.")
	}
	return out
}

func (s *Session) stageInWords(id string) string {
	switch id {
	case carfile.WalkRound:
		return s.say("After the walk-around", "After the walk-round")
	case carfile.Survey:
		return "After the survey"
	case carfile.OpeningUp:
		return "After opening up"
	}
	return "With the ways chosen"
}

// widthWords says a ratio of widths: "about half as wide as at first".
func widthWords(ratio float64, other string) string {
	for _, one := range []struct {
		below float64
		text  string
	}{{0.15, "about a tenth as wide"}, {0.29, "about a quarter as wide"}, {0.42, "about a third as wide"}, {0.58, "about half as wide"},
		{0.71, "about two thirds as wide"}, {0.87, "about four fifths as wide"}, {0.96, "nearly as wide"}, {1.05, "about as wide"}} {
		if ratio < one.below {
			return one.text + " as " + other
		}
	}
	if ratio < 1.3 {
		return "somewhat wider than " + other
	}
	return "much wider than " + other
}

func (s *Session) unseen(j *stageJob) string {
	n := countUp(j.car, j.body, j.plain)
	if !j.car.Begun(carfile.Survey) {
		return "Nothing of the bare metal has been seen yet."
	}
	line := "Every part is recorded."
	if left := len(j.body.Items) - n.done; left > 0 {
		line = "Not recorded: " + strconv.Itoa(left) + " of " + strconv.Itoa(len(j.body.Items)) + " parts, which stay not known."
	}
	if n.shut > 0 {
		line += " Not opened: " + strconv.Itoa(n.shut) + " closed boxes."
	}
	return line
}
