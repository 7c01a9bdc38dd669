package pastjobs

import (
	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/money"
	"underpaint/engine/pastjobs/scores"
	"underpaint/engine/rates"
)

// Summary combines the scores of all jobs.
type Summary struct {
	Scored      int
	First       scores.Coverage // against the first range
	Judged      scores.Judgement
	Boxes       [scores.Boxes]int
	PIT         [10]int
	AfterSurvey scores.Coverage
	JudgedAfter scores.Judgement

	Modelled         int // the jobs among them whose draws are known
	CRPS, CRPSError  float64
	Interval         float64
	Rust             []scores.Ratio // damage found over damage expected, by pocket group
	Hours            []scores.Ratio // hours over those expected after the survey, by trade
	Causes           [Causes]CauseSum
	From, To         string // dates on which the first and the last scored job were finished
	HoursPredictions scores.Comparison
}

// CauseSum is the total of one cause over all jobs.
type CauseSum struct {
	Jobs   int
	Amount money.Minor
}

// Confidence is the confidence level of the ratios, the same as that of the 80 % range.
const Confidence = 0.8

// Sum combines scores. all has one score per job, in the order of the jobs.
func (j *Jobs) Sum(all []Score) (s Summary, err error) {
	var first, after []scores.Finished
	var crps, interval []float64
	for n := range all {
		one := &all[n]
		if one.WhyNot != "" {
			continue
		}
		first = append(first, one.First)
		s.PIT[min(9, int(one.First.PIT*10))]++
		if one.Modelled {
			crps, interval = append(crps, one.CRPS), append(interval, one.Interval)
		}
		if one.Surveyed {
			after = append(after, one.Survey)
		}
		day := j.Jobs[n].Finished
		if s.From == "" || day < s.From {
			s.From = day
		}
		s.To = max(s.To, day)
	}
	s.Scored, s.Modelled = len(first), len(crps)
	s.First, s.Boxes, s.AfterSurvey = scores.Count(first), scores.Strip(first), scores.Count(after)
	s.Judged, s.JudgedAfter = s.First.Judge(), s.AfterSurvey.Judge()
	if len(crps) > 0 {
		s.CRPS, s.CRPSError, _ = scores.Average(crps)
		s.Interval, _, _ = scores.Average(interval)
	}
	s.causes(j)
	return s, s.ratios(all)
}

// causes adds up why jobs cost more.
func (s *Summary) causes(j *Jobs) {
	for n := range j.Jobs {
		for k, amount := range j.Jobs[n].More {
			if amount > 0 {
				s.Causes[k].Jobs++
				s.Causes[k].Amount += amount
			}
		}
	}
}

func (s *Summary) ratios(all []Score) error {
	var rust, hours []scores.Pair
	for n := range all {
		for k := range all[n].Rust {
			e := &all[n].Rust[k]
			rust = append(rust, scores.Pair{Group: e.Group, Job: all[n].Name, Expected: e.Mean[unshifted], Found: e.Found})
		}
		for _, h := range all[n].Hours {
			hours = append(hours, scores.Pair{Group: car.TradeIDs[h.Trade], Job: all[n].Name, Expected: 1, Found: h.ratio()})
		}
	}
	var err error
	if s.Rust, err = scores.SumRatios(rust, Confidence); err != nil {
		return err
	}
	if s.Hours, err = scores.Ratios(hours, Confidence); err != nil {
		return err
	}
	seen := hoursOf(all, EveryJob)
	if len(seen) == 0 {
		return nil
	}
	predictions, err := scores.LeaveOneOut(seen, scores.TradePriorSD)
	if err == nil {
		s.HoursPredictions = scores.Compare(predictions)
	}
	return err
}

// Past returns what may be published of the record; nil with too few jobs.
func (s *Summary) Past(jobsCode string) *rates.Past {
	if s.Scored < scores.LeastJobs {
		return nil
	}
	return &rates.Past{Below: s.First.Below, Inside: s.First.Inside, Above: s.First.Above, From: s.From, To: s.To, JobsCode: jobsCode}
}

// Improved compares, job by job, the misses of ranges worked out again with what the
// other jobs taught and with the starting figures.
type Improved struct {
	Jobs             int
	Starting, Taught float64 // mean CRPS, minor units
	Gain, Error      float64 // mean of the differences with its standard error
	Covered          scores.Coverage
}

// Again holds one job's range worked out twice more: on the starting figures, and on
// what all the other jobs taught. The doubt about the figures is part of a range, so of
// where the job fell, but not of what the two sets of figures are compared by.
type Again struct {
	Known            bool
	Starting, Taught float64 // CRPS, minor units
	Fell             scores.Finished
	misses           map[string]scores.Miss // by stage, on what the others taught
}

// Again works one job out twice more. all has the scores of all jobs.
func (j *Jobs) Again(n int, all []Score) (a Again, err error) {
	job := &j.Jobs[n]
	r, _ := j.ready(job)
	if r == nil || !all[n].Modelled {
		return a, nil
	}
	k, err := open(job.Car)
	if err != nil {
		return a, err
	}
	others, err := Learn(all, n)
	if err != nil {
		return a, err
	}
	found := int64(job.Scored())
	a.Starting = all[n].sureCRPS
	if r.Own.LearntOn != "" { // the range of the day used learned figures, not the starting figures
		starting, err := k.at(carfile.Told, r.With(nil))
		if err != nil {
			return a, err
		}
		a.Starting = scores.CRPS(starting.sure(), found)
	}
	taught := r.With(others.Own(job.Finished, ""))
	at, err := k.at(carfile.Told, taught)
	if err != nil {
		return a, err
	}
	a.misses = map[string]scores.Miss{}
	if m, ok := at.miss(job.Scored()); ok {
		a.misses[carfile.Told] = m
	}
	if job.Car.Begun(carfile.Survey) {
		bare, err := k.at(carfile.Survey, taught)
		if err != nil {
			return a, err
		}
		if m, ok := bare.miss(job.Scored()); ok {
			a.misses[carfile.Survey] = m
		}
	}
	a.Known, a.Taught, a.Fell = true, scores.CRPS(at.sure(), found), finished(at.told(), job.Scored())
	return a, nil
}

// Improve combines the jobs that were worked out again.
func Improve(all []Again) (i Improved) {
	var starting, taught, gain []float64
	var fell []scores.Finished
	for _, a := range all {
		if a.Known {
			starting, taught, gain = append(starting, a.Starting), append(taught, a.Taught), append(gain, a.Starting-a.Taught)
			fell = append(fell, a.Fell)
		}
	}
	if i.Jobs, i.Covered = len(fell), scores.Count(fell); i.Jobs == 0 {
		return i
	}
	i.Starting, _, _ = scores.Average(starting)
	i.Taught, _, _ = scores.Average(taught)
	i.Gain, i.Error, _ = scores.Average(gain)
	return i
}

// RangesWereNarrow says whether fewer jobs of a published record came out inside their
// first range than chance explains.
func RangesWereNarrow(p *rates.Past) bool {
	c := scores.Coverage{Jobs: p.Jobs(), Below: p.Below, Inside: p.Inside, Above: p.Above}
	return c.Judge().Verdict == scores.TooNarrow
}
