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
	return "Trying what the other jobs teach on each job: " + Grouped(int64(p.Again)) + " of " + Grouped(int64(p.Jobs)) + "."
}

// JobsHeadline says how the ranges came out; with too few jobs, that.
func JobsHeadline(v *session.JobScores) []string {
	f, j := v.Summary.First, v.Summary.Judged
	if j.Verdict == scores.TooFew {
		return []string{Jobs(f.Jobs) + " scored. Too few to say anything: it takes " + strconv.Itoa(scores.LeastJobs) + "."}
	}
	out := []string{Jobs(f.Jobs) + ". " + strconv.Itoa(f.Above) + " came out above the first range, " + strconv.Itoa(f.Below) + " below, " +
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

// JobsAfterSurvey says it of the ranges after the survey; nothing without any.
func JobsAfterSurvey(v *session.JobScores) string {
	f := v.Summary.AfterSurvey
	if f.Jobs == 0 {
		return ""
	}
	line := "After the survey: of " + Jobs(f.Jobs) + " " + strconv.Itoa(f.Above) + " above, " + strconv.Itoa(f.Below) + " below, " + strconv.Itoa(f.Inside) + " inside."
	if j := v.Summary.JudgedAfter; j.Verdict != scores.TooFew && (j.Verdict == scores.TooNarrow || j.ManyAbove || j.ManyBelow) {
		line += " That is more on one side, or outside, than chance explains."
	}
	return line
}

// JobsBox names the k-th box of the strip of twelve.
func JobsBox(k int) string {
	switch k {
	case 0:
		return "below its own range"
	case scores.Boxes - 1:
		return "above its own range"
	}
	return "slot " + strconv.Itoa(k) + " of 10 inside the range"
}

// What stands below the figures of past jobs.
const (
	JobsBoxes  = "One mark for each finished job: below its own first range, in one of ten equally likely slots inside it, or above. Of 100 jobs about 10, ten times 8, and 10 should fall so."
	CausesNote = "As entered by the shop, job by job. Changes agreed on top are taken off before a job is scored; the others are what a range is there to allow for."
	PITNote    = "Probability integral transform: where each job fell among the imagined cars of its own first range, in tenths. Even heights mean honest ranges. Of jobs whose ends alone are known, the lognormal distribution through them stands in."
)

// AgreedOnTop says what of a job was agreed on top; nothing where nothing was.
func (t *Text) AgreedOnTop(job *pastjobs.Job) string {
	if m := job.More[pastjobs.ChangesAgreed]; m > 0 {
		return "of it " + t.Amount(m) + " for changes agreed on top, which do not count against the range"
	}
	return ""
}

// Cause names a cause why jobs came to more.
func Cause(k int) string {
	return [pastjobs.Causes]string{"Rust found", "More hours than thought", "Dearer parts", "Changes agreed on top"}[k]
}

// groupName is the name of a pocket group, of the first body that has it.
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
