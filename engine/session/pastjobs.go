package session

import (
	"crypto/sha256"

	"underpaint/engine/pastjobs"
	"underpaint/engine/rates"
	"underpaint/engine/strict"
)

// PastJobs is the open file of past jobs with its scores so far. The zero value has no
// file open. When a file is opened again, jobs that did not change keep their scores.
type PastJobs struct {
	Jobs    *pastjobs.Jobs // nil: none open
	of      *pastjobs.Jobs // the jobs that the scores are about
	scores  []pastjobs.Score
	again   []pastjobs.Again
	already map[[32]byte]pastjobs.Score
}

// Open makes a file of past jobs the open one. After faults the earlier file stays open.
func (p *PastJobs) Open(text []byte) (*pastjobs.Jobs, []error) {
	j, faults := pastjobs.Decode(text)
	if j != nil {
		p.Jobs = j
	}
	return j, faults
}

// NoJobs returns the error of a request that needs a file of past jobs.
func NoJobs() error {
	return &strict.Error{Path: "jobs", Found: "nothing", Expected: "a file of past jobs to be opened first"}
}

// Progress says how many jobs are scored, and how many are worked out again with what the
// other jobs teach.
type Progress struct{ Scored, Again, Jobs int }

// Step scores one more job or, once all are scored, works one more job out again. worked
// is false when nothing was left to do.
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

// scoreNext takes over the next scores that are known and works out one that is not.
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

// keyOf returns a key made from everything that the score of a job depends on.
func keyOf(j *pastjobs.Jobs, n int) [32]byte {
	return sha256.Sum256(j.Jobs[n].Text(j.Currency))
}

// JobScores holds what the finished jobs tell once all are scored and worked out again.
type JobScores struct {
	Jobs     *pastjobs.Jobs
	Scores   []pastjobs.Score
	Summary  pastjobs.Summary
	Taught   pastjobs.Teaching
	Improved pastjobs.Improved
	Doubt    pastjobs.DoubtTaught
	InUse    *rates.Own
	Offered  *rates.Own // what would be used from now on
}

// Scores summarizes the open jobs once [PastJobs.Step] has nothing left to do. today is
// YYYY-MM-DD.
func (p *PastJobs) Scores(r *rates.Rates, today string) (JobScores, error) {
	return NewJobScores(p.of, p.scores, p.again, r, today)
}

// NewJobScores summarizes jobs from their scores, beside the rates in use. today is
// YYYY-MM-DD.
func NewJobScores(j *pastjobs.Jobs, all []pastjobs.Score, again []pastjobs.Again, r *rates.Rates, today string) (out JobScores, err error) {
	out = JobScores{Jobs: j, Scores: all, Improved: pastjobs.Improve(again), Doubt: pastjobs.LearnDoubt(r, again), InUse: r.Own}
	if out.Summary, err = j.Sum(all); err != nil {
		return out, err
	}
	if out.Taught, err = pastjobs.Learn(all, pastjobs.EveryJob); err != nil {
		return out, err
	}
	out.Offered = out.Taught.Own(today, j.CheckCode())
	out.Offered.Doubt = out.Doubt.Own()
	return out, nil
}
