package main

import (
	"bytes"
	"encoding/json"
	"fmt"
)

// scoreWords is the part of the engine's reply that is printed.
type scoreWords struct {
	Headline    []string
	AfterSurvey string                       `json:"after_survey"`
	NotScored   []struct{ Name, Why string } `json:"not_scored"`
	Bias        []string
	Causes      []struct {
		Name   string
		Jobs   string `json:"jobs_text"`
		Amount string `json:"amount_text"`
	}
	Statistics []struct{ Name, Text string }
	PIT        []int
	Learning   struct {
		Lines []struct {
			Name, Text string
			Jobs       string `json:"jobs_text"`
			Offered    bool
			Factor     string `json:"factor_text"`
			InUse      string `json:"in_use_text"`
		}
		Compared, Note string
	}
	Kind, Text string
}

// scoreReport puts the reply in words.
func scoreReport(reply []byte) ([]byte, error) {
	var s scoreWords
	if err := json.Unmarshal(reply, &s); err != nil {
		return nil, err
	}
	if s.Kind != "scores" {
		return nil, fmt.Errorf("%s", s.Text)
	}
	var b bytes.Buffer
	for _, line := range append(s.Headline, s.AfterSurvey) {
		if line != "" {
			fmt.Fprintln(&b, line)
		}
	}
	for _, n := range s.NotScored {
		fmt.Fprintf(&b, "Not scored: %s, for %s.\n", n.Name, n.Why)
	}
	section(&b, "What stands out", len(s.Bias) > 0)
	for _, line := range s.Bias {
		fmt.Fprintf(&b, "  - %s\n", line)
	}
	section(&b, "Why jobs came to more", true)
	for _, c := range s.Causes {
		fmt.Fprintf(&b, "  %-24s %-10s %s\n", c.Name, c.Jobs, c.Amount)
	}
	section(&b, "For the statistician", len(s.Statistics) > 0)
	for _, row := range s.Statistics {
		fmt.Fprintf(&b, "  %s: %s\n", row.Name, row.Text)
	}
	if len(s.Statistics) > 0 {
		fmt.Fprintf(&b, "  PIT in tenths: %v\n", s.PIT)
	}
	section(&b, "What the jobs teach", len(s.Learning.Lines) > 0)
	for _, l := range s.Learning.Lines {
		offered := l.Factor
		if !l.Offered {
			offered = "too few jobs"
		}
		fmt.Fprintf(&b, "  %-34s %-8s %s (in use %s)\n    %s\n", l.Name, l.Jobs, offered, l.InUse, l.Text)
	}
	fmt.Fprintf(&b, "\n%s\n%s\n", s.Learning.Compared, s.Learning.Note)
	return b.Bytes(), nil
}

func section(b *bytes.Buffer, title string, there bool) {
	if there {
		fmt.Fprintf(b, "\n%s:\n", title)
	}
}
