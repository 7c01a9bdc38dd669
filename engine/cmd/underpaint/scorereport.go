package main

import (
	"bytes"
	"fmt"

	"underpaint/engine/pastjobs"
	"underpaint/engine/session"
	"underpaint/engine/wording"
)

// scoreReport writes what the finished jobs tell, in words.
func scoreReport(shop *wording.Text, v *session.JobScores) []byte {
	var b bytes.Buffer
	t := shop.InMoney(v.Jobs.Currency)
	for _, line := range append(wording.JobsHeadline(v), wording.JobsAfterSurvey(v)) {
		if line != "" {
			fmt.Fprintln(&b, line)
		}
	}
	for k := range v.Scores {
		if s := &v.Scores[k]; s.WhyNot != "" {
			fmt.Fprintf(&b, "Not scored: %s, for %s.\n", s.Name, s.WhyNot)
		}
	}
	bias, statistics, learnt := t.Bias(v), t.Statistics(v), t.Learnt(v)
	section(&b, "What stands out", len(bias) > 0)
	for _, line := range bias {
		fmt.Fprintf(&b, "  - %s\n", line)
	}
	section(&b, "Why jobs cost more", true)
	for k := range pastjobs.Causes {
		c := v.Summary.Causes[k]
		fmt.Fprintf(&b, "  %-24s %-10s %s\n", wording.Cause(int(k)), wording.Jobs(c.Jobs), t.Amount(c.Amount))
	}
	section(&b, "For the statistician", len(statistics) > 0)
	for _, row := range statistics {
		fmt.Fprintf(&b, "  %s: %s\n", row.Name, row.Text)
	}
	if len(statistics) > 0 {
		fmt.Fprintf(&b, "  PIT in tenths: %v\n", v.Summary.PIT)
	}
	section(&b, "What the jobs teach", len(learnt) > 0)
	for _, l := range learnt {
		offered := l.FactorText
		if !l.Offered {
			offered = "too few jobs"
		}
		fmt.Fprintf(&b, "  %-34s %-8s %s (in use %s)\n    %s\n", l.Name, wording.Jobs(l.Jobs), offered, l.InUseText, l.Text)
	}
	fmt.Fprintf(&b, "\n%s\n%s\n", t.Improved(&v.Improved), wording.LearningNote())
	return b.Bytes()
}

func section(b *bytes.Buffer, title string, there bool) {
	if there {
		fmt.Fprintf(b, "\n%s:\n", title)
	}
}
