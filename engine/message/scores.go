package message

import (
	"strconv"

	"underpaint/engine/money"
	"underpaint/engine/rates"
	"underpaint/engine/record"
	"underpaint/engine/scores"
	"underpaint/engine/strict"
)

// scoreText words what the past jobs say, in the shop's own words and money.
type scoreText struct {
	s       *Session
	c       money.Currency
	jobs    *record.Jobs
	scores  []record.Score
	sum     record.Summary
	taught  record.Teaching
	again   record.Improved
	today   string
	inUse   *rates.Own
	ownText *rates.Own // what would be used from now on
}

// Scores is what the past jobs say, as the page and the prompt get it: all jobs
// scored, and all worked out again.
func Scores(id int64, j *record.Jobs, all []record.Score, again []record.Again, r *rates.Rates, today string) []byte {
	return scoresReply(id, &scoring{of: j, scores: all, again: again}, r, today)
}

func scoresReply(id int64, s *scoring, r *rates.Rates, today string) []byte {
	sum, err := s.of.Sum(s.scores)
	if err != nil {
		return refused(id, "jobs", err)
	}
	taught, err := record.Learn(s.scores, record.EveryJob)
	if err != nil {
		return refused(id, "jobs", err)
	}
	session, err := newSession(r)
	if err != nil {
		return refused(id, "rates", err)
	}
	t := &scoreText{s: session, c: s.of.Currency, jobs: s.of, scores: s.scores, sum: sum, taught: taught,
		again: record.Improve(s.again), today: today, inUse: r.Own, ownText: taught.Own(today, s.of.CheckCode())}
	w := strict.NewWriter()
	w.Object(func() {
		head(w, id, "scores")
		w.Member("state", string(Settled))
		w.Member("jobs_code", s.of.CheckCode())
		w.Key("invented")
		w.Bool(s.of.Invented)
		w.Key("jobs")
		w.Whole(int64(len(s.of.Jobs)))
		w.Key("scored")
		w.Whole(int64(sum.Scored))
		w.Texts("headline", t.headline())
		w.Member("after_survey", t.afterSurvey())
		t.writeBoxes(w)
		t.writeTable(w)
		t.writeNotScored(w)
		w.Texts("bias", t.bias())
		t.writeCauses(w)
		t.writeStatistics(w)
		t.writeLearning(w)
		t.writePast(w)
	})
	return w.Bytes()
}

func jobsText(n int) string {
	if n == 1 {
		return "1 job"
	}
	return strconv.Itoa(n) + " jobs"
}

// headline says in words how the ranges came out; with too few jobs, that.
func (t *scoreText) headline() []string {
	f, j := t.sum.First, t.sum.Judged
	if j.Verdict == scores.TooFew {
		return []string{jobsText(f.Jobs) + " scored. Too few to say anything: it takes " + strconv.Itoa(scores.LeastJobs) + "."}
	}
	out := []string{jobsText(f.Jobs) + ". " + strconv.Itoa(f.Above) + " came out above the first range, " + strconv.Itoa(f.Below) + " below, " +
		strconv.Itoa(f.Inside) + " inside; we said about " + strconv.Itoa(int(j.ExpectedOut+0.5)) + " would be outside."}
	switch {
	case j.Verdict == scores.TooNarrow:
		out = append(out, "That is more outside than chance explains: the ranges are too narrow, or stand in the wrong place.")
	case j.Verdict == scores.TooWide:
		out = append(out, "That is fewer outside than chance explains: the ranges are wider than they need be.")
	case j.ManyAbove:
		out = append(out, "More came out above than chance explains: the ranges stand too low.")
	case j.ManyBelow:
		out = append(out, "More came out below than chance explains: the ranges stand too high.")
	default:
		out = append(out, "That agrees with what the ranges say, as far as so few jobs can tell.")
	}
	return out
}

