package wording

import (
	"slices"
	"strconv"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/pastjobs"
	"underpaint/engine/pastjobs/scores"
	"underpaint/engine/session"
)

func (t *Text) tradeNamed(id string) string { return t.Trade(slices.Index(car.TradeIDs[:], id)) }

// Bias says where the jobs differ from the figures by more than chance, in words that
// a shop understands; nothing with too few jobs.
func (t *Text) Bias(v *session.JobScores) (out []string) {
	if v.Summary.Scored < scores.LeastJobs {
		return nil
	}
	line := func(r scores.Ratio, subject, more, less, than string) {
		if r.Jobs >= pastjobs.LeastToUse && r.Known && (r.Low > 1.005 || r.High < 0.995) {
			out = append(out, subject+" "+percentOf(r.Ratio, more, less)+" than "+than+" ("+Jobs(r.Jobs)+"; 8 in 10: "+
				percentOf(r.Low, more, less)+" to "+percentOf(r.High, more, less)+").")
		}
	}
	for _, r := range v.Summary.Rust {
		line(r, t.groupName(r.Group)+": the surveys found", "more damage", "less damage", "the figures of their day led one to expect")
	}
	for _, r := range v.Summary.Hours {
		line(r, t.tradeNamed(r.Group)+" took", "more hours", "fewer hours", "expected once the survey was made")
	}
	if len(out) == 0 {
		out = append(out, "Nothing stands out: damage and hours came as expected, as far as these jobs can tell.")
	}
	return out
}

// Named is a line with a name.
type Named struct{ Name, Text string }

// Statistics are the lines for the statistician; none with too few jobs.
func (t *Text) Statistics(v *session.JobScores) (rows []Named) {
	s := &v.Summary
	j := s.Judged
	if j.Verdict == scores.TooFew {
		return nil
	}
	rows = append(rows, Named{"Share inside the 80 % range", inside(s.First) + "; 95 % interval " + percent(j.Low) + " to " + percent(j.High) + " (Wilson); " +
		strconv.Itoa(j.Fewest) + " to " + strconv.Itoa(j.Most) + " inside agree with 80 % (exact binomial, 5 %)"},
		Named{"Tails", strconv.Itoa(s.First.Below) + " below, " + strconv.Itoa(s.First.Above) + " above; up to " + strconv.Itoa(j.MostTail) + " on either side agree with 10 %"})
	if a := s.JudgedAfter; a.Verdict != scores.TooFew {
		rows = append(rows, Named{"Share inside after the survey", inside(s.AfterSurvey) + "; 95 % interval " + percent(a.Low) + " to " + percent(a.High)})
	}
	if s.Modelled > 1 {
		rows = append(rows, Named{"Mean CRPS", t.roughly(s.CRPS) + " ± " + t.roughly(s.CRPSError) + " (" + Jobs(s.Modelled) + "; continuous ranked probability score, smaller is better)"},
			Named{"Mean interval score", t.roughly(s.Interval) + " (Gneiting and Raftery 2007)"})
	}
	if p := s.HoursPredictions; p.Known {
		rows = append(rows, Named{"Hours predicted from the other jobs", "CRPS of the log " + three(p.Learnt) + ", on the starting figures " + three(p.Starting) +
			"; gain " + three(p.Gain) + " ± " + three(p.SE)})
	}
	return rows
}

func inside(c scores.Coverage) string {
	return NumberOf(c.Inside, c.Jobs) + ", " + percent(float64(c.Inside)/float64(c.Jobs))
}

// LearntLine is a figure that the jobs teach, in words.
type LearntLine struct {
	ID, Name, Text string
	Jobs           int
	Offered        bool
	Factor         float64
	FactorText     string
	InUseText      string
	ShareText      string
}

func learntLine(id, name, text string, jobs int, offered bool, factor, inUse, own float64) LearntLine {
	return LearntLine{id, name, text, jobs, offered, factor, times(factor), times(inUse), percent(own) + " the shop's own"}
}

func times(factor float64) string { return "× " + strconv.FormatFloat(factor, 'f', 2, 64) }

// Learnt words each figure that the jobs teach.
func (t *Text) Learnt(v *session.JobScores) (out []LearntLine) {
	one := func(id, name string, l scores.Learnt, factor, inUse float64, subject, more, less string) {
		_, low, high := l.Factor()
		text := "By these jobs alone " + subject + " " + percentOf(chance.Exp(l.Plain), more, less) + " than the starting figures say. Drawn towards them: " + percentOf(chance.Exp(l.Shift), more, less) +
			" (8 in 10: " + percentOf(low, more, less) + " to " + percentOf(high, more, less) + ")."
		out = append(out, learntLine(id, name, text, l.Jobs, l.Jobs >= pastjobs.LeastToUse, factor, inUse, l.Share))
	}
	for _, l := range v.Taught.Rust {
		one("rust."+l.Group, t.groupName(l.Group), l, v.Offered.RustFactor(l.Group), v.InUse.RustFactor(l.Group), "rust goes", "deeper", "less deep")
	}
	for _, l := range v.Taught.Hours {
		k := slices.Index(car.TradeIDs[:], l.Group)
		one("hours."+l.Group, t.tradeNamed(l.Group), l, v.Offered.Hours[k].Factor, v.InUse.Hours[k].Factor, "it takes", "more hours", "fewer hours")
	}
	if s := v.Taught.Spread; s.Jobs > 0 {
		text := "Cars that are told alike differ by " + percentOf(s.Factor, "more", "less") + " than the starting figures say (8 in 10: " +
			percentOf(s.Low, "more", "less") + " to " + percentOf(s.High, "more", "less") + ")."
		out = append(out, learntLine("spread", "How much cars differ", text, s.Jobs, s.Jobs >= scores.LeastJobs, v.Offered.Spread.Factor, v.InUse.Spread.Factor, s.Share))
	}
	return out
}

// LearningNote says how the figures are drawn from the jobs.
func LearningNote() string {
	return "Each figure is drawn towards the starting figure, the more so the fewer the jobs. A figure is offered from " +
		strconv.Itoa(pastjobs.LeastToUse) + " jobs on, the spread from " + strconv.Itoa(scores.LeastJobs) + ". Depth is learnt only from surveys that record every part of a group that bare metal shows. Jobs with changes agreed on top teach nothing about hours, for theirs cannot be told apart. Parts of a car share its luck, so groups can move together by chance."
}

// Improved says whether what the others taught would have helped.
func (t *Text) Improved(i *pastjobs.Improved) string {
	if i.Jobs < scores.LeastJobs {
		return "Too few jobs with a car to say whether learning helps."
	}
	text := "Tried on each of " + Jobs(i.Jobs) + " with what the other jobs teach: the ranges miss by " + t.roughly(i.Taught) + " on the average, on the starting figures by " + t.roughly(i.Starting) + " (CRPS; gain " + t.signedRoughly(i.Gain) + " ± " + t.roughly(i.Error) + "). "
	switch {
	case i.Gain > 2*i.Error:
		return text + "Learning helps."
	case i.Gain < -2*i.Error:
		return text + "Learning makes it worse: leave the starting figures."
	}
	return text + "The difference is within chance."
}
