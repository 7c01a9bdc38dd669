package session

import (
	"crypto/sha256"

	"underpaint/engine/pastjobs"
	"underpaint/engine/rates"
	"underpaint/engine/strict"
)

// PastJobs is the open file of past jobs, as far as it is scored. The zero value has
// no file open. Scores of jobs that did not change are taken over when the file is
// opened anew.
type PastJobs struct {
	Jobs    *pastjobs.Jobs // nil: none open
	of      *pastjobs.Jobs // those that were scored
	scores  []pastjobs.Score
	again   []pastjobs.Again
	already map[[32]byte]pastjobs.Score
}

// Open makes a file of past jobs the open one. With faults nothing of it is taken, and
// the jobs before stay.
func (p *PastJobs) Open(text []byte) (*pastjobs.Jobs, []error) {
	j, faults := pastjobs.Decode(text)
	if j != nil {
		p.Jobs = j
	}
	return j, faults
}

// NoJobs is the error of a request that needs a file of past jobs.
func NoJobs() error {
	return &strict.Error{Path: "jobs", Found: "nothing", Expected: "a file of past jobs to be opened first"}
}

// Progress says how many of the jobs are scored, and how many were worked out again
// with what the others teach.
type Progress struct{ Scored, Again, Jobs int }

// Step scores one more job, then, once all are, works one more out again. It says
// whether there was anything left to do.
func (p *PastJobs) Step() (at Progress, worked bool, err error) {
	if p.Jobs == nil {
		return Progress{}, false, NoJobs()
	}
	if p.of != p.Jobs {
		p.of, p.scores, p.again = p.Jobs, nil, nil
		if p.already == nil {
			p.already = map[[32]byte]pastjobs.Score{}
		}
	}
	switch n := len(p.of.Jobs); {
	case len(p.scores) < n:
		p.scoreNext()
		worked = true
	case len(p.again) < n:
		a, err := p.of.Again(len(p.again), p.scores)
		if err != nil {
			return Progress{}, false, err
		}
		p.again, worked = append(p.again, a), true
	}
	return Progress{len(p.scores), len(p.again), len(p.of.Jobs)}, worked, nil
}

// scoreNext takes over the scores that are known and works out one that is not.
func (p *PastJobs) scoreNext() {
	for n := len(p.scores); n < len(p.of.Jobs); n++ {
		key := keyOf(p.of, n)
		one, known := p.already[key]
		if !known {
			one = p.of.Score(n)
			p.already[key] = one
		}
		p.scores = append(p.scores, one)
		if !known {
			return
		}
	}
}

// keyOf names a job with everything that its score depends on.
func keyOf(j *pastjobs.Jobs, n int) [32]byte {
	return sha256.Sum256(j.Jobs[n].Text(j.Currency))
}

// JobScores is what finished jobs say, once all are scored and worked out again.
type JobScores struct {
	Jobs     *pastjobs.Jobs
	Scores   []pastjobs.Score
	Summary  pastjobs.Summary
	Taught   pastjobs.Teaching
	Improved pastjobs.Improved
	InUse    *rates.Own
	Offered  *rates.Own // what would be used from now on
}

// Scores puts the open jobs together, once [PastJobs.Step] has nothing left to do.
// Today is YYYY-MM-DD.
func (p *PastJobs) Scores(inUse *rates.Own, today string) (JobScores, error) {
	return NewJobScores(p.of, p.scores, p.again, inUse, today)
}

// NewJobScores puts jobs together whose scores are there.
func NewJobScores(j *pastjobs.Jobs, all []pastjobs.Score, again []pastjobs.Again, inUse *rates.Own, today string) (out JobScores, err error) {
	out = JobScores{Jobs: j, Scores: all, Improved: pastjobs.Improve(again), InUse: inUse}
	if out.Summary, err = j.Sum(all); err != nil {
		return out, err
	}
	if out.Taught, err = pastjobs.Learn(all, pastjobs.EveryJob); err != nil {
		return out, err
	}
	out.Offered = out.Taught.Own(today, j.CheckCode())
	return out, nil
}
