package wording

import (
	"strconv"

	"underpaint/engine/car"
	"underpaint/engine/pastjobs"
	"underpaint/engine/pastjobs/scores"
	"underpaint/engine/session"
)

// Jobs counts finished jobs.
func Jobs(n int) string { return counted(n, "job", "jobs") }

// JobsProgress says how far scoring has got.
func JobsProgress(p session.Progress) string {
	if p.Scored < p.Jobs {
		return "Working out the ranges of past jobs again: " + Grouped(int64(p.Scored)) + " of " + Grouped(int64(p.Jobs)) + "."
	}
	return "Checking each job against what the others teach: " + Grouped(int64(p.Again)) + " of " + Grouped(int64(p.Jobs)) + "."
}

// JobsHeadline says how the ranges came out, or that there are too few jobs to tell.
func JobsHeadline(v *session.JobScores) []string {
	f, j := v.Summary.First, v.Summary.Judged
	if j.Verdict == scores.TooFew {
		return []string{Jobs(f.Jobs) + " scored. That is too few to say anything; we need at least " + strconv.Itoa(scores.LeastJobs) + "."}
	}
	out := []string{Jobs(f.Jobs) + ". " + strconv.Itoa(f.Above) + " came out above the first range, " + strconv.Itoa(f.Below) + " below it and " +
		strconv.Itoa(f.Inside) + " inside it. We said that about " + strconv.Itoa(int(j.ExpectedOut+0.5)) + " would come out outside."}
	switch {
	case j.Verdict == scores.TooNarrow:
		out = append(out, "That is more outside than chance explains. The ranges are too narrow, too low or too high.")
	case j.Verdict == scores.TooWide:
		out = append(out, "That is fewer outside than chance explains. The ranges are wider than they need to be.")
	case j.ManyAbove:
		out = append(out, "More came out above than chance explains, so the ranges are too low.")
	case j.ManyBelow:
		out = append(out, "More came out below than chance explains, so the ranges are too high.")
	default:
		out = append(out, "That fits what the ranges say, as far as so few jobs can tell.")
	}
	return out
}

// JobsAfterSurvey says how the ranges after the survey came out. It is empty where no
// job has one.
func JobsAfterSurvey(v *session.JobScores) string {
	f := v.Summary.AfterSurvey
	if f.Jobs == 0 {
		return ""
	}
	line := "After the survey: of " + Jobs(f.Jobs) + ", " + strconv.Itoa(f.Above) + " above the range, " + strconv.Itoa(f.Below) + " below it and " + strconv.Itoa(f.Inside) + " inside it."
	if j := v.Summary.JudgedAfter; j.Verdict != scores.TooFew && (j.Verdict == scores.TooNarrow || j.ManyAbove || j.ManyBelow) {
		line += " That is more outside, or more on one side, than chance explains."
	}
	return line
}

// JobsBox names the k-th of the twelve boxes in the picture of past jobs.
func JobsBox(k int) string {
	switch k {
	case 0:
		return "below its own range"
	case scores.Boxes - 1:
		return "above its own range"
	}
	return "slot " + strconv.Itoa(k) + " of 10 inside the range"
}

// The texts below the figures of past jobs.
const (
	JobsBoxes  = "One mark for each finished job: below its own first range, in one of ten equally likely slots inside it, or above it. Of 100 jobs, about 10 should fall below, 8 in each slot, and 10 above."
	CausesNote = "As you entered them, job by job. We take changes agreed on top off before we score a job. The other causes are what a range is there to allow for."
	PITNote    = "Probability integral transform: where each job fell among the simulated cars of its own first range, in tenths. Even heights mean honest ranges. Where only the two ends of a range are known, we use the lognormal distribution through them."
)

// AgreedOnTop says how much of a job was agreed on top. It is empty where nothing was.
func (t *Text) AgreedOnTop(job *pastjobs.Job) string {
	if m := job.More[pastjobs.ChangesAgreed]; m > 0 {
		return "including " + t.Amount(m) + " for changes agreed on top, which do not count against the range"
	}
	return ""
}

// Cause names a reason why jobs cost more.
func Cause(k int) string {
	return [pastjobs.Causes]string{"More rust than expected", "More hours than expected", "Parts cost more", "Changes agreed on top"}[k]
}

// groupName names a pocket group as the first body that has it does.
func (t *Text) groupName(id string) string {
	for _, body := range car.BodyIDs {
		b, err := car.Load(body)
		if err != nil {
			continue
		}
		for g := range b.Groups {
			if b.Groups[g].ID == id {
				return t.In(b.Groups[g].Name)
			}
		}
	}
	return id
}
