package wording

import (
	"math"
	"slices"
	"strconv"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/pastjobs"
	"underpaint/engine/pastjobs/scores"
	"underpaint/engine/session"
)

func (t *Text) tradeNamed(id string) string { return t.Trade(slices.Index(car.TradeIDs[:], id)) }

// Bias says where the jobs differ from the figures by more than chance, in words that a
// shop understands. It returns none with too few jobs.
func (t *Text) Bias(v *session.JobScores) (out []string) {
	if v.Summary.Scored < scores.LeastJobs {
		return nil
	}
	line := func(r scores.Ratio, subject, more, less, than string) {
		if r.Jobs >= pastjobs.LeastToUse && r.Known && (r.Low > 1.005 || r.High < 0.995) {
			out = append(out, subject+" "+percentOf(r.Ratio, more, less)+" than "+than+" ("+Jobs(r.Jobs)+"; 8 chances in 10: "+
				percentOf(r.Low, more, less)+" to "+percentOf(r.High, more, less)+").")
		}
	}
	for _, r := range v.Summary.Rust {
		line(r, t.groupName(r.Group)+": the surveys found", "more damage", "less damage", "the figures used at the time predicted")
	}
	for _, r := range v.Summary.Hours {
		line(r, t.tradeNamed(r.Group)+" took", "more hours", "fewer hours", "expected after the survey")
	}
	if len(out) == 0 {
		out = append(out, "Nothing stands out. As far as these jobs can tell, damage and hours came out as expected.")
	}
	return out
}

// Named is a line of text with its name.
type Named struct{ Name, Text string }

// Statistics returns the lines for the statistician, none with too few jobs.
func (t *Text) Statistics(v *session.JobScores) (rows []Named) {
	s := &v.Summary
	j := s.Judged
	if j.Verdict == scores.TooFew {
		return nil
	}
	rows = append(rows, Named{"Share inside the 80% range", inside(s.First) + "; 95% interval " + percent(j.Low) + " to " + percent(j.High) + " (Wilson); " +
		strconv.Itoa(j.Fewest) + " to " + strconv.Itoa(j.Most) + " inside are consistent with 80% (exact binomial, 5%)"},
		Named{"Tails", strconv.Itoa(s.First.Below) + " below, " + strconv.Itoa(s.First.Above) + " above; up to " + strconv.Itoa(j.MostTail) + " on either side are consistent with 10%"})
	if a := s.JudgedAfter; a.Verdict != scores.TooFew {
		rows = append(rows, Named{"Share inside after the survey", inside(s.AfterSurvey) + "; 95% interval " + percent(a.Low) + " to " + percent(a.High)})
	}
	if s.Modelled > 1 {
		rows = append(rows, Named{"Mean CRPS", t.roughly(s.CRPS) + " ± " + t.roughly(s.CRPSError) + " (" + Jobs(s.Modelled) + "; continuous ranked probability score, smaller is better)"},
			Named{"Mean interval score", t.roughly(s.Interval) + " (Gneiting and Raftery 2007)"})
	}
	if p := s.HoursPredictions; p.Known {
		rows = append(rows, Named{"Hours predicted from the other jobs", "CRPS of the log " + three(p.Learnt) + ", with the starting figures " + three(p.Starting) +
			"; gain " + three(p.Gain) + " ± " + three(p.SE)})
	}
	return rows
}

func inside(c scores.Coverage) string {
	return NumberOf(c.Inside, c.Jobs) + ", " + percent(float64(c.Inside)/float64(c.Jobs))
}

// LearntLine describes one figure that the jobs teach.
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
	return LearntLine{id, name, text, jobs, offered, factor, times(factor), times(inUse), percent(own) + " from your own jobs"}
}

func times(factor float64) string { return "× " + strconv.FormatFloat(factor, 'f', 2, 64) }

