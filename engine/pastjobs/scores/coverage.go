package scores

// LeastJobs is the fewest finished jobs about which anything is said (assumption: with
// nine jobs, the probability that all nine are inside an 80 % range is 13 in 100).
const LeastJobs = 10

// Coverage counts finished jobs against their own first ranges.
type Coverage struct{ Jobs, Below, Inside, Above int }

// Count counts jobs; an end of the range itself is inside.
func Count(jobs []Finished) Coverage {
	strip := Strip(jobs)
	c := Coverage{Jobs: len(jobs), Below: strip[0], Above: strip[Boxes-1]}
	c.Inside = c.Jobs - c.Below - c.Above
	return c
}

// Verdict is what the counts say about ranges that promise eight jobs in ten inside.
type Verdict int

const (
	TooFew    Verdict = iota // fewer than LeastJobs: nothing is said
	Agrees                   // within chance
	TooNarrow                // more jobs outside than chance explains
	TooWide                  // fewer jobs outside than chance explains
)

// Judgement is a verdict with the figures behind it. All figures are zero when
// the verdict is TooFew.
type Judgement struct {
	Verdict      Verdict
	ExpectedOut  float64 // jobs outside that the range leads one to expect
	Fewest, Most int     // hits that agree with 80 %, at the 5 % level
	Low, High    float64 // 95 % interval of the share inside, after Wilson
	// MostTail is the most jobs above, or below, that agree with 10 % at the
	// one-sided 2.5 % level; the flags say which side has more.
	MostTail             int
	ManyAbove, ManyBelow bool
}

// Judge compares the counts with what an 80 % range promises, by the exact
// binomial distribution. Central coverage alone can hide that every miss is on
// one side, so both tails are judged as well.
func (c Coverage) Judge() Judgement {
	if c.Below < 0 || c.Inside < 0 || c.Above < 0 || c.Below+c.Inside+c.Above != c.Jobs {
		panic("engine: internal error: counts of finished jobs do not add up")
	}
	if c.Jobs < LeastJobs {
		return Judgement{}
	}
	j := Judgement{Verdict: Agrees, ExpectedOut: float64(Outside * float64(c.Jobs))}
	j.Fewest, j.Most = HitLimits(c.Jobs, 1-Outside, 0.05)
	j.Low, j.High = Wilson(c.Inside, c.Jobs, 0.95)
	j.MostTail = mostHits(c.Jobs, Outside/2, 0.025)
	j.ManyAbove, j.ManyBelow = c.Above > j.MostTail, c.Below > j.MostTail
	switch {
	case c.Inside < j.Fewest:
		j.Verdict = TooNarrow
	case c.Inside > j.Most:
		j.Verdict = TooWide
	}
	return j
}