func (t *scoreText) afterSurvey() string {
	f := t.sum.AfterSurvey
	if f.Jobs == 0 {
		return ""
	}
	line := "After the survey: of " + jobsText(f.Jobs) + " " + strconv.Itoa(f.Above) + " above, " + strconv.Itoa(f.Below) + " below, " + strconv.Itoa(f.Inside) + " inside."
	if j := t.sum.JudgedAfter; j.Verdict != scores.TooFew && (j.Verdict == scores.TooNarrow || j.ManyAbove || j.ManyBelow) {
		line += " That is more on one side, or outside, than chance explains."
	}
	return line
}

// writeBoxes writes the strip of twelve boxes, a mark for every finished job.
func (t *scoreText) writeBoxes(w *strict.Writer) {
	w.Objects("boxes", len(t.sum.Boxes), func(k int) {
		name := "slot " + strconv.Itoa(k) + " of 10 inside the range"
		switch k {
		case 0:
			name = "below its own range"
		case scores.Boxes - 1:
			name = "above its own range"
		}
		w.Member("name", name)
		w.Key("jobs")
		w.Whole(int64(t.sum.Boxes[k]))
	})
	w.Member("boxes_text", "One mark for each finished job: below its own first range, in one of ten equally likely slots inside it, or above. Of 100 jobs about 10, ten times 8, and 10 should fall so.")
}

func (t *scoreText) ends(f scores.Finished) string {
	return endsText(t.c, f.Low, f.High)
}

func endsText(c money.Currency, low, high float64) string {
	e := roundEnds(low, 0, 0, high)
	return c.TextWhole(e.low) + " to " + c.TextWhole(e.high)
}

func (t *scoreText) writeTable(w *strict.Writer) {
	w.Objects("table", len(t.scores), func(n int) {
		s, job := &t.scores[n], &t.jobs.Jobs[n]
		w.Member("name", s.Name)
		w.Member("finished_text", date(job.Finished))
		first, survey, where := "", "", ""
		if s.WhyNot == "" {
			first = t.ends(s.First)
			switch s.First.Box() {
			case 0:
				where = "below"
			case scores.Boxes - 1:
				where = "above"
			default:
				where = "inside"
			}
		}
		if s.Surveyed {
			survey = t.ends(s.Survey)
		}
		w.Member("first_text", first)
		w.Member("survey_text", survey)
		w.Member("came_to_text", t.c.TextWhole(job.CameTo))
		agreed := ""
		if m := job.More[record.ChangesAgreed]; m > 0 {
			agreed = "of it " + t.c.TextWhole(m) + " for changes agreed on top, which do not count against the range"
		}
		w.Member("agreed_line", agreed)
		w.Member("where", where)
		w.Key("said")
		w.Bool(s.Said)
	})
}

func (t *scoreText) writeNotScored(w *strict.Writer) {
	var not []int
	for n := range t.scores {
		if t.scores[n].WhyNot != "" {
			not = append(not, n)
		}
	}
	w.Objects("not_scored", len(not), func(k int) {
		w.Member("name", t.scores[not[k]].Name)
		w.Member("why", t.scores[not[k]].WhyNot)
	})
}

var causeNames = [record.Causes]string{"Rust found", "More hours than thought", "Dearer parts", "Changes agreed on top"}

// writeCauses says why jobs came to more: the estimator's page of the record.
func (t *scoreText) writeCauses(w *strict.Writer) {
	w.Objects("causes", len(t.sum.Causes), func(k int) {
		c := t.sum.Causes[k]
		w.Member("name", causeNames[k])
		w.Member("jobs_text", jobsText(c.Jobs))
		w.Member("amount_text", t.c.TextWhole(c.Amount))
	})
	w.Member("causes_note", "As entered by the shop, job by job. Changes agreed on top are taken off before a job is scored; the others are what a range is there to allow for.")
}

// writePast writes what may stand on the customer's page, ready for the rates
// file; null with too few jobs.
func (t *scoreText) writePast(w *strict.Writer) {
	w.Key("record")
	p := t.sum.Past(t.jobs.CheckCode())
	if p == nil {
		w.Null()
		return
	}
	w.Object(func() { p.Write(w) })
}
