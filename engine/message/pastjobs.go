package message

import (
	"crypto/sha256"
	"underpaint/engine/columns"
	"underpaint/engine/money"
	"underpaint/engine/rates"
	"underpaint/engine/record"
	"underpaint/engine/strict"
)

// openJobs makes a file of past jobs the one in hand. With faults nothing of it is
// taken, and the jobs in hand stay.
func (e *Engine) openJobs(id int64, f strict.Field) []byte {
	f.Keys("id", "ask", "jobs")
	text := f.Get("jobs").Document(record.MostBytes)
	if f.Err() != nil {
		return refused(id, "request", f.Err())
	}
	j, faults := record.Decode([]byte(text))
	w := strict.NewWriter()
	w.Object(func() {
		head(w, id, "jobs_checked")
		w.Key("ok")
		w.Bool(j != nil)
		writeFaults(w, faults)
		count := int64(0)
		if j != nil {
			count = int64(len(j.Jobs))
		}
		w.Key("jobs")
		w.Whole(count)
		code := ""
		if j != nil {
			code = j.CheckCode()
			e.jobs = j
		}
		w.Member("check_code", code)
		writeSums(w, j)
	})
	return w.Bytes()
}

// writeSums writes the amounts of every job in words, which a page needs before the
// jobs are scored.
func writeSums(w *strict.Writer, j *record.Jobs) {
	if j == nil {
		j = &record.Jobs{}
	}
	w.Objects("sums", len(j.Jobs), func(n int) {
		job := &j.Jobs[n]
		said := ""
		if job.Said != nil {
			said = endsText(j.Currency, float64(job.Said.Low), float64(job.Said.High))
		}
		w.Member("came_to_text", j.Currency.TextWhole(job.CameTo))
		w.Member("said_text", said)
	})
}

// scoring is the jobs in hand as far as they are scored. Scores of jobs that did
// not change are taken over when the file is opened anew.
type scoring struct {
	of     *record.Jobs
	scores []record.Score
	again  []record.Again
	kept   map[[32]byte]record.Score
}

// keyOf names a job with everything its score hangs on.
func keyOf(j *record.Jobs, n int) [32]byte {
	return sha256.Sum256(j.Jobs[n].Text(j.Currency))
}

// score scores one more job, then, once all are, works one more out again with what
// the others taught; the last reply holds everything.
func (e *Engine) score(id int64, f strict.Field) []byte {
	f.Keys("id", "ask", "rates", "today")
	ratesText, today := f.Get("rates").Document(strict.MaxBytes), f.Get("today").Date()
	if f.Err() != nil {
		return refused(id, "request", f.Err())
	}
	r, err := rates.Decode([]byte(ratesText))
	if err != nil {
		return refused(id, "rates", err)
	}
	if e.jobs == nil {
		return refused(id, "jobs", &strict.Error{Path: "jobs", Found: "nothing", Expected: "a file of past jobs to be opened first"})
	}
	if e.scoring == nil || e.scoring.of != e.jobs {
		e.scoring = newScoring(e.jobs, e.scoring)
	}
	s := e.scoring
	if len(s.scores) < len(s.of.Jobs) {
		s.scoreNext()
		return s.progress(id)
	}
	if len(s.again) < len(s.of.Jobs) {
		a, err := s.of.Again(len(s.again), s.scores)
		if err != nil {
			return refused(id, "jobs", err)
		}
		s.again = append(s.again, a)
		return s.progress(id)
	}
	return scoresReply(id, s, r, today)
}

func newScoring(j *record.Jobs, before *scoring) *scoring {
	s := &scoring{of: j, kept: map[[32]byte]record.Score{}}
	if before != nil {
		s.kept = before.kept
	}
	return s
}

// scoreNext takes over the scores that are known and works out one that is not.
func (s *scoring) scoreNext() {
	for n := len(s.scores); n < len(s.of.Jobs); n++ {
		key := keyOf(s.of, n)
		one, known := s.kept[key]
		if !known {
			one = s.of.Score(n)
			s.kept[key] = one
		}
		s.scores = append(s.scores, one)
		if !known {
			return
		}
	}
}

func (s *scoring) progress(id int64) []byte {
	n := len(s.of.Jobs)
	text := "Working out the ranges of past jobs again: " + grouped(int64(len(s.scores))) + " of " + grouped(int64(n)) + "."
	if len(s.scores) == n {
		text = "Trying what the other jobs teach on each job: " + grouped(int64(len(s.again))) + " of " + grouped(int64(n)) + "."
	}
	w := strict.NewWriter()
	w.Object(func() {
		head(w, id, "scores")
		w.Member("state", string(Refining))
		w.Key("done")
		w.Whole(int64(len(s.scores) + len(s.again)))
		w.Key("of")
		w.Whole(int64(2 * n))
		w.Member("progress_text", text)
	})
	return w.Bytes()
}

// readJobs turns a pasted table into entries of a file of past jobs.
func readJobs(id int64, f strict.Field) []byte {
	f.Keys("id", "ask", "text", "decimal", "currency")
	text, decimal := f.Get("text").Document(columns.MaxBytes), decimals[f.Get("decimal").OneOf("", "point", "comma")]
	c, err := money.CurrencyOf(f.Get("currency").Text(3))
	if f.Err() != nil {
		return refused(id, "request", f.Err())
	}
	if err != nil {
		return refused(id, "request", &strict.Error{Path: "currency", Expected: "the letters of a currency"})
	}
	jobs, table, err := record.ReadTable(text, decimal, c)
	if err != nil {
		return refused(id, "table", err)
	}
	w := strict.NewWriter()
	w.Object(func() {
		head(w, id, "jobs_read")
		w.Key("jobs")
		w.Array(func() {
			for n := range jobs {
				w.JSON(jobs[n].Text(c))
			}
		})
		writeTableFaults(w, &table)
	})
	return w.Bytes()
}

// writeJobs gives the figures of the jobs in hand as a table for a spreadsheet.
func (e *Engine) writeJobs(id int64, f strict.Field) []byte {
	f.Keys("id", "ask", "separator")
	separator, mark := separatorOf(f.Get("separator").OneOf(",", ";", "tab"))
	if f.Err() != nil {
		return refused(id, "request", f.Err())
	}
	if e.jobs == nil {
		return refused(id, "jobs", &strict.Error{Path: "jobs", Found: "nothing", Expected: "a file of past jobs to be opened first"})
	}
	text, err := e.jobs.WriteTable(separator, mark)
	if err != nil {
		return refused(id, "table", err)
	}
	w := strict.NewWriter()
	w.Object(func() {
		head(w, id, "jobs_written")
		w.Member("text", text)
	})
	return w.Bytes()
}
