package message

import (
	"underpaint/engine/pastjobs/scores"
	"underpaint/engine/session"
	"underpaint/engine/strict"
	"underpaint/engine/wording"
)

// NewScores makes the reply about finished jobs, in words for the shop.
func NewScores(shop *wording.Text, v session.JobScores) *ScoresReply {
	t := shop.InMoney(v.Jobs.Currency)
	out := &ScoresReply{
		State: string(session.Settled), Invented: v.Jobs.Invented, Jobs: len(v.Jobs.Jobs), Scored: v.Summary.Scored,
		Headline: wording.JobsHeadline(&v), AfterSurvey: wording.JobsAfterSurvey(&v), BoxesText: wording.JobsBoxes,
		Bias: t.Bias(&v), CausesNote: wording.CausesNote, PIT: v.Summary.PIT[:], PITText: wording.PITNote,
		Learning: Learning{Compared: t.Improved(&v.Improved), Note: wording.LearningNote()}, Record: jobsRecord(&v),
	}
	for k, n := range v.Summary.Boxes {
		out.Boxes = append(out.Boxes, JobsBox{wording.JobsBox(k), n})
	}
	for n := range v.Scores {
		out.Table = append(out.Table, jobRow(t, &v, n))
		if s := &v.Scores[n]; s.WhyNot != "" {
			out.NotScored = append(out.NotScored, NotScored{s.Name, s.WhyNot})
		}
	}
	for k, c := range v.Summary.Causes {
		out.Causes = append(out.Causes, Cause{wording.Cause(k), wording.Jobs(c.Jobs), t.Amount(c.Amount)})
	}
	for _, s := range t.Statistics(&v) {
		out.Statistics = append(out.Statistics, NamedText(s))
	}
	for _, l := range t.Learnt(&v) {
		out.Learning.Lines = append(out.Learning.Lines, LearntLine{l.ID, l.Name, l.Text, wording.Jobs(l.Jobs), l.Jobs, l.Offered, l.Factor, l.FactorText, l.InUseText, l.ShareText})
	}
	return out
}

func jobRow(t *wording.Text, v *session.JobScores, n int) JobRow {
	s, job := &v.Scores[n], &v.Jobs.Jobs[n]
	row := JobRow{Name: s.Name, FinishedText: t.Date(job.Finished), CameToText: t.Amount(job.CameTo), AgreedLine: t.AgreedOnTop(job), Said: s.Said}
	if s.WhyNot == "" {
		row.FirstText, row.Where = t.Ends(s.First.Low, s.First.High), where(s.First.Box())
	}
	if s.Surveyed {
		row.SurveyText = t.Ends(s.Survey.Low, s.Survey.High)
	}
	return row
}

// where says, by its box, how a job compares with its first range.
func where(box int) string {
	switch box {
	case 0:
		return "below"
	case scores.Boxes - 1:
		return "above"
	}
	return "inside"
}

// jobsRecord is the record that the customer's page may show, ready for the rates file.
// It is null with too few jobs.
func jobsRecord(v *session.JobScores) rawJSON {
	w := strict.NewWriter()
	if p := v.Summary.Past(v.Jobs.CheckCode()); p != nil {
		w.Object(func() { p.Write(w) })
	} else {
		w.Null()
	}
	return w.Bytes()
}