// Learnt describes each figure that the jobs teach.
func (t *Text) Learnt(v *session.JobScores) (out []LearntLine) {
	one := func(id, name string, l scores.Learnt, factor, inUse float64, subject, more, less string) {
		_, low, high := l.Factor()
		text := "From these jobs alone, " + subject + " " + percentOf(chance.Exp(l.Plain), more, less) + " than the starting figures say. Weighed against the starting figures: " + percentOf(chance.Exp(l.Shift), more, less) +
			" (8 chances in 10: " + percentOf(low, more, less) + " to " + percentOf(high, more, less) + ")."
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
		text := "Cars with the same answers differ by " + percentOf(s.Factor, "more", "less") + " than the starting figures say (8 chances in 10: " +
			percentOf(s.Low, "more", "less") + " to " + percentOf(s.High, "more", "less") + ")."
		out = append(out, learntLine("spread", "How much cars differ", text, s.Jobs, s.Jobs >= scores.LeastJobs, v.Offered.Spread.Factor, v.InUse.Spread.Factor, s.Share))
	}
	if d := v.Doubt; d.Jobs > 0 {
		moves := "falls"
		if d.Is.SD() > d.Was.SD() {
			moves = "rises"
		}
		text := "Once all other figures are learned, the work after the strip comes out " + comesOut(d.Is.Growth) + ". Before these jobs we allowed " + percent(chance.Exp(d.Was.Growth)-1) +
			" for growth. How far the figures may still be off for one car " + moves + " from " + percent(d.Was.SD()) + " to " + percent(d.Is.SD()) + "."
		l := learntLine("doubt", "Growth, and what we may have wrong", text, d.Jobs, v.Offered.Doubt != nil, 1, 1, 0)
		l.Factor, l.FactorText, l.InUseText = chance.Exp(d.Is.Growth), times(chance.Exp(d.Is.Growth)), times(chance.Exp(d.Was.Growth))
		if u := v.InUse.Doubt; u != nil {
			l.InUseText = times(1 + u.Growth/100)
		}
		if d.Was.Shared > 0 {
			l.ShareText = percent(1-float64(d.Is.Shared*d.Is.Shared)/float64(d.Was.Shared*d.Was.Shared)) + " from your own jobs"
		}
		out = append(out, l)
	}
	return out
}

// comesOut compares bills with the figures, by the log of the ratio.
func comesOut(growth float64) string {
	if math.Abs(growth) < 0.005 {
		return "as the figures say"
	}
	return percentOf(chance.Exp(growth), "higher", "lower") + " than the figures say"
}

// LearningNote says how the figures are learnt from the jobs.
func LearningNote() string {
	return "The fewer the jobs, the more a figure leans on its starting figure. We offer a figure from " +
		strconv.Itoa(pastjobs.LeastToUse) + " jobs on, and the spread from " + strconv.Itoa(scores.LeastJobs) + ". Only surveys that record every part of a group that bare metal shows can teach how deep rust goes. Jobs with changes agreed on top teach nothing about hours, because we cannot tell the hours of the changes apart. All parts of a car share its luck, so groups can move together by chance."
}

// Improved says whether what the other jobs taught would have helped on each job.
func (t *Text) Improved(i *pastjobs.Improved) string {
	if i.Jobs < scores.LeastJobs {
		return "There are too few jobs with a car file to say whether learning helps."
	}
	text := "We worked out each of " + Jobs(i.Jobs) + " again with what the other jobs teach. The ranges then miss by " + t.roughly(i.Taught) + " on average, and with the starting figures by " + t.roughly(i.Starting) + " (CRPS; gain " + t.signedRoughly(i.Gain) + " ± " + t.roughly(i.Error) + "). "
	switch {
	case i.Gain > 2*i.Error:
		return text + "Learning helps."
	case i.Gain < -2*i.Error:
		return text + "Learning makes it worse, so stay with the starting figures."
	}
	return text + "The difference could be chance."
}
